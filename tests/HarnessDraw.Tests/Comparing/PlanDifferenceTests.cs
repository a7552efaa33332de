using HarnessDraw.Checking;
using HarnessDraw.Comparing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Comparing;

/// <summary>What a tried change is said to do.</summary>
public class PlanDifferenceTests
{
    private const string MayStay = "wires that may stay as they are";

    [Fact]
    public void Wires_that_a_larger_fuse_would_let_be_thinner_may_stay_and_break_no_rule()
    {
        var (before, after) = (Saloon(null), Saloon(10));
        var told = Assert.Single(PlanDifference.Of(before, [], after, []).Changes, c => c.What.StartsWith(MayStay, StringComparison.Ordinal));
        var ids = told.Before!.Split(", ").Select(w => w.Split(' ')[0]).ToHashSet(StringComparer.Ordinal);
        var thinner = after.Wires.Where(w => w.AreaMm2 < before.Wires.Single(b => b.Id == w.Id).AreaMm2).Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        Assert.NotEmpty(thinner);
        Assert.Equal(thinner, ids);

        // the larger fuse with all of them as they were
        var stay = after with { Wires = [.. after.Wires.Select(w => ids.Contains(w.Id) ? As(w, before.Wires.Single(b => b.Id == w.Id)) : w)] };
        Assert.Empty(Found(stay).Except([.. Found(before), .. Found(after)]));
    }

    [Fact]
    public void A_smaller_fuse_leaves_nothing_as_it_is() =>
        Assert.DoesNotContain(PlanDifference.Of(Saloon(10), [], Saloon(null), []).Changes, c => c.What.StartsWith(MayStay, StringComparison.Ordinal));

    private static Wire As(Wire wire, Wire was) =>
        wire with { AreaMm2 = was.AreaMm2, SizeLabel = was.SizeLabel, OutsideMm = was.OutsideMm, From = wire.From with { Terminal = was.From.Terminal }, To = wire.To with { Terminal = was.To.Terminal } };

    private static List<(string, string)> Found(Plan plan) => [.. HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Severity != Severity.Advice).Select(f => (f.Rule, string.Join(' ', f.Where)))];

    // each lamp by itself: sized alike, those of the other side would keep them thick
    private static Plan Saloon(double? f5A)
    {
        var harness = ExamplePlans.Of("brackmere-six").Harness;
        return HarnessPlanner.Plan(harness with { SizedAlike = [], Protections = [.. harness.Protections.Select(p => p.Id == "F5" ? p with { RatingA = f5A } : p)] }, PlanningOptions.Usual);
    }
}
