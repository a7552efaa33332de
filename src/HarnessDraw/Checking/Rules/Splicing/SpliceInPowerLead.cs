using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Splicing;

internal sealed class SpliceInPowerLead : IDesignRule
{
    public RuleInfo Info { get; } = new("splice-in-power-lead", "Splice in a charge, starter or screened lead", Severity.Warning, Consequence.Fire, "common practice, no source",
        "These leads run in one piece: a joint there is the hottest, or the noisiest, point.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Plan.Splices.Select(s => (Splice: s, Why: Why(context, s))).Where(p => p.Why is not null)
            .Select(p => context.Found(Info, $"{p.Splice.Id} is in {p.Why}.", "Run it in one piece; join at a stud.", [p.Splice.Id, p.Splice.Circuit], p.Splice.Builds, context.Circuit(p.Splice.Circuit)?.At));

    private static string? Why(RuleContext context, Splice splice)
    {
        var posts = context.Graph.Posts.Select(p => p.Node).ToHashSet(StringComparer.Ordinal);
        var ends = splice.Wires.Select(context.Wire).OfType<Wire>().SelectMany(w => new[] { w.From, w.To }).ToList();
        return context.Circuit(splice.Circuit)?.Cable is { Screened: true } ? $"the screened cable of {splice.Circuit}"
            : ends.FirstOrDefault(e => posts.Contains(e.ToString())) is { } post ? $"the lead from {PointWords.Of(post)}"
            : ends.FirstOrDefault(e => context.Thing(e.At) is { Kind: ThingKind.Starter } t && t.Pins.Any(p => p.Name == e.Pin && p.Style == PinStyle.Stud)) is { } stud ? $"the lead to {PointWords.Of(stud)}" : null;
    }
}
