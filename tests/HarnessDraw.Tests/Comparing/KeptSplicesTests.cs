using HarnessDraw.Comparing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Comparing;

/// <summary>Splices of a built harness stay where they are, with their ids and those of their wires, whatever is edited elsewhere.</summary>
public class KeptSplicesTests
{
    private static readonly Plan Plan = ExamplePlans.Of("brackmere-six");

    [Fact]
    public void A_frozen_harness_planned_again_has_the_same_splices_and_wires()
    {
        var again = Keep(Plan.Harness, HarnessFreezer.Freeze(Plan));
        Assert.Equal(Plan.Splices.Select(Told), again.Splices.Select(Told));
        Assert.Equal(Plan.Wires.Select(w => (w.Id, w.From.ToString(), w.To.ToString(), w.CutLengthMm)).Order(), again.Wires.Select(w => (w.Id, w.From.ToString(), w.To.ToString(), w.CutLengthMm)).Order());
        Assert.Empty(HarnessComparer.Compare(HarnessFreezer.Freeze(Plan), HarnessFreezer.Freeze(again)).Value!.Changes);
    }

    [Fact]
    public void A_splice_that_was_built_elsewhere_than_planned_is_kept_there_with_its_id()
    {
        var splice = Plan.Splices[0];
        var built = HarnessFreezer.Freeze(Plan);
        var to = Free(splice);
        built = built with
        {
            Splices = [.. built.Splices.Select(s => s.Id == splice.Id ? s with { Id = "SP77", AtMm = to } : s)],
            Wires = [.. built.Wires.Select(w => w with { From = w.From == splice.Id ? "SP77" : w.From, To = w.To == splice.Id ? "SP77" : w.To })],
        };
        var kept = Keep(Plan.Harness, built);
        var now = kept.Splices.Single(s => s.Id == "SP77");
        Assert.Equal((splice.Net, splice.Segment, to), (now.Net, now.Segment, now.AtMm));
        Assert.Equal(splice.Wires.Order(StringComparer.Ordinal), now.Wires.Order(StringComparer.Ordinal));
        Assert.Equal(Plan.Splices.Length, kept.Splices.Select(s => s.Id).Distinct().Count());
        Assert.DoesNotContain(kept.PlanningFindings, f => f.Rule == "built-splice-moved");
    }

    [Fact]
    public void Another_current_moves_no_splice_that_is_built()
    {
        var built = HarnessFreezer.Freeze(Plan);
        var heavier = Plan.Harness with { Things = [.. Plan.Harness.Things.Select(t => t with { Elements = [.. t.Elements.Select((e, i) => e.CurrentA is { } a && i == 0 ? e with { CurrentA = a * 2.5 } : e)] })] };
        Assert.Equal(Plan.Splices.Select(s => (s.Id, s.Segment, s.AtMm)), Keep(heavier, built).Splices.Select(s => (s.Id, s.Segment, s.AtMm)));
    }

    [Fact]
    public void A_splice_whose_stretch_is_gone_is_told_and_its_net_spliced_anew()
    {
        var built = HarnessFreezer.Freeze(Plan);
        var gone = built.Splices[0];
        built = built with { Splices = [.. built.Splices.Select(s => s == gone ? s with { From = "a place that was" } : s)] };
        var now = Keep(Plan.Harness, built);
        var finding = Assert.Single(now.PlanningFindings, f => f.Rule == "built-splice-moved");
        Assert.Contains(gone.Id, finding.Where);
        Assert.Contains("spliced anew", finding.Message, StringComparison.Ordinal);
        Assert.Contains(now.Splices, s => s.Net == gone.Net);
    }

    [Fact]
    public void Ids_of_wires_that_are_built_are_given_to_no_other_wire()
    {
        var built = HarnessFreezer.Freeze(Plan);
        var without = Plan.Harness with { Nets = [.. Plan.Harness.Nets.Skip(1)] };
        var lost = Plan.Wires.Where(w => w.Net == Plan.Harness.Nets[0].Id).Select(w => w.Id).ToList();
        Assert.NotEmpty(lost);
        Assert.Empty(Keep(without, built).Wires.Select(w => w.Id).Intersect(lost));
    }

