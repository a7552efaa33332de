using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

public class WaiverTests
{
    private static readonly Waiver Kept = new("shared-lamp-fuse", ["dipped beam"], "original layout kept", "owner", "2026-09-11", null);

    [Fact]
    public void A_waived_finding_keeps_its_text_and_names_its_waiver()
    {
        var before = Check(SmallPlan.Plan).Single(f => f.Rule == "shared-lamp-fuse" && f.Where.Contains("dipped beam"));
        var after = Check(With(Kept)).Single(f => f.Rule == "shared-lamp-fuse" && f.Where.Contains("dipped beam"));
        Assert.Equal(before.Message, after.Message);
        Assert.Equal(before.Severity, after.Severity);
        Assert.Same(Kept, after.WaivedBy);
    }

    [Fact]
    public void A_waiver_for_one_circuit_leaves_the_others_open() =>
        Assert.Contains(Check(With(Kept)), f => f is { Rule: "shared-lamp-fuse", WaivedBy: null } && f.Where.Contains("main beam"));

    [Theory]
    [InlineData("", "owner", "2026-09-11", "'because'")]
    [InlineData("kept", " ", "2026-09-11", "'by'")]
    [InlineData("kept", "owner", "", "'on'")]
    public void A_waiver_without_reason_name_or_date_waives_nothing_and_is_an_error(string because, string by, string on, string missing)
    {
        var findings = Check(With(Kept with { Because = because, By = by, On = on }));
        Assert.All(findings, f => Assert.Null(f.WaivedBy));
        var said = findings.Single(f => f.Rule == "waiver-incomplete");
        Assert.Equal(Severity.Error, said.Severity);
        Assert.Contains(missing, said.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_of_an_unknown_rule_is_an_error_with_the_nearest_rule()
    {
        var said = Check(With(Kept with { Rule = "shared-lamp-fuze" })).Single(f => f.Rule == "waiver-idle");
        Assert.Equal(Severity.Error, said.Severity);
        Assert.Equal("Did you mean shared-lamp-fuse?", said.Cure);
    }

    [Fact]
    public void A_waiver_that_matches_no_finding_is_advice() =>
        Assert.Equal(Severity.Advice, Check(With(Kept with { For = ["horn"] })).Single(f => f.Rule == "waiver-idle").Severity);

    [Fact]
    public void A_waiver_may_name_the_circuit_of_a_wire()
    {
        var plan = With(Kept with { Rule = "base-tracer-swapped", For = ["horn"] }).Wire("F01", w => w with { Colour = "RD/GN" }).Wire("F07", w => w with { Colour = "GN/RD" });
        Assert.NotNull(Check(plan).Single(f => f.Rule == "base-tracer-swapped").WaivedBy);
    }

    [Fact]
    public void Findings_are_sorted_by_consequence_and_waived_ones_come_last()
    {
        var findings = Check(With(Kept).Wire("F07", w => w with { Id = "7E05" }).Wire("F11", w => w with { Worst = new("night", 40, 0.1, 90) }));
        var order = findings.Where(f => f.WaivedBy is null).Select(f => RuleCatalogue.Info(f.Rule)!.Consequence).ToList();
        Assert.Equal(order.Order(), order);
        Assert.NotNull(findings[^1].WaivedBy);
    }

    [Fact]
    public void Planning_findings_are_told_once_with_the_others()
    {
        var own = new Finding { Rule = "no-size-big-enough", Severity = Severity.Error, Message = "No size bears it.", Where = ["E01"] };
        Assert.Single(Check(SmallPlan.Plan with { PlanningFindings = [own, own] }), f => f.Rule == own.Rule);
    }

    private static Plan With(Waiver waiver) => SmallPlan.Plan.Harness(h => h with { Waivers = [waiver] });

    private static System.Collections.Immutable.ImmutableArray<Finding> Check(Plan plan) => HarnessChecker.Check(plan, RuleSettings.BuiltIn);
}
