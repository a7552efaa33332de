using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class LiveBladeBare : IDesignRule
{
    public RuleInfo Info { get; } = new("live-end-unguarded", "Always-live wire on a bare blade", Severity.Warning, Consequence.Fire, "common practice, no source",
        "Pulled off, the terminal hangs live against the body (the horn is the usual case).");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var wire in context.Plan.Wires.Where(w => context.Circuit(w.Circuit) is { LiveWith: KeyPosition.Off, IsReturn: false, Duty: not Duty.Signal, UnfusedBecause: null } && !context.IsReturn(w)))
        {
            if (context.Thing(wire.To.At) is { Kind: ThingKind.Load or ThingKind.Motor or ThingKind.Lamp or ThingKind.Switch, ConnectorPart: null } thing && thing.Pins.Any(p => p.Name == wire.To.Pin && p.Style == PinStyle.Blade)
                && !wire.To.ThreadOnFirst.Any(t => t.Contains("boot", StringComparison.OrdinalIgnoreCase) || t.Contains("sleeve", StringComparison.OrdinalIgnoreCase)))
            {
                yield return context.Found(Info, $"{wire.Named()} is always live and ends on the bare blade {wire.To}: unplugged, it touches the body.", "Use an insulated receptacle or boot, and blank it when the part is unplugged.", [wire.Id, thing.Id], wire.Builds, thing.At);
            }
        }
    }
}
