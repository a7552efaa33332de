using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>
/// What the kept cabin side joins behind a firewall connector, as far as the circuits say: the cabin pins a circuit comes from or feeds, and
/// for a circuit that goes in and comes back its two cavities. Cavities with a kept pin of their own are told by that.
/// </summary>
internal static class MateHops
{
    public static IEnumerable<Hop> Of(Plan plan, JointOhms joints)
    {
        var harness = plan.Harness;
        var things = harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        var kept = harness.Kept.Where(k => k.ComesFrom is not null).Select(k => (k.Connector, k.Cavity)).ToHashSet();
        // where the cabin side is made too, its wires come to the same cavity
        var made = harness.Nets.Where(n => n.Side == Side.Cabin).Select(n => n.Circuit).ToHashSet(StringComparer.Ordinal);
        var crossings = PlannedEnd.Of(plan)
            .Where(e => !made.Contains(e.Wire.Circuit) && e.End.Pin is not null && things.TryGetValue(e.End.At, out var t) && t.Kind == ThingKind.Mate)
            .GroupBy(e => e.Wire.Circuit, StringComparer.Ordinal);
        foreach (var crossing in crossings)
        {
            var circuit = harness.Circuits.FirstOrDefault(c => c.Id == crossing.Key);
            var cavities = crossing.Select(e => (e.End.At, e.End.Pin!)).Distinct().ToList();
            var cabin = circuit is null ? [] : circuit.Feeds.Append(circuit.From).OfType<PinRef>().Where(p => p.Pin is not null && things.TryGetValue(p.Thing, out var t) && t.Side == Side.Cabin && t.Kind != ThingKind.Mate).ToList();
            foreach (var (at, pin) in cavities.Where(c => !kept.Contains(c)))
            {
                foreach (var inside in cabin)
                {
                    // the mated contact counts at the wire's end: inward the joint on the cabin's pin follows, outward a contact and the switch that the circuit comes from
                    yield return new($"{at}.{pin}", inside.ToString(), HopKind.Kept, inside == circuit!.From ? joints.Kept(null, things[inside.Thing].Kind == ThingKind.Switch ? 1 : 0) : joints.At(inside));
                }
            }

            if (cabin.Count == 0 && crossing.Select(e => e.Wire.Net).Distinct().Count() > 1)
            {
                foreach (var (at, pin) in cavities.Skip(1))
                {
                    yield return new($"{cavities[0].At}.{cavities[0].Item2}", $"{at}.{pin}", HopKind.Kept, 2 * harness.Assumed.SwitchOhm) { Switched = true };
                }
            }
        }
    }
}
