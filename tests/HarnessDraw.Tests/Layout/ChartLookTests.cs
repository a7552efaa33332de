using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>What a reader sees first, measured on the finished charts.</summary>
public class ChartLookTests
{
    /// <summary>Reading begins at the top left: there stands the vehicle's name, in the largest letters of the chart, and below it what is drawn.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_vehicles_name_stands_in_the_corner_where_reading_begins(string example)
    {
        const double NearMm = 30;
        var plan = ExamplePlans.Of(example);
        foreach (var sheet in WallChart.Compose(plan, [], new SheetOptions()).Sheets)
        {
            var texts = ItemWalk.Texts(sheet).ToList();
            var largest = texts.Max(t => t.CapHeightMm);
            var name = texts.Where(t => t.CapHeightMm >= largest - 0.01).ToList();
            Assert.Equal(plan.Harness.Vehicle.ToUpperInvariant(), string.Join(' ', name.Select(t => t.Text)));
            Assert.All(name, t => Assert.InRange(t.At.X, 0, 20 + NearMm));
            Assert.InRange(name[0].At.Y, 0, 10 + NearMm);
        }
    }

    /// <summary>In black ink the lanes of a long run are told apart by their order only: the run that relays join behind the first cut has a cut of its own, on the same paper (A1).</summary>
    [Fact]
    public void The_run_that_most_lanes_join_later_has_a_cut_of_its_own()
    {
        var sheet = WallChart.Compose(ExamplePlans.Of("brackmere-six"), [], new SheetOptions { BlackInk = true }).Sheets.Single();
        Assert.StartsWith("A1", sheet.Paper.Name, StringComparison.Ordinal);
        // F12 goes from a relay to a headlamp: in the cards of both and in the lists of two cuts, behind the relays and on the front panel's run
        Assert.Equal(4, ItemWalk.Texts(sheet).Count(t => t.Text == "F12"));
    }

    /// <summary>A run of fourteen wires, too many to tell apart by eye, has a list of its own beside those of wider runs, on the same paper.</summary>
    [Fact]
    public void The_run_of_fourteen_wires_to_the_front_panel_is_listed()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var run = plan.Tree.Segments.Single(s => (s.From, s.To) is ("left lamp", "panel left"));
        Assert.Equal(14, run.Wires.Length);
        var sheet = WallChart.Compose(plan, [], new SheetOptions()).Sheets.Single();
        Assert.StartsWith("A1", sheet.Paper.Name, StringComparison.Ordinal);
        var list = Assert.Single(Lists(sheet), l => l.Wires.TrueForAll(w => run.Wires.Contains(w)));
        // all but those that only reach the splice on the run
        Assert.All(run.Wires.Except(list.Wires, StringComparer.Ordinal).Select(id => plan.Wires.Single(w => w.Id == id)), w => Assert.True(w.From.IsSplice || w.To.IsSplice, w.Id));
        Assert.True(list.Wires.Count >= 12);
    }

    /// <summary>Who looks a lane up does not search the sheet: a list stands as near to its cut as there is room, on average within a fifth of the sheet's diagonal (common practice, no source).</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Lists_of_lanes_stand_by_their_cuts(string example)
    {
        var sheets = WallChart.Compose(ExamplePlans.Of(example), [], new SheetOptions()).Sheets;
        var off = new List<double>();
        foreach (var sheet in sheets)
        {
            var (diagonal, legend) = (Math.Sqrt((sheet.Paper.WidthMm * sheet.Paper.WidthMm) + (sheet.Paper.HeightMm * sheet.Paper.HeightMm)), ItemWalk.Texts(sheet).FirstOrDefault(t => t.Text == "cut, see LANE ORDER"));
            foreach (var list in Lists(sheet))
            {
                // the letter stands at the cut, in the list's own head and, of the first, in the legend
                var cut = Assert.Single(ItemWalk.Texts(sheet), t => t.Text == list.Letter && t.Anchor == TextAnchor.Middle && Distance(t.At, list.At) > 15 && Distance(t.At, legend!.At) > 15);
                off.Add(Distance(cut.At, list.At) / diagonal);
            }
        }

        Assert.NotEmpty(off);
        Assert.True(off.Average() < 0.2, string.Join(", ", off.Select(o => o.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture))));
    }

    private static double Distance(Point a, Point b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

    // below its head a list has its letter, where it is read from, and then number and colour of each wire by turns
    private static IEnumerable<(string Letter, Point At, List<string> Wires)> Lists(Sheet sheet)
    {
        const string Head = "LANE ORDER AT CUT ";
        var texts = ItemWalk.Texts(sheet).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            if (texts[i].Text.StartsWith(Head, StringComparison.Ordinal))
            {
                var wires = texts.Skip(i + 3).Chunk(2).TakeWhile(t => t.Length == 2 && WireColour.TryParse(t[1].Text) is not null).Select(t => t[0].Text).ToList();
                yield return (texts[i].Text[Head.Length..], texts[i].At, wires);
            }
        }
    }

    /// <summary>Where a corner has the room, as on the coach's first chart, every lead of the power network is drawn between its parts, its number, colour and size over it, and every heavy fuse with its rating.</summary>
    [Fact]
    public void The_power_network_is_shown_with_its_leads_where_a_corner_has_the_room()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        var sheet = WallChart.Compose(plan, [], new SheetOptions()).Sheets[0];
        var texts = ItemWalk.Texts(sheet).ToList();
        var heavy = plan.Fuses.Where(f => f.Kind == ProtectionKind.BoltIn).ToList();
        Assert.NotEmpty(heavy);
        foreach (var fuse in heavy)
        {
            Assert.Contains(texts, t => t.Tag?.Fuse == fuse.Id && t.CapHeightMm >= 5 && t.Text == $"{fuse.RatingA:0.#} A");
        }

        foreach (var wire in plan.Wires.Where(w => heavy.Exists(f => w.From.At == f.Id || w.To.At == f.Id) || w.From.At == "batteries" || w.To.At == "batteries"))
        {
            Assert.Contains(texts, t => t.Tag?.For == wire.Id && t.Text == $"{wire.Id} {wire.Colour} {wire.SizeLabel}");
        }
    }
}
