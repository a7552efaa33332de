using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Tests.Checking;

public class MarginTests
{
    [Fact]
    public void The_closest_pass_comes_first()
    {
        // 11.9 A of the 12 A that 80 % of a 15 A contact allows
        var margins = HarnessChecker.Margins(SmallPlan.Plan.Wire("F04", w => w with { Worst = new("night", 11.9, 0.1, 60) }), RuleSettings.BuiltIn, 500);
        Assert.Equal(margins.Select(m => Math.Round(m.Fraction, 9)).Order(), margins.Select(m => Math.Round(m.Fraction, 9)));
        Assert.All(margins, m => Assert.True(m.Fraction >= 0));
        Assert.Contains(margins, m => m.Rule == "contact-overloaded" && m.ToString() == "contact firewall B3 of F04 (main beam): 11.9 A of 12 A, 0 % to spare");
    }

    [Fact]
    public void A_threshold_and_a_severity_from_a_rule_file_win()
    {
        var settings = new RuleSettings { Limits = [new("wire-too-thin", "in the bay", 0.75)], Severities = [new("wire-too-thin", Severity.Error)] };
        var found = HarnessChecker.Check(SmallPlan.Plan, settings).Where(f => f.Rule == "wire-too-thin").ToList();
        Assert.NotEmpty(found);
        Assert.All(found, f => Assert.Equal(Severity.Error, f.Severity));
        Assert.Equal(["wire-too-thin: error", "wire-too-thin: in the bay 0.75 mm²"], settings.Changes);
    }

    [Theory]
    [InlineData("times all loads", 1.25, true)]
    [InlineData("times all loads", 100, false)]
    [InlineData("of way", 50, true)]
    [InlineData("of way", 101, false)]
    public void What_counts_as_a_dead_short_can_be_set(string limit, double value, bool told) =>
        Assert.Equal(told, HarnessChecker.Check(NetworkCases.Shorted(SmallPlan.Plan, 2000), new RuleSettings { Limits = [new("dead-short", limit, value)] }).Any(f => f.Rule == "dead-short"));

    [Fact]
    public void The_same_plan_gives_the_same_findings() =>
        Assert.Equal(HarnessChecker.Check(SmallPlan.Plan, RuleSettings.BuiltIn).Select(f => f.Message), HarnessChecker.Check(SmallPlan.Plan, RuleSettings.BuiltIn).Select(f => f.Message));
}
