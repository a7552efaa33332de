using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>Wide bundles as bands: what is hidden, what shows, in which order, and what it saves; read off the geometry.</summary>
public class ChartBandTests
{
    private const int Over = 20;

    [Theory]
    [InlineData(60, 1)]
    [InlineData(60, 3)]
    [InlineData(60, 5)]
    [InlineData(60, 8)]
    [InlineData(150, 2)]
    public void With_bands_nothing_overlaps_and_every_wire_shows_at_its_ends(int circuits, int seed)
    {
        var plan = RandomHarness.OfLongRun(seed, circuits);
        var result = WallChart.Compose(plan, [], new SheetOptions { BandOver = Over });
        Assert.Null(result.Refused);
        Assert.All(result.Sheets, s => Assert.Empty(SheetChecker.Check(s).Take(10).Select(f => f.ToString())));
        var paths = result.Sheets.SelectMany(s => Paths(s.Items)).ToList();
        Assert.Contains(paths, IsBand);
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), paths.Where(p => p.Role == ItemRole.Lane).Select(p => p.Tag!.Wire!).Distinct().Order(StringComparer.Ordinal));
        Assert.All(paths.Where(IsBand), b => Assert.True(b.Tag!.Title!.Split(' ').Length - 4 > Over, b.Tag.Title));
        Assert.Contains(result.Sheets.SelectMany(ItemWalk.Texts), t => t.Text.EndsWith(" from the top", StringComparison.Ordinal) && char.IsDigit(t.Text[0]));
    }

    /// <summary>A lane stops at the edge of the band that hides it and goes on from its edge.</summary>
    [Theory]
    [InlineData(60, 1)]
    [InlineData(60, 4)]
    [InlineData(150, 2)]
    public void A_lane_ends_at_the_edge_of_the_band_that_hides_it(int circuits, int seed)
    {
        var plan = RandomHarness.OfLongRun(seed, circuits);
        var things = plan.Harness.Things.Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        // a wire at a splice may end inside, at the bar
        var whole = plan.Wires.Where(w => things.Contains(w.From.At) && things.Contains(w.To.At)).Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var sheet in Drawn(circuits, seed))
        {
            var paths = Paths(sheet.Items).ToList();
            var edges = paths.Where(IsBand).Select(b => Corners(b.Outline)).ToList();
            foreach (var wire in paths.Where(p => p.Role == ItemRole.Lane).GroupBy(p => p.Tag!.Wire!).Where(w => w.Count() > 1 && whole.Contains(w.Key)))
            {
                // all its ends but the two at its pins
                var atEdges = wire.SelectMany(w => Ends(Corners(w.Outline))).Count(p => edges.Exists(e => Distance(e, p.End) < 0.01));
                Assert.True(atEdges == (2 * wire.Count()) - 2, $"{wire.Key}: {atEdges} ends of {wire.Count()} pieces");
            }
        }
    }

    /// <summary>Those that leave a band on one side leave in the order in which its list names them, from that side.</summary>
    [Theory]
    [InlineData(60, 10)]
    [InlineData(150, 4)]
    public void The_wires_of_a_band_show_again_in_the_order_of_its_list(int circuits, int seeds)
    {
        var compared = 0;
        foreach (var sheet in Enumerable.Range(1, seeds).SelectMany(seed => Drawn(circuits, seed)))
        {
            var paths = Paths(sheet.Items).ToList();
            foreach (var list in Lists(sheet).Where(l => l.Count > Over))
            {
                var band = paths.Where(IsBand).Where(b => list.All(b.Tag!.Title!.Split(' ').Contains)).Select(b => Corners(b.Outline)).MaxBy(c => c.Max(p => p.X) - c.Min(p => p.X));
                if (band is null)
                {
                    continue;
                }

                // where a wire leaves is its place farthest from the root, which is at the right; one that shows once goes to a splice
                var exits = list.Select((wire, at) => (At: at, Places: paths.Where(p => p.Role == ItemRole.Lane && p.Tag!.Wire == wire).SelectMany(p => Ends(Corners(p.Outline)))
                    .Where(e => Distance(band, e.End) < 0.01 && Math.Abs(e.End.X - e.Next.X) < 0.01).OrderBy(e => e.End.X).ToList())).Where(e => e.Places.Count > 1).Select(e => (e.At, e.Places[0].End, IsTop: e.Places[0].Next.Y < e.Places[0].End.Y)).ToList();
                compared += exits.Count;
                foreach (var side in exits.GroupBy(e => e.IsTop))
                {
                    var order = side.OrderByDescending(e => e.End.X).Select(e => e.At).ToList();
                    Assert.Equal(side.Key ? order.Order() : order.OrderDescending(), order);
                }
            }
        }

        Assert.True(compared > 2 * Over, $"{compared} compared");
    }

    /// <summary>What the reader asks bands for: a paper size or a sheet less.</summary>
    [Fact]
    public void Bands_need_less_paper()
    {
        var areas = Enumerable.Range(1, 12).Select(seed => RandomHarness.OfLongRun(seed, 60)).Select(plan => (Lanes: Area(plan, 0), Bands: Area(plan, Over))).ToList();
        Assert.True(areas.Sum(a => a.Bands) < areas.Sum(a => a.Lanes) * 0.95, string.Join(", ", areas));
        Assert.True(areas.Count(a => a.Bands < a.Lanes - 0.01) >= 4, string.Join(", ", areas));
        var wide = Enumerable.Range(1, 4).Select(seed => RandomHarness.OfLongRun(seed, 150)).Select(plan => (Lanes: Area(plan, 0), Bands: Area(plan, Over))).ToList();
        Assert.True(wide.Sum(a => a.Bands) < wide.Sum(a => a.Lanes) - 0.01, string.Join(", ", wide));

        static double Area(HarnessDraw.Planning.Plan plan, int over) => WallChart.Compose(plan, [], new SheetOptions { BandOver = over }).Sheets.Sum(s => s.Paper.WidthMm * s.Paper.HeightMm / 1e6);
    }

    private static ImmutableArray<Sheet> Drawn(int circuits, int seed) => WallChart.Compose(RandomHarness.OfLongRun(seed, circuits), [], new SheetOptions { BandOver = Over }).Sheets;

    // the wires of each lettered cut of a horizontal band, from the top, as the panel names them: id and colour by turns
    private static IEnumerable<List<string>> Lists(Sheet sheet)
    {
        var texts = ItemWalk.Texts(sheet).Select(t => t.Text).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            if (System.Text.RegularExpressions.Regex.Match(texts[i], "^([0-9]+) from the top$") is { Success: true } head)
            {
                var count = int.Parse(head.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
                yield return [.. Enumerable.Range(0, count).Select(k => texts[i + 1 + (2 * k)])];
            }
        }
    }

    private static IEnumerable<(Point End, Point Next)> Ends(List<Point> way) => [(way[0], way[1]), (way[^1], way[^2])];

    // the ends of straight pieces and arcs
    private static List<Point> Corners(Outline outline) =>
        [.. outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, _ => (Point?)null }).OfType<Point>()];

    private static double Distance(List<Point> closed, Point p) =>
        Enumerable.Range(0, closed.Count).Min(i => Distance(closed[i], closed[(i + 1) % closed.Count], p));

    private static double Distance(Point a, Point b, Point p)
    {
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var square = (dx * dx) + (dy * dy);
        var t = square == 0 ? 0 : Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / square, 0, 1);
        return Math.Sqrt(Math.Pow(p.X - a.X - (t * dx), 2) + Math.Pow(p.Y - a.Y - (t * dy), 2));
    }

    private static bool IsBand(PathItem p) => p.Tag?.Title?.StartsWith("band of ", StringComparison.Ordinal) == true;

    private static IEnumerable<PathItem> Paths(IEnumerable<Item> items) => items.SelectMany(i => i is GroupItem g ? Paths(g.Items) : i is PathItem p ? [p] : (IEnumerable<PathItem>)[]);
}
