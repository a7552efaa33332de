using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>What a fuse carries: its largest single load, the continuous part of its worst state, and the whole of it, in amperes.</summary>
public sealed record FuseBurden(FuseChoice Fuse, FusedLoad? Largest, double ContinuousA, double TotalA, string State, IReadOnlyList<FusedLoad> InState)
{
    public double RatingA => Fuse.RatingA!.Value;

    /// <summary>Fuses with a rating and at least one load. States are summed one by one, never blindly.</summary>
    public static IEnumerable<FuseBurden> Of(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Plan.Fuses.Where(f => f.RatingA is > 0).Select(f => Of(context, f)).Where(b => b.TotalA > 0);
    }

    private static FuseBurden Of(RuleContext context, FuseChoice fuse)
    {
        var loads = context.LoadsOn(fuse.Id).DistinctBy(l => (l.Thing.Id, l.Element?.Id, l.Circuit.Id)).ToList();
        var states = context.Harness.States.Select(s => (s.Id, On: Together(context, loads.FindAll(l => l.OnIn(context, s))))).ToList();
        var worst = states.OrderByDescending(s => s.Id == fuse.LoadState).ThenByDescending(s => s.On.Sum(l => l.CurrentA)).ThenBy(s => s.Id, StringComparer.Ordinal).FirstOrDefault();
        var on = worst.On ?? [];
        var largest = loads.OrderByDescending(l => l.CurrentA).ThenBy(l => l.Thing.Id, StringComparer.Ordinal).FirstOrDefault();
        var total = fuse.LoadA ?? Math.Max(on.Sum(l => l.CurrentA), largest?.CurrentA ?? 0);
        // a switch further up that is off in a state keeps what hangs on it off: what was solved is the most
        var continuous = states.Select(s => s.On.Where(l => l.Circuit.Duty == Duty.Continuous).Sum(l => l.CurrentA)).DefaultIfEmpty(0).Max();
        return new(fuse, largest, Math.Min(continuous, total), total, fuse.LoadState ?? worst.Id ?? "the worst state", on);
    }

    /// <summary>The fewest options with which its loads in the worst state take more than so much.</summary>
    public BuildCondition Cause(RuleContext context, double overA) => context.Builds.CauseOf(InState, l => l.Circuit.OnlyWith, l => l.CurrentA, overA);

    /// <summary>Loads of exclusive options never add up: those of the build that takes most, the largest first.</summary>
    private static IReadOnlyList<FusedLoad> Together(RuleContext context, List<FusedLoad> loads) => context.Builds.Heaviest(
        [.. OneSpeed(loads).OrderByDescending(l => l.CurrentA).ThenBy(l => l.Circuit.Id, StringComparer.Ordinal).ThenBy(l => l.Thing.Id, StringComparer.Ordinal)], l => l.Circuit.OnlyWith, l => l.CurrentA);

    // of a motor's speeds only one turns it: the one that takes most
    private static IEnumerable<FusedLoad> OneSpeed(List<FusedLoad> loads) =>
        loads.GroupBy(l => l.Element is { Kind: ElementKind.Motor } motor ? (l.Thing.Id, motor.PinB, "motor", l.Circuit.OnlyWith.ToString()) : (l.Thing.Id, l.Element?.Id, l.Circuit.Id, ""))
            .Select(g => g.MaxBy(l => l.CurrentA)!);
}
