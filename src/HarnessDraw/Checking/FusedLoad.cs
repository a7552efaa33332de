using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>A load behind a fuse, with the circuit that feeds it and its steady current in amperes.</summary>
public sealed record FusedLoad(string Fuse, Circuit Circuit, Thing Thing, Element? Element, double CurrentA)
{
    /// <summary>True when the circuit is switched on in the state: the state names it, or it lasts and is always live, or no state names it and it follows the key.</summary>
    public bool OnIn(RuleContext context, OperatingState state) =>
        context.Names(state, Circuit.Id) || (Circuit.Duty == Duty.Continuous && !Circuit.IsReturn && (Circuit.LiveWith == KeyPosition.Off || (IsLive(state) && !context.Harness.States.Any(s => context.Names(s, Circuit.Id)))));

    private bool IsLive(OperatingState state) => Circuit.LiveWith == KeyPosition.Start ? state.Key == KeyPosition.Start : state.Key >= Circuit.LiveWith;

    public static IEnumerable<FusedLoad> Of(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var harness = context.Harness;
        var things = harness.Things.ToDictionary(t => t.Id, StringComparer.Ordinal);
        return harness.Circuits.Where(c => !c.IsReturn).SelectMany(c => context.ProtectionOf(c).SelectMany(fuse => OfCircuit(fuse, c, things)));
    }

    private static IEnumerable<FusedLoad> OfCircuit(string fuse, Circuit circuit, Dictionary<string, Thing> things)
    {
        var fed = circuit.Feeds.Where(f => things.ContainsKey(f.Thing)).ToList();
        if (circuit.CurrentA is { } given)
        {
            return fed.Take(1).Select(f => new FusedLoad(fuse, circuit, things[f.Thing], null, given));
        }

        return fed.SelectMany(f => Loads.At(things[f.Thing], f.Pin)
            .Where(e => e.Amps(circuit.NominalV) is not null)
            .Select(e => new FusedLoad(fuse, circuit, things[f.Thing], e, e.Amps(circuit.NominalV)!.Value)));
    }
}
