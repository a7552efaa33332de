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
            var pairs = connector.Neighbours().SelectMany(p => new[] { (Live: p.A, Sender: p.B), (Live: p.B, Sender: p.A) })
                .Where(p => context.IsPermanentlyLive(p.Live.Wire) && IsSenderOrGround(context, p.Sender.Wire) && context.CanMeet(p.Live.Wire.Builds, p.Sender.Wire.Builds)).ToList();
            if (pairs.Count > 0)
            {
                yield return context.Found(Info, $"{connector.Thing.Id}: {Wording.List(pairs.Select(p => $"{p.Live.Cavity} ({p.Live.Wire.Named()}, always live) is beside {p.Sender.Cavity} ({p.Sender.Wire.Named()})"))} in an unsealed body.",
                    "Leave a cavity between them, or use a sealed connector.", [connector.Thing.Id, .. pairs.SelectMany(p => new[] { p.Live.Wire.Id, p.Sender.Wire.Id })],
                    pairs.Count == 1 ? pairs[0].Live.Wire.Builds.And(pairs[0].Sender.Wire.Builds) : null, connector.Thing.At);
            }
        }
    }

    // a load's own ground sits beside its feed by nature: only mates are meant for grounds
    private static bool IsSenderOrGround(RuleContext context, Wire wire) =>
        context.Circuit(wire.Circuit)?.Duty == Duty.Signal || (context.IsReturn(wire) && new[] { wire.From.At, wire.To.At }.Any(at => context.Thing(at)?.Kind == ThingKind.Mate));
}
