using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace HarnessDraw.Tests.Drawing;

/// <summary>A fault of a drawn sheet: its kind, what is concerned, and where (mm on paper).</summary>
internal sealed record SheetFault(string Kind, string What, string Where)
{
    public override string ToString() => $"{Kind}: {What} at {Where}";
}

/// <summary>
/// Finds on a sheet, from its items alone, what a reader must never meet. A text may lie on a backdrop, inside a plate or a
/// filled box, and on the lane it is for; what a later fill hides does not count.
/// </summary>
internal static class SheetChecker
{
    public const string TextOnText = "text on text";
    public const string TextOnLane = "text on lane";
    public const string TextOnEdge = "text on edge";
    public const string OutsideFrame = "outside frame";
    public const string LaneOnLane = "lane on lane";
    public const string SmallText = "small text";
    public const string MissingGlyph = "missing glyph";

    // touching is allowed; ink boxes are exact, so a tenth of the thinnest line is enough
    private const double ToleranceMm = 0.02;

    public static List<SheetFault> Check(Sheet sheet, double leastCapMm = 2.5)
    {
        var placed = SheetShapes.Place(sheet.Items);
        var texts = placed.Where(p => p.Item is TextItem).ToList();
        var index = new STRtree<PlacedItem>();
        foreach (var item in placed)
        {
            index.Insert(item.Shape.EnvelopeInternal, item);
        }

        var faults = new List<SheetFault>();
        faults.AddRange(texts.SelectMany(t => CheckText(t, index, leastCapMm)));
        faults.AddRange(CheckFrame(sheet, placed));
        faults.AddRange(CheckLanes(placed.Where(p => p.Item.Role == ItemRole.Lane).ToList()));
        return faults;
    }

    /// <summary>The texts of items with their ink boxes on paper.</summary>
    public static List<(TextItem Item, Geometry Shape)> Texts(IEnumerable<Item> items) =>
        [.. SheetShapes.Place(items).Where(p => p.Item is TextItem).Select(p => ((TextItem)p.Item, p.Shape))];

    private static IEnumerable<SheetFault> CheckText(PlacedItem text, STRtree<PlacedItem> index, double leastCapMm)
    {
        var item = (TextItem)text.Item;
        if (item.CapHeightMm * text.Scale < leastCapMm - 1e-6)
        {
            yield return Fault(SmallText, $"'{item.Text}' has capitals of {item.CapHeightMm * text.Scale:0.##} mm", text.Shape);
        }

        foreach (var missing in Glyphs.Missing(item.Text))
        {
            yield return Fault(MissingGlyph, $"{Glyphs.CodePoint(missing)} in '{item.Text}'", text.Shape);
        }

        var ink = text.Shape.Buffer(-ToleranceMm);
        if (ink.IsEmpty)
        {
            yield break;
        }

        var near = index.Query(text.Shape.EnvelopeInternal).Where(o => !ReferenceEquals(o, text)).OrderBy(o => o.Order).ToList();
        var cover = near.Where(o => o.Fill is not null && o.Order < text.Order && o.Item.Role != ItemRole.LaneDress && o.Fill.Covers(ink)).Select(o => o.Order).DefaultIfEmpty(-1).Max();
        foreach (var other in near.Where(o => o.Order > cover))
        {
            if (Kind(item, text, other, ink) is { } kind)
            {
                yield return Fault(kind, $"'{item.Text}' and {Name(other)}", ink.Intersection(other.Shape));
            }
        }
    }

    private static string? Kind(TextItem text, PlacedItem placed, PlacedItem other, Geometry ink) => other.Item.Role switch
    {
        _ when other.Item is TextItem => other.Order > placed.Order && ink.Intersects(other.Shape.Buffer(-ToleranceMm)) ? TextOnText : null,
        ItemRole.Lane when text.Tag?.For is { } wire && wire == other.Item.Tag?.Wire => null,
        ItemRole.Lane => ink.Intersects(other.Shape) ? TextOnLane : null,
        ItemRole.Edge or ItemRole.Plate => ink.Intersects(other.Shape) ? TextOnEdge : null,
        _ => null,
    };

    private static IEnumerable<SheetFault> CheckFrame(Sheet sheet, List<PlacedItem> placed)
    {
        var paper = new Envelope(0, sheet.Paper.WidthMm, 0, sheet.Paper.HeightMm);
        var framed = placed.Any(p => p.InFrame && sheet.Items.Any(i => i is GroupItem { Name: "frame" }));
        var frame = GridBorder.Of(sheet.Paper).Frame;
        var inside = framed ? new Envelope(frame.X, frame.Right, frame.Y, frame.Bottom) : paper;
        foreach (var item in placed)
        {
            var room = item.InFrame ? paper : inside;
            var shape = item.Shape.EnvelopeInternal;
            if (shape.MinX < room.MinX - ToleranceMm || shape.MaxX > room.MaxX + ToleranceMm || shape.MinY < room.MinY - ToleranceMm || shape.MaxY > room.MaxY + ToleranceMm)
            {
                yield return Fault(OutsideFrame, Name(item), item.Shape);
            }
        }
    }

    // lanes may cross; 3.2 widths of common run are a crossing at 39 degrees, more is drawing over each other
    private static IEnumerable<SheetFault> CheckLanes(List<PlacedItem> lanes)
    {
        var index = new STRtree<PlacedItem>();
        foreach (var lane in lanes)
        {
            index.Insert(lane.Shape.EnvelopeInternal, lane);
        }

        foreach (var lane in lanes.Where(l => l.Line is not null))
        {
            foreach (var other in index.Query(lane.Shape.EnvelopeInternal).Where(o => o.Order > lane.Order && o.Line is not null && !Together(lane, o)).OrderBy(o => o.Order))
            {
                var reach = (lane.WidthMm + other.WidthMm) / 2;
                var common = lane.Line!.Intersection(other.Line!.Buffer(reach - ToleranceMm, 6));
                if (Enumerable.Range(0, common.NumGeometries).Any(i => common.GetGeometryN(i).Length > 3.2 * reach))
                {
                    yield return Fault(LaneOnLane, $"{Name(lane)} and {Name(other)}", common);
                }
            }
        }
    }

    private static bool Together(PlacedItem a, PlacedItem b) =>
        a.Item.Tag?.Wire is { } wire && wire == b.Item.Tag?.Wire || (a.Item.Tag?.Circuit is { } circuit && circuit == b.Item.Tag?.Circuit);

    private static string Name(PlacedItem placed) => placed.Item switch
    {
        TextItem text => $"text '{text.Text}'",
        { Tag.Wire: { } wire } => $"wire {wire}",
        { Tag.Title: { } title } => title,
        _ => $"{placed.Item.Role.ToString().ToLowerInvariant()} {placed.Order}",
    };

    private static SheetFault Fault(string kind, string what, Geometry at) =>
        new(kind, what, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{at.EnvelopeInternal.MinX:0.0}, {at.EnvelopeInternal.MinY:0.0} to {at.EnvelopeInternal.MaxX:0.0}, {at.EnvelopeInternal.MaxY:0.0}"));
}
