using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Sheets.TraceSheets;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.Teaching;

/// <summary>
/// Circuits for a projector: few stations a page, letters of a fortieth of the picture's height (common practice, no source: read from the last row), wires as broad bars in their colours.
/// </summary>
public static class ProjectorSheets
{
    private const int PerRow = 4;
    private const int Rows = 2;
    private const double CapMm = 5;
    private const double LineMm = 7.6;
    private const double EdgeMm = 30;
    private const double LaneMm = 3.6;
    private const double RingMm = 4.2;
    private const double LeastLostV = 0.005;

    /// <summary>The circuits of the trace sheets, each on as many A4 pages lying down as it needs; none where nothing can be traced.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var ways = CircuitTraceSheets.Ways(shown, options.About);
        if (ways.IsEmpty)
        {
            return new([]);
        }

        var plus = shown.Harness.Power.Ground == GroundPolarity.Negative;
        var maker = new PageMaker(plan, findings, options, new PageForm(SheetKinds.Projector, "PROJECTOR", "projector")
        {
            Caution = $"Meter's other lead on the battery's {(plus ? "minus" : "plus")} post. Battery disconnected before a connector is parted.",
            Paper = PaperSizes.A4Landscape,
        });
        foreach (var (way, _) in ways)
        {
            Add(maker, way, TraceRow.Of(shown, way, options.Units));
        }

        return maker.ToResult();
    }

    // the last station of a row begins the next one again, so that every hop has its length of bar
    private static void Add(PageMaker maker, TraceWay way, ImmutableArray<TraceRow> stations)
    {
        var rowMm = maker.Area.Height / Rows;
        var spacing = (maker.Area.Width - (2 * EdgeMm)) / (PerRow - 1);
        Pen? pen = null;
        var (hops, most) = (stations.Length - 1, PerRow - 1);
        var rows = (hops + most - 1) / most;
        for (var (from, row) = (0, 0); row < rows; row++)
        {
            // where a second page is needed no row is left for one hop
            var own = rows > Rows ? (hops / rows) + (row < hops % rows ? 1 : 0) : Math.Min(most, hops - from);
            if (row % Rows == 0 || pen is null)
            {
                pen = maker.Begin($"Projector, {way.Circuit}{(row > 0 ? ", continued" : "")}", way.Circuit.ToUpperInvariant(), row > 0 ? "continued" : $"ON: {way.OnState ?? Shown.Unknown}", new Tag { Circuit = way.Circuit });
            }

            var y = maker.Area.Y + (row % Rows * rowMm) + 31;
            var count = own + 1;
            for (var i = 0; i < count - 1; i++)
            {
                Hop(pen, stations[from + i].Hop!, new(maker.Area.X + EdgeMm + (i * spacing), y), spacing, from + i);
            }

            for (var i = 0; i < count; i++)
            {
                Station(pen, stations[from + i], new(maker.Area.X + EdgeMm + (i * spacing), y), spacing - 6);
            }

            from += own;
        }
    }

    private static void Hop(Pen pen, TraceHop hop, Point from, double lengthMm, int index)
    {
        TraceLine.PaintHop(pen, hop, from, new(from.X + lengthMm, from.Y), index, LaneMm, 1.5);
        var tag = hop.Wire is { } id ? new Tag { For = id } : null;
        var lines = Words(hop).SelectMany((words, i) => LineBreaker.Lines(words, lengthMm - 4, Style(i)).Select(l => (Line: l, Style: Style(i)))).Take(3).ToList();
        var y = from.Y - 6.5 - ((lines.Count - 1) * LineMm);
        foreach (var (line, style) in lines)
        {
            pen.Letters(line, from.X + (lengthMm / 2), y, style, tag);
            y += LineMm;
        }

        TextStyle Style(int i) => (i == 0 && hop.Wire is not null ? TextStyle.Bold : TextStyle.Plain).At(CapMm).Middle;
    }

    // id and colour, size, and what is lost where a meter would show it
    private static IEnumerable<string> Words(TraceHop hop)
    {
        yield return hop.Wire is { } wire ? $"{wire} {hop.Colour}" : Kind(hop);
        if (hop is { Wire: not null, Size: { } size })
        {
            yield return Shown.Units(size);
        }

        if (hop is { Kind: not HopKind.Load, DropV: { } volts } && Math.Abs(volts) >= LeastLostV)
        {
            yield return $"−{Shown.Fixed(volts, 2)}\u00a0V";
        }
    }

    private static string Kind(TraceHop hop) => hop.Kind switch
    {
        HopKind.Kept => "kept wiring",
        HopKind.NotDescribed => "not described",
        _ => hop.Words.Split(',')[0],
    };

    private static void Station(Pen pen, TraceRow station, Point at, double roomMm)
    {
        pen.Add(new PathItem(Outline.Circle(at, RingMm)) { Fill = Ink.Paper, Stroke = new(Ink.Black, 1.2) });
        var y = at.Y + RingMm + 8;
        var style = TextStyle.Bold.At(CapMm);
        var lines = LineBreaker.Lines(station.StationName, roomMm, style);
        if (lines.Length > 2)
        {
            style = TextStyle.Bold.At(3.5);
            lines = LineBreaker.Lines(station.StationName, roomMm, style);
        }

        foreach (var line in lines)
        {
            pen.Letters(line, at.X, y, style.Middle);
            y += 1.5 * style.CapMm;
        }

        pen.Letters(station.Stop.OnV is { } volts ? $"{Shown.Fixed(volts, 1)} V" : Shown.Unknown, at.X, y + 3.4, TextStyle.Bold.At(7).Middle);
    }
}
