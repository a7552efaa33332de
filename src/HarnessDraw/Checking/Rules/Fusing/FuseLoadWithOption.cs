using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>A fuse whose load a choice raises beyond what its rating was meant for.</summary>
internal sealed class FuseLoadWithOption : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuse-load-with-option", "An option loads a fuse beyond its share", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "A fuse that is right for the usual build runs hot or opens once the larger option is fitted.")
    {
        Limits = [new("share", 100 * PlanningOptions.Usual.MostFuseShare, "%", "common practice, no source")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var fuse in context.Plan.Fuses.Where(f => f.RatingA is > 0))
        {
            var loads = context.LoadsOn(fuse.Id).DistinctBy(l => (l.Thing.Id, l.Element?.Id, l.Circuit.Id)).ToList();
            if (loads.All(l => l.Circuit.OnlyWith.IsAlways && l.Thing.OnlyWith.IsAlways) || context.Plan.Builds.IsEmpty)
            {
                continue;
            }

            var limit = context.Limit(Info, "share") / 100 * fuse.RatingA!.Value;
            var seen = context.Plan.Builds.Select(b => (Build: b, Worst: InBuild(context, loads, b))).ToList();
            var worst = seen.OrderByDescending(s => s.Worst.Amps).First();
            if (worst.Worst.Amps > seen[0].Worst.Amps)
            {
                yield return new($"load of fuse {fuse.Id} with options", worst.Worst.Amps, limit, "A", () => TooMuch(context, fuse, limit, worst.Worst, seen[0].Worst.Amps, [.. seen.Select(s => (s.Build, s.Worst.Amps > limit))]));
            }
        }
    }

    private Finding TooMuch(RuleContext context, FuseChoice fuse, double limit, (double Amps, string State) worst, double usual, ImmutableArray<(ImmutableSortedDictionary<string, string> Build, bool Over)> seen)
    {
        var only = SmallestBuilds.Of([.. seen.Where(s => s.Over).Select(s => s.Build)], [.. seen.Where(s => !s.Over).Select(s => s.Build)]);
        return context.Found(Info, $"With {(only.IsAlways ? "options" : only)} fuse {fuse.Id} carries {Figure.Amps(worst.Amps)} in '{worst.State}', {Figure.Percent(worst.Amps / fuse.RatingA!.Value)} of {Figure.Amps(fuse.RatingA.Value)} (at most {Figure.Amps(limit)}); the usual build {Figure.Amps(usual)}.",
            "Give the option a fuse of its own, or take the next rating if the wires bear it.", [fuse.Id], only, FuseWords.At(context, fuse.Id));
    }

    private static (double Amps, string State) InBuild(RuleContext context, List<FusedLoad> loads, ImmutableSortedDictionary<string, string> build) =>
        context.Harness.States.Select(s => (Amps: loads.Where(l => l.OnIn(context, s) && l.Circuit.OnlyWith.Holds(build) && l.Thing.OnlyWith.Holds(build)).Sum(l => l.CurrentA), s.Id))
            .OrderByDescending(s => s.Amps).FirstOrDefault();
}
