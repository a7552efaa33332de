using HarnessDraw.Drawing;
using HarnessDraw.Sheets;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Pages of tables: nobody finds figures on a page without knowing what they are, and no page is wasted on a few lines.</summary>
public class PageHeadTests
{
    private const double LeastShare = 0.15;

    // charts, boards and templates are drawings; a trace is a line of stations under the name of its circuit
    private static IEnumerable<string> TableKinds => SheetKinds.All.Except([SheetKinds.WallChart, SheetKinds.BuildBoard, SheetKinds.OpeningTemplate, SheetKinds.Trace, SheetKinds.Projector]);

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_page_begins_with_a_heading_that_says_whether_it_goes_on(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var kind in TableKinds)
        {
            var said = new HashSet<string>(StringComparer.Ordinal);
            var sheets = SheetKinds.Compose(kind, plan, [], new()).Sheets;
            for (var i = 0; i < sheets.Length; i++)
            {
                var texts = Own(sheets[i]).ToList();
                var first = texts[0];
                Assert.True(first.Weight == FaceWeight.Bold && first.CapHeightMm >= 5, $"{kind} {i + 1}: {first.Text}");
                var heads = texts.Where(t => t.Weight == FaceWeight.Bold && t.CapHeightMm >= 3.5 && t.Colour != Ink.Caution).Skip(1).Select(t => t.Text).ToList();
                var begins = texts.Skip(1).FirstOrDefault(t => t.Weight == FaceWeight.Bold && t.Colour != Ink.Caution);
                var goesOn = texts.TakeWhile(t => t != begins).Any(t => t.Text.EndsWith("continued", StringComparison.Ordinal));

                // a heading that was there before says that it goes on; where there is none, the headline says so for the table below it
                Assert.True(i == 0 || goesOn || kind == SheetKinds.Connectors || (begins is not null && begins.CapHeightMm >= 3.5), $"{kind} {i + 1} goes on without a heading: {begins?.Text}");
                Assert.True(kind == SheetKinds.Connectors || begins is null || begins.CapHeightMm < 3.5 || !said.Contains(begins.Text), $"{kind} {i + 1} begins with '{begins?.Text}' once more");
                Assert.True(kind != SheetKinds.Connectors || i == 0 || sheets[i].Title.StartsWith("Small", StringComparison.Ordinal) || first.Text != Own(sheets[i - 1]).First().Text || texts.Any(t => t.Text.EndsWith(", continued", StringComparison.Ordinal)), $"{kind} {i + 1} shows '{first.Text}' once more");
                said.UnionWith(heads.Where(h => !h.EndsWith(", continued", StringComparison.Ordinal)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_page_of_several_is_nearly_empty(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var kind in TableKinds)
        {
            var sheets = SheetKinds.Compose(kind, plan, [], new()).Sheets;
            Assert.All(sheets, s => Assert.True(sheets.Length == 1 || Used(s) >= LeastShare, $"{kind} {s.Number} of {sheets.Length}: {Used(s):P0}"));
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Stations_of_a_trace_are_shared_evenly_among_its_pages(string name)
    {
        var stations = SheetKinds.Compose(SheetKinds.Trace, ExamplePlans.Of(name), [], new()).Sheets.Select(s => (s.Title, GoesOn: Own(s).Any(t => t.Text == "continued"), Count: Rings(s))).ToList();
        Assert.Contains(stations, s => s.GoesOn);
        for (var i = 1; i < stations.Count; i++)
        {
            Assert.True(!stations[i].GoesOn || 3 * stations[i].Count >= stations[i - 1].Count, $"{stations[i].Title}: {stations[i - 1].Count} and {stations[i].Count} stations");
        }
    }

    // white rings one above the other
    private static int Rings(Sheet sheet) => ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Fill == Ink.Paper && p.Stroke is not null && p.Outline.Steps is [PathStep.MoveTo, PathStep.ArcTo, ..])
        .GroupBy(p => Math.Round(((PathStep.MoveTo)p.Outline.Steps[0]).To.X, 1)).Max(g => g.Count());

    private static IEnumerable<TextItem> Own(Sheet sheet) => sheet.Items.OfType<GroupItem>().First().Items.OfType<TextItem>();

    // the box round what stands between headline and title block, as a share of that room
    private static double Used(Sheet sheet)
    {
        var room = Box.FromEdges(20, 30, sheet.Paper.WidthMm - 10, sheet.Paper.HeightMm - 43);
        var boxes = Own(sheet).Select(t => TextMeasure.Bounds(t)).Where(b => b.Y >= room.Y && b.Bottom <= room.Bottom).ToList();
        return boxes.Count == 0 ? 0 : (boxes.Max(b => b.Right) - boxes.Min(b => b.X)) * (boxes.Max(b => b.Bottom) - room.Y) / (room.Width * room.Height);
    }
}
