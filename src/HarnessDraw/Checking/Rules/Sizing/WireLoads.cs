using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

/// <summary>Current of a wire in its worst state against what it bears.</summary>
internal static class WireLoads
{
    public static IEnumerable<Measure> Of(RuleContext context, RuleInfo info, bool returns) =>
        context.Plan.Wires.Where(w => context.IsReturn(w) == returns && w is { Worst: not null, AmpacityA: not null } && !IsTold(context, w) && IsSteady(context, w)).Select(w => Of(context, info, w, returns));

    // a way as hot as the insulation may get bears nothing, whatever the size: that is told when it is planned
    internal static bool IsTold(RuleContext context, Wire wire) => wire.AmpacityA is 0 && context.Plan.PlanningFindings.Any(f => f.Rule == "no-size-large-enough" && f.Where.Contains(wire.Id));

    // a starter lead heats for seconds only: its size follows from voltage drop
    private static bool IsSteady(RuleContext context, Wire wire) => wire.Worst!.State is not "cranking" && context.Circuit(wire.Circuit)?.Duty is not Duty.Momentary;

    private static Measure Of(RuleContext context, RuleInfo info, Wire wire, bool returns)
    {
        var (amps, bears) = (wire.Worst!.CurrentA, wire.AmpacityA!.Value);
        return new($"current of {wire.Named()}", amps, bears, "A", () => context.Found(info,
                $"{(returns ? "Return wire" : "Wire")} {wire.Named()} carries {Figure.Amps(amps)} in '{wire.Worst.State}'; {Figure.Size(wire)} wire bears {Figure.Amps(bears)} in its bundle and zone: its insulation softens.",
                "Use a larger wire, or move it out of the bundle or the heat.", [wire.Id, wire.Circuit], CurrentCause.Of(wire, bears), context.Circuit(wire.Circuit)?.At));
    }
}
