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
        // F12 goes from a relay to a headlamp: in the cards of both and in the list of a cut
        Assert.Equal(3, ItemWalk.Texts(sheet).Count(t => t.Text == "F12"));
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
