using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Planning;

/// <summary>Wires that the description has sized alike. That a builder wires a pair alike is common practice, no source.</summary>
public sealed class AlikeWireTests
{
    private static Harness Saloon => ExamplePlans.Of("brackmere-six").Harness;

    [Fact]
    public void Lamps_of_both_sides_have_one_size_where_the_description_says_so_and_their_own_where_it_does_not()
    {
        Assert.NotEmpty(Differing(Planned(Saloon with { SizedAlike = [] })));
        Assert.Empty(Differing(Planned(Saloon with { SizedAlike = [Lamps] })));
    }

    /// <summary>What goes before the key by hand: the thinner wire of each pair given the size of the thicker one.</summary>
    [Fact]
    public void A_pair_takes_no_more_copper_than_the_thinner_with_the_size_of_the_thicker()
    {
        var free = Planned(Saloon with { SizedAlike = [] });
        var byHand = free.Wires.Sum(w => w.CutLengthMm!.Value * Math.Max(w.AreaMm2, free.Wires.Where(o => Differing(free).Any(d => (d.Left == w && d.Right == o) || (d.Right == w && d.Left == o))).Select(o => o.AreaMm2).DefaultIfEmpty(0).Max()));
        Assert.InRange(Copper(Planned(Saloon with { SizedAlike = [Lamps] })), Copper(free), byHand);
    }

    [Fact]
    public void What_could_be_thinner_by_itself_says_whom_it_follows()
    {
        var follows = Planned(Saloon with { SizedAlike = [Lamps] }).Wires.Where(w => w.DecidedBy == "sized alike").ToList();
        Assert.NotEmpty(follows);
        // by the words of examples/README.md: the least that does for all of them
        Assert.All(follows, w => Assert.Matches("^[0-9.]+ mm2 would do by itself: it is to be as ", w.RunnerUp));
        Assert.Contains(follows, w => w.Circuit == "dipped left" && w.RunnerUp!.EndsWith("as dipped right", StringComparison.Ordinal));
    }

    [Fact]
    public void Circuits_are_sized_alike_end_by_end()
    {
        var wires = Planned(Saloon with { SizedAlike = [new(["lamp feed left", "lamp feed right"], true, null)] }).Wires;
        foreach (var (left, right) in (ReadOnlySpan<(string, string)>)[("dipped relay.30", "dipped relay.30b"), ("main relay.30", "main relay.30b"), ("F5.out", "F6.out")])
        {
            Assert.Equal(At("lamp feed left", left).AreaMm2, At("lamp feed right", right).AreaMm2);
        }

        Wire At(string circuit, string end) => wires.Single(w => w.Circuit == circuit && (w.From.ToString() == end || w.To.ToString() == end));
    }

    [Fact]
    public void A_size_given_by_hand_stays_and_the_other_is_no_thinner()
    {
        var harness = Saloon with { SizedAlike = [Lamps], Circuits = [.. Saloon.Circuits.Select(c => c.Id == "dipped left" ? c with { AreaMm2 = 6 } : c.Id == "main right" ? c with { AreaMm2 = 0.75 } : c)] };
        var wires = Planned(harness).Wires;
        Assert.Equal(6, Of("dipped left").AreaMm2);
        Assert.Equal(6, Of("dipped right").AreaMm2);
        Assert.Equal("sized alike", Of("dipped right").DecidedBy);
        // one that is too thin does not hold the other down
        Assert.Equal(0.75, Of("main right").AreaMm2);
        Assert.True(Of("main left").AreaMm2 > 0.75);

        Wire Of(string circuit) => wires.Single(w => w.Circuit == circuit);
    }

    [Fact]
    public void Wires_of_two_types_take_a_size_that_both_have()
    {
        var types = Saloon.Catalogue.WireTypes;
        var (usual, other) = (types.Single(t => t.IsUsual), types.Single(t => t.Id == "cross-linked-125"));
        // the other is stocked in every second size
        var few = other with { Sizes = [.. other.Sizes.Where((_, n) => n % 2 == 1)] };
        var harness = Saloon with
        {
            SizedAlike = [Lamps],
            Catalogue = Saloon.Catalogue with { WireTypes = [.. types.Select(t => t.Id == few.Id ? few : t)] },
            Circuits = [.. Saloon.Circuits.Select(c => c.Id == "dipped right" ? c with { WireType = few.Id } : c)],
        };
        var wires = Planned(harness).Wires.Where(w => w.Circuit is "dipped left" or "dipped right").ToList();
        Assert.Single(wires.Select(w => w.SizeLabel).Distinct());
        Assert.Contains(wires[0].SizeLabel, few.Sizes.Select(s => s.Label));
        Assert.Contains(wires[0].SizeLabel, usual.Sizes.Select(s => s.Label));
    }

    private static SizedAlike Lamps => new(["headlamp left", "headlamp right"], false, null);

    private static Plan Planned(Harness harness) => HarnessPlanner.Plan(harness, PlanningOptions.Usual);

    private static double Copper(Plan plan) => plan.Wires.Sum(w => w.AreaMm2 * w.CutLengthMm!.Value);

    private static List<(Wire Left, Wire Right)> Differing(Plan plan) =>
    [
        .. from left in plan.Wires
           from right in plan.Wires
           from l in (WireEnd[])[left.From, left.To]
           from r in (WireEnd[])[right.From, right.To]
           where l.At == "headlamp left" && r.At == "headlamp right" && l.Pin == r.Pin && left.AreaMm2 != right.AreaMm2
           select (left, right),
    ];
}
