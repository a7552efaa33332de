using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>A fuse that nobody can find: it sits on nothing and no place is given, or only that of the harness's root.</summary>
internal sealed class FusePlaceUnknown : IDesignRule
{
    public RuleInfo Info { get; } = new("fuse-place-unknown", "Place of a fuse not given", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "The lid card and whoever stands in the rain with a torch need the place of every fuse.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Protections.Where(p => p.On is null && string.IsNullOrWhiteSpace(context.Thing(p.Id)?.Place))
            .Select(p => context.Found(Info, $"Where is {p.Id}? It sits on nothing and has no place: the lid card cannot say.", "Give the thing that it sits on, or its place.", [p.Id], at: p.At));
}
