using HarnessDraw.Checking;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Every rule: one plan that breaks it and one that must not, with the numbers in the message.</summary>
public class RuleTests
{
    internal static IReadOnlyList<RuleCase> Cases { get; } = [.. IdentityCases.All, .. FusingCases.All, .. WireSizeCases.All, .. ConnectorCases.All, .. GroundingCases.All, .. ParticularCases.All, .. RoutingCases.All, .. NetworkCases.All, .. BuildCases.All, .. MakingCases.All, .. VariantCases.All];

    public static TheoryData<int, string> Numbers => [.. Cases.Select((c, i) => (i, c.Rule))];

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_broken_plan_is_found_with_its_numbers(int index, string rule)
    {
        var found = Find(rule, Cases[index].Broken(SmallPlan.Plan));
        Assert.NotEmpty(found);
        var texts = found.Select(f => $"{f.Message} -- {f.Cure}").ToList();
        Assert.True(texts.Any(t => Cases[index].Says.All(s => t.Contains(s, StringComparison.Ordinal))), string.Join('\n', texts));
        Assert.All(found, f => Assert.NotEmpty(f.Where));
    }

    /// <summary>As on the sheets: 'firewall B10', not 'firewall.B10' as the plan file writes it.</summary>
    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_finding_and_its_margin_name_points_as_the_sheets_do(int index, string rule)
    {
        var plan = Cases[index].Broken(SmallPlan.Plan);
        var points = plan.Harness.Things.SelectMany(t => t.Pins.Select(p => $"{t.Id}.{p.Name}")).Concat(plan.Cavities.Select(c => $"{c.Connector}.{c.Cavity}")).Concat(plan.Nodes.Select(n => n.Node))
            .Where(p => p.Contains('.', StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).ToList();
        var texts = Find(rule, plan).SelectMany(f => new[] { f.Message, f.Cure }).OfType<string>().Concat(HarnessChecker.Margins(plan, RuleSettings.BuiltIn, 500).Where(m => m.Rule == rule).Select(m => m.What));
        Assert.Empty(texts.SelectMany(t => points.Where(p => t.Contains(p, StringComparison.Ordinal)).Select(p => $"{p}: {t}")));
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void A_sound_plan_is_left_alone(int index, string rule) =>
        Assert.Empty(Find(rule, Cases[index].Sound(SmallPlan.Plan)).Select(f => f.Message));

    [Fact]
    public void Every_registered_rule_has_a_case() =>
        Assert.Empty(RuleCatalogue.All.Select(r => r.Info.Id).Except(Cases.Select(c => c.Rule)));

    [Fact]
    public void Every_threshold_names_its_source_and_every_rule_says_why() =>
        Assert.All(RuleCatalogue.All.Select(r => r.Info), i =>
        {
            Assert.Matches("^[a-z0-9]+(-[a-z0-9]+)+$", i.Id);
            Assert.NotEmpty(i.Source);
            Assert.EndsWith(".", i.Why);
            Assert.All(i.Limits, l => Assert.NotEmpty(l.Source));
        });

    private static List<Finding> Find(string rule, Plan plan) => [.. HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Rule == rule)];
}