    [Fact]
    public void A_built_wire_that_reaches_only_without_its_allowances_is_cut_anew_and_compare_says_so()
    {
        var wire = Plan.Wires.First(w => w is { ByHand: false, PathLengthMm: > 500 } && w.LeastCutMm - w.PathLengthMm > 60);
        var built = HarnessFreezer.Freeze(Plan);
        built = built with { Wires = [.. built.Wires.Select(w => w.Id == wire.Id ? w with { CutMm = Math.Floor(wire.PathLengthMm!.Value + 20) } : w)] };
        var now = Keep(Plan.Harness, built);
        var finding = Assert.Single(now.PlanningFindings, f => f.Rule == "built-wire-short");
        Assert.Contains(FormattableString.Invariant($"{wire.CutLengthMm:0} mm"), finding.Cure, StringComparison.Ordinal);
        Assert.Equal(wire.CutLengthMm, now.Wires.Single(w => w.Id == wire.Id).CutLengthMm);
        var change = Assert.Single(HarnessComparer.Compare(built, HarnessFreezer.Freeze(now)).Value!.Changes);
        Assert.Equal((ChangeKind.Cut, wire.Id), (change.Kind, change.Wire));
        Assert.Contains(FormattableString.Invariant($"becomes {wire.CutLengthMm:0} mm"), change.How, StringComparison.Ordinal);
        // what check calls too short, compare has
        Assert.DoesNotContain(HarnessDraw.Checking.HarnessChecker.Check(now, HarnessDraw.Checking.RuleSettings.BuiltIn), f => f.Rule == "cut-too-short");
    }

    [Fact]
    public void A_built_size_stays_though_a_thinner_one_would_do()
    {
        var wire = Plan.Wires.First(w => w is { ByHand: false, DecidedBy: "mechanical minimum", SizeLabel: "0.5" } && !w.From.IsSplice && !w.To.IsSplice);
        var built = HarnessFreezer.Freeze(Plan);
        built = built with { Wires = [.. built.Wires.Select(w => w.Id == wire.Id ? w with { Size = "0.75" } : w)] };
        var now = Keep(Plan.Harness, built);
        Assert.Equal(("0.75", "as built"), now.Wires.Where(w => w.Id == wire.Id).Select(w => (w.SizeLabel, w.DecidedBy)).Single());
        Assert.DoesNotContain(now.PlanningFindings, f => f.Rule == "built-wire-size");
    }

    [Fact]
    public void A_built_size_that_no_longer_does_is_told_with_the_rule_that_decides()
    {
        var wire = Plan.Wires.First(w => w is { ByHand: false, DecidedBy: "protection" });
        var built = HarnessFreezer.Freeze(Plan);
        built = built with { Wires = [.. built.Wires.Select(w => w.Id == wire.Id ? w with { Size = "0.5" } : w)] };
        var finding = Assert.Single(Keep(Plan.Harness, built).PlanningFindings, f => f.Rule == "built-wire-size");
        Assert.Contains(wire.Id, finding.Where);
        Assert.Contains("was built as 0.5", finding.Message, StringComparison.Ordinal);
        Assert.Contains("protection", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_built_return_keeps_its_ground_point_though_another_is_nearer()
    {
        var grounds = Plan.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && t.Side == Side.Bay).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var open = Plan.Harness.Things.SelectMany(t => t.Returns.Where(r => r.To is null).Select(r => $"{t.Id}.{r.Pin}")).ToHashSet(StringComparer.Ordinal);
        var wire = Plan.Wires.First(w => open.Contains(w.From.ToString()) && grounds.Contains(w.To.At));
        var other = Plan.Wires.Where(w => grounds.Contains(w.To.At) && w.To.At != wire.To.At).Select(w => w.To).First();
        var built = HarnessFreezer.Freeze(Plan);
        built = built with { Wires = [.. built.Wires.Select(w => w.Id == wire.Id ? w with { To = other.ToString() } : w)] };
        // as described: the plan's harness has its returns wired already
        var described = Plan.Harness with { Nets = [.. Plan.Harness.Nets.Where(n => n.Id != wire.Net)], Circuits = [.. Plan.Harness.Circuits.Where(c => c.Id != wire.Circuit)] };
        Assert.Equal(other.At, Keep(described, built).Wires.Single(w => w.From.ToString() == wire.From.ToString() && w.Net == wire.Net).To.At);
    }

    private static Plan Keep(Harness harness, FrozenHarness built) => FrozenKeeper.KeepLengths(HarnessPlanner.Plan(FrozenKeeper.Keep(harness, built), PlanningOptions.Usual), built);

    private static (string, string, string, double, string) Told(Splice s) => (s.Id, s.Net, s.Segment, s.AtMm, string.Join(' ', s.Wires.Order(StringComparer.Ordinal)));

    // a point of the splice's stretch that no other splice is near
    private static double Free(Splice splice)
    {
        var segment = Plan.Tree.Segments.Single(s => s.Id == splice.Segment);
        var others = Plan.Splices.Where(s => s.Segment == splice.Segment && s.Id != splice.Id).Select(s => s.AtMm).ToList();
        return Enumerable.Range(1, (int)(segment.LengthMm!.Value / 7)).Select(i => i * 7.0).First(mm => mm != splice.AtMm && mm > 40 && mm < segment.LengthMm - 40 && others.All(o => Math.Abs(o - mm) > 60));
    }
}
