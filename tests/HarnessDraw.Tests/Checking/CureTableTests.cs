using System.Text.RegularExpressions;
using HarnessDraw.Checking;
using HarnessDraw.Checking.Cures;

namespace HarnessDraw.Tests.Checking;

/// <summary>Every rule of the trade that the program has, with the cures that 'check' plans and solves again for it, or why no figure cures it.</summary>
public sealed partial class CureTableTests
{
    private static readonly Dictionary<string, string> NoFigureCures = new(StringComparer.Ordinal)
    {
        ["fuse-place-unknown"] = "the place must be looked up on the vehicle",
        ["unfused-lead-unguarded"] = "a sheath follows from the zone of its run and the catalogue's coverings, not from a figure of the circuit",
        ["instruments-with-motor"] = "a gauge's feed lies in the cabin: which position it is moved to is for the hands",
        ["gauge-not-its-area"] = "the catalogue's row is wrong: the seller's data sheet mends it",
        ["parallel-wires"] = "one of the two circuits is taken out, and a change in memory takes nothing out",
        ["mirrored-pin-map"] = "which face the pin map was read from is for eyes to see",
        ["firewall-passes"] = "whether switch or relay moves to the other side is the owner's choice",
        ["mixed-volts-in-connector"] = "a body with a key is a part",
        ["foreign-terminal"] = "the catalogue's row decides what locks",
        ["cavity-unplugged"] = "the catalogue lacks a plug of this size: a part must be given",
        ["plugs-swappable"] = "another body or a printed tag is a part",
        ["ring-not-its-stud"] = "the catalogue lacks a ring for this stud and size: a part must be given",
        ["rings-per-stud"] = "a bus bar is a part, and what moves to it is the owner's choice",
        ["torque-not-given"] = "the torque is the maker's figure",
        ["sealant-not-named"] = "the sealant is a word for the builder",
        ["sender-shares-return"] = "the ground point of the gauge is for the owner to name",
        ["screen-not-grounded"] = "which pin takes the drain wire the maker of the electronics says",
        ["ground-finish-missing"] = "the finish is seen on the vehicle",
        ["coil-ballast"] = "the ballast belongs to the coil: its data sheet gives the resistance",
        ["brake-warning-unproved"] = "a check contact is a part",
        ["live-end-unguarded"] = "a boot or an insulated receptacle is a part",
        ["sender-by-its-thread"] = "how the thread is sealed is for the hands",
        ["interlock-bypassed"] = "which pins of the neutral switch the start wire passes is for the owner to say",
        ["positive-ground-alternator"] = "another alternator or another polarity is another vehicle",
    };

    public static TheoryData<string> Rules => [.. NumberedRuleTests.Rules.Select(r => r.Data.Item2).Distinct()];

    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rule_has_cures_that_are_tried_or_a_reason_why_no_figure_cures_it(string rule) =>
        Assert.True(CureProposals.Rules.Contains(rule) ^ NoFigureCures.ContainsKey(rule), rule);

    /// <summary>What no plan with it has shown is not told as a figure; that stands in the cures of <see cref="CureProposals"/>.</summary>
    [Theory]
    [MemberData(nameof(Rules))]
    public void A_rules_own_words_of_cure_name_no_figure_that_was_not_tried(string rule)
    {
        var limits = RuleCatalogue.Info(rule)!.Limits.Select(l => l.Value).ToList();
        foreach (var one in RuleTests.Cases.Where(c => c.Rule == rule))
        {
            var cures = HarnessChecker.Check(one.Broken(SmallPlan.Plan), RuleSettings.BuiltIn).Where(f => f.Rule == rule && f.Cure is not null);
            Assert.All(cures, f => Assert.All(Amount().Matches(f.Cure!), m => Assert.Contains(limits, l => l == double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture))));
        }
    }

    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?) ?(?:A|V|W|Ω|mm²|mm)(?!\w)")]
    private static partial Regex Amount();
}
