using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class LiveBesideSender : IDesignRule
{
    public RuleInfo Info { get; } = new("live-beside-sender", "Always-live cavity beside a sender or ground", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "Damp and live copper grow a bridge: gauges lie first, then the contact is gone.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => !c.Part.Sealed))
        {
            foreach (var (a, b) in connector.Neighbours().SelectMany(p => new[] { (p.A, p.B), (A: p.B, B: p.A) }))
            {
                if (IsAlwaysLive(context, a.Wire) && IsSenderOrGround(context, b.Wire) && context.CanMeet(a.Wire.Builds, b.Wire.Builds))
                {
                    yield return context.Found(Info, $"{connector.Thing.Id}: {a.Cavity} ({a.Wire.Named()}, always live) is beside {b.Cavity} ({b.Wire.Named()}) in an unsealed body.",
                        "Leave a cavity between them, or use a sealed connector.", [$"{connector.Thing.Id}.{a.Cavity}", $"{connector.Thing.Id}.{b.Cavity}", a.Wire.Id, b.Wire.Id], a.Wire.Builds.And(b.Wire.Builds), connector.Thing.At);
                }
            }
        }
    }

    private static bool IsAlwaysLive(RuleContext context, Wire wire) => context.Circuit(wire.Circuit) is { LiveWith: KeyPosition.Off, IsReturn: false, Duty: not Duty.Signal } && !context.IsReturn(wire);

    // a load's own ground sits beside its feed by nature: only mates are meant for grounds
    private static bool IsSenderOrGround(RuleContext context, Wire wire) =>
        context.Circuit(wire.Circuit)?.Duty == Duty.Signal || (context.IsReturn(wire) && new[] { wire.From.At, wire.To.At }.Any(at => context.Thing(at)?.Kind == ThingKind.Mate));
}
