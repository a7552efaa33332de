using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>What is said about waivers themselves.</summary>
internal static class WaiverRules
{
    public static readonly RuleInfo IncompleteInfo = new("waiver-incomplete", "Waiver without reason, name or date", Severity.Error, Consequence.Untidy, "common practice, no source",
        "A waiver is a written decision: who comes later must know why, by whom and when.");

    public static readonly RuleInfo IdleInfo = new("waiver-idle", "Waiver that matches no finding", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "A waiver left over from an older design hides the next finding of the same rule.");

    public static Finding Incomplete(Waiver waiver, RuleContext context)
    {
        string[] missing = [.. new[] { ("because", waiver.Because), ("by", waiver.By), ("on", waiver.On) }.Where(p => string.IsNullOrWhiteSpace(p.Item2)).Select(p => $"'{p.Item1}'")];
        return context.Found(IncompleteInfo, $"The waiver of {waiver.Rule} lacks {Wording.List(missing)}: it waives nothing.", "Give the reason, the name and the date.", [waiver.Rule], at: waiver.At);
    }

    public static Finding MatchesNothing(Waiver waiver, RuleContext context)
    {
        var known = RuleCatalogue.Info(waiver.Rule) is not null;
        var aim = waiver.For.IsEmpty ? "" : $" for {Wording.List(waiver.For)}";
        var message = known ? $"The waiver of {waiver.Rule}{aim} matches no finding." : $"The waiver of {waiver.Rule}{aim} matches no finding: there is no such rule.";
        var nearest = known ? null : NearestName.Of(waiver.Rule, RuleCatalogue.Infos.Select(i => i.Id));
        var cure = nearest is null ? "Take it out, or name what it is for as the finding does." : $"Did you mean {nearest}?";
        return context.Found(IdleInfo, message, cure, [waiver.Rule, .. waiver.For], at: waiver.At, severity: known ? null : Severity.Error);
    }
}
