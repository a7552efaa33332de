using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

internal sealed class NoSource : IDesignRule
{
    public RuleInfo Info { get; } = new("no-source", "Nothing feeds the harness", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Without a source no current flows: neither sizes nor fuses nor volts mean anything.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        if (context.Graph.Posts.IsEmpty)
        {
            yield return context.Found(Info, $"No battery, alternator or converter feeds the {Wording.Count(context.Plan.Wires.Length, "wire")}: {(context.Harness.Power.Sources.IsEmpty ? "none is described" : $"{Wording.List(context.Harness.Power.Sources.Select(s => s.Id))} has no live post")}.",
                "Describe the battery under 'power' with its posts.", [context.Harness.Id, .. context.Harness.Power.Sources.Select(s => s.Id)]);
        }
    }
}
