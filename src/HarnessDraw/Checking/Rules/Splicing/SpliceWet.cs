using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceWet : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-wet-unsealed", "Splice without a seal in a wet zone", Severity.Error, Consequence.DoesNotLast, "vehicle service practice: adhesive-lined shrink",
        "Water creeps along the strands and eats the joint from inside.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Splices.Select(s => (Splice: s, Zone: context.Zone(context.Segment(s.Segment)?.Zone), Part: context.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == s.Part)))
            .Where(p => p.Zone is { Exposure: not Exposure.Dry } && p.Part?.Sealed != true)
            .Select(p => context.Found(Info, $"{p.Splice.Id} lies in '{p.Zone!.Id}' ({p.Zone.Exposure.ToString().ToLowerInvariant()}) and {(p.Part is null ? "no sealed splice is named" : $"{p.Part.Id} is not sealed")}.", "Use an adhesive-lined splice, 25 mm past each side, or move it to a dry stretch.", [p.Splice.Id, p.Splice.Segment], p.Splice.Builds));
}
