using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class FirewallPasses : IDesignRule
{
    public RuleInfo Info { get; } = new("firewall-passes", "Circuit crosses the firewall more than once", Severity.Advice, Consequence.DoesNotWork, "workshop practice, no standard",
        "Every pass is two more contacts in series, each with its own drop and heat.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var mates = context.Harness.Things.Where(t => t.Kind == ThingKind.Mate && t.Side == Side.Bay).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        // where the cabin side is made too, its wires end at the other half of the same contact
        var cabin = context.Harness.Nets.Where(n => n.Side == Side.Cabin).Select(n => n.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn))
        {
            var wires = context.WiresOf(circuit.Id).Where(w => !cabin.Contains(w.Net)).ToList();
            var inward = wires.Where(w => mates.Contains(w.To.At)).ToList();
            var back = wires.Where(w => mates.Contains(w.From.At)).ToList();
            if (inward.Count > 0 && back.Count > 0)
            {
                var amps = back.Concat(inward).Max(w => w.Worst?.CurrentA ?? 0);
                var lost = amps * 4 * context.Harness.Assumed.ContactOhm;
                yield return context.Found(Info, $"{circuit.Id} crosses the firewall twice ({Wording.List(inward.Concat(back).Select(w => PointWords.Of(mates.Contains(w.To.At) ? w.To : w.From)))}): 4 contacts in series lose {Figure.Volts(lost)} at {Figure.Amps(amps)}.",
                    "Let a relay in the bay carry the load, and only its coil cross.", [circuit.Id, .. inward.Concat(back).Select(w => w.Id)], circuit.OnlyWith, circuit.At);
            }
        }
    }
}
