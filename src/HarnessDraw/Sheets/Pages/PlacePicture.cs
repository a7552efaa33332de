using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.Pages;

/// <summary>A small plan of the vehicle, nose to the left: its body, the runs of the harness and a disc at every place where something is done.</summary>
public sealed class PlacePicture
{
    private const double DiscMm = 1.3;
    private const double OneOfManyMm = 0.7;
    private const double RingMm = 2.1;
    private const double FinestMm = 0.2;
    private readonly ImmutableSortedDictionary<string, PlanPoint> places;
    private readonly ImmutableArray<(ImmutableArray<PlanPoint> Points, bool Closed, Stroke Stroke)> lines;
    private readonly double scale;
    private readonly Point origin;

    /// <summary>
    /// The picture of a plan in a box of this size, mm; without places it stays empty. A long vehicle takes more width, up to <paramref name="mostWidthMm"/>, and no more height than it needs.
    /// </summary>
    public PlacePicture(Plan plan, double widthMm, double heightMm, double? mostWidthMm = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var layout = plan.Harness.Layout;
        places = layout.Places.ToImmutableSortedDictionary(p => p.Id, p => new PlanPoint(p.Xmm, p.Ymm), StringComparer.Ordinal);
        Point[] all = [.. layout.Outline.SelectMany(l => l.Points).Concat(places.Values).Select(Seen)];
        lines = [];
        if (all.Length == 0)
        {
            (WidthMm, HeightMm) = (widthMm, heightMm);
            return;
        }

        var extent = Box.FromEdges(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
        if (mostWidthMm is { } most)
        {
            const double Rim = 2 * RingMm;
            var length = Math.Max(extent.Width, 1) / Math.Max(extent.Height, 1);
            widthMm = Math.Clamp(((heightMm - Rim) * length) + Rim, widthMm, most);
            heightMm = Math.Min(heightMm, ((widthMm - Rim) / length) + Rim);
        }

        (WidthMm, HeightMm) = (widthMm, heightMm);
        scale = Math.Min((widthMm - (2 * RingMm)) / Math.Max(extent.Width, 1), (heightMm - (2 * RingMm)) / Math.Max(extent.Height, 1));
        origin = new(extent.Centre.X - (widthMm / 2 / scale), extent.Centre.Y - (heightMm / 2 / scale));
        var (body, run) = (new Stroke(Ink.Hairline, 0.35), new Stroke(Ink.Secondary, 0.35));
        lines =
        [
            .. layout.Outline.Where(l => l.Points.Length > 1).Select(l => (Coarse(l.Points), l.Closed, body)),
            .. plan.Tree.Segments.Where(s => !s.Wires.IsEmpty && places.ContainsKey(s.From) && places.ContainsKey(s.To))
                .Select(s => (ImmutableArray.Create(places[s.From], places[s.To]), false, run)),
        ];
    }

    public double WidthMm { get; }

    public double HeightMm { get; }

    /// <summary>The picture with its upper left corner at a point; empty where none of the places is on the plan.</summary>
    public ImmutableArray<Item> Of(IEnumerable<string> marked, Point corner)
    {
        Point[] discs = [.. marked.Where(places.ContainsKey).Distinct(StringComparer.Ordinal).Select(p => At(places[p], corner))];
        return discs.Length == 0 ? [] :
        [
            .. lines.GroupBy(l => l.Stroke).Select(g => new PathItem(new([.. g.SelectMany(l => Outline.Polyline([.. l.Points.Select(p => At(p, corner))], l.Closed).Steps)])) { Role = ItemRole.Backdrop, Stroke = g.Key }),
            // one place is ringed; those of a whole branch would be a blot
            .. discs.Length == 1 ? [new PathItem(Outline.Circle(discs[0], RingMm)) { Role = ItemRole.Edge, Stroke = new(Ink.Black, 0.25) }] : Array.Empty<Item>(),
            .. discs.Select(d => new PathItem(Outline.Circle(d, discs.Length == 1 ? DiscMm : OneOfManyMm)) { Role = ItemRole.Edge, Fill = Ink.Black }),
        ];
    }

    // points that would fall on one spot of the print
    private ImmutableArray<PlanPoint> Coarse(ImmutableArray<PlanPoint> points)
    {
        var kept = new List<PlanPoint> { points[0] };
        kept.AddRange(points.Skip(1).Where(p => Math.Max(Math.Abs(p.Xmm - kept[^1].Xmm), Math.Abs(p.Ymm - kept[^1].Ymm)) * scale > FinestMm));
        return [.. kept];
    }

    // x of a layout runs towards the nose, y to the right: see layouts/README.md
    private static Point Seen(PlanPoint p) => new(-p.Xmm, -p.Ymm);

    private Point At(PlanPoint p, Point corner) => new(Math.Round(corner.X + ((Seen(p).X - origin.X) * scale), 2), Math.Round(corner.Y + ((Seen(p).Y - origin.Y) * scale), 2));
}
