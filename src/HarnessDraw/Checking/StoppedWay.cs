using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>
/// Why a load has no volts across it in a state of a solved build: the way to it or back from it is followed over the steps that stand at its potential, to the point
/// where it ends; at the open contact of a relay the search goes on with the relay's coil.
/// </summary>
internal sealed class StoppedWay(RuleContext context, int build, string state)
{
    // share of the nominal volts: less is no step
    private const double Same = 0.05;
    private const double Live = 0.5;

    /// <summary>The point where the way stops, and the relays that stay open for it, nearest to the load first.</summary>
    public (string At, List<string> Relays) Of(Circuit circuit, Thing thing, Element load)
    {
        var relays = new List<string>();
        while (true)
        {
            var fed = circuit.Feeds.Any(f => f.Thing == thing.Id && f.Pin == load.PinB) ? load.PinB! : load.PinA;
            var other = fed == load.PinA ? load.PinB : load.PinA;
            if (other is not null && IsLive(Volts($"{thing.Id}.{fed}"), circuit) && IsLive(Volts($"{thing.Id}.{other}"), circuit))
            {
                return (Last($"{thing.Id}.{other}", circuit), relays);
            }

            var reached = Reach($"{thing.Id}.{fed}", circuit);
            var open = reached.Values.OrderBy(r => r.Ohm).ThenBy(r => r.Node, StringComparer.Ordinal).SelectMany(r => context.Graph.From(r.Node)).FirstOrDefault(h => IsLive(Volts(h.B), circuit));
            if (open is null)
            {
                return (Last($"{thing.Id}.{fed}", circuit), relays);
            }

            if (Coil(open) is not { } coil || relays.Contains(coil.Relay.Id))
            {
                return (open.A, relays);
            }

            relays.Add(coil.Relay.Id);
            (circuit, thing, load) = coil;
        }
    }

    // the coil that works a contact, with the circuit that feeds it
    private (Circuit Feed, Thing Relay, Element Coil)? Coil(Hop contact)
    {
        var relay = context.Harness.Things.FirstOrDefault(t => t.Kind == ThingKind.Relay && t.Elements.Any(e => e is { Kind: ElementKind.Contact, WorkedBy: not null, PinB: not null } && Joins(t, e, contact)));
        var works = relay?.Elements.First(e => e.Kind == ElementKind.Contact && Joins(relay, e, contact)).WorkedBy;
        var coil = relay?.Elements.FirstOrDefault(e => e.Id == works);
        var feed = relay is null || coil is null ? null : context.Harness.Circuits.FirstOrDefault(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == relay.Id && (f.Pin == coil.PinA || f.Pin == coil.PinB)));
        return feed is null ? null : (feed, relay!, coil!);
    }

    private static bool Joins(Thing thing, Element contact, Hop hop) =>
        (hop.A == $"{thing.Id}.{contact.PinA}" && hop.B == $"{thing.Id}.{contact.PinB}") || (hop.B == $"{thing.Id}.{contact.PinA}" && hop.A == $"{thing.Id}.{contact.PinB}");

    // of the ends of a way those that belong to another load are not where it stops
    private string Last(string start, Circuit circuit)
    {
        var reached = Reach(start, circuit);
        return reached.Values.Where(r => r.Node == start || !IsLoad(r.Node)).OrderByDescending(r => r.Ohm).ThenBy(r => r.Node, StringComparer.Ordinal).First().Node;
    }

    private bool IsLoad(string node) => context.Harness.Things.Any(t => t.Elements.Any(e => e.Draws() && (node == $"{t.Id}.{e.PinA}" || node == $"{t.Id}.{e.PinB}")));

    private Dictionary<string, Reached> Reach(string start, Circuit circuit)
    {
        var at = Volts(start);
        return context.Graph.Search(start, h => !context.IsGround(h.B) && (Volts(h.B) is not { } volts || Math.Abs(volts - (at ?? 0)) < Same * circuit.NominalV));
    }

    private static bool IsLive(double? volts, Circuit circuit) => Math.Abs(volts ?? 0) >= Live * circuit.NominalV;

    private double? Volts(string node) => context.Volts(node, state, build);
}
