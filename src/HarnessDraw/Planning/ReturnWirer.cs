using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>
/// Gives every return pin that no net reaches a circuit to ground: to the ground point it names, else to the nearest by
/// <c>distance</c> (place to place, mm), ties by name. What is built keeps its ground point.
/// </summary>
internal static class ReturnWirer
{
    public static Harness WithReturns(Harness harness, Func<string, string, double> distance)
    {
        var wired = harness.Nets.SelectMany(n => n.Ends.Append(n.Root)).Select(p => p.ToString()).ToHashSet(StringComparer.Ordinal);
        var insulating = harness.Layout.Surfaces.Where(s => !s.Conducts).Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        var grounds = harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && harness.IsBuilt(t.Side) && (t.Surface is null || !insulating.Contains(t.Surface))).ToArray();
        var circuits = harness.Circuits.ToBuilder();
        var nets = harness.Nets.ToBuilder();
        var ids = harness.Circuits.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        // of a place all returns go to one ground point
        var known = new Dictionary<(string, Side), PinRef?>();
        var split = harness.Things.Any(t => t.Kind == ThingKind.Mate);
        // a return does not cross the firewall
        PinRef? NearestTo(Thing thing) => known.TryGetValue((thing.Place, thing.Side), out var found)
            ? found : known[(thing.Place, thing.Side)] = Nearest(thing.Place, [.. grounds.Where(g => !split || g.Side == thing.Side)], distance);
        var built = new BuiltGrounds(harness.Built, grounds);
        var studs = new StudUses(harness.Nets);
        for (var n = 0; n < nets.Count; n++)
        {
            var end = nets[n].Root.IsNearestGround ? harness.Things.FirstOrDefault(t => t.Id == nets[n].Ends[0].Thing) : null;
            if (end is not null && (built.Of(nets[n].Id) ?? NearestTo(end)) is { } nearest)
            {
                nets[n] = nets[n] with { Root = nearest };
                for (var c = 0; c < circuits.Count; c++)
                {
                    if (circuits[c].Id == nets[n].Circuit)
                    {
                        circuits[c] = circuits[c] with { Feeds = [nearest] };
                    }
                }
            }
        }

        foreach (var thing in harness.Things.Where(t => harness.IsBuilt(t.Side)))
        {
            foreach (var pin in thing.Returns)
            {
                var from = new PinRef(thing.Id, pin.Pin);
                var id = thing.Returns.Length == 1 ? $"{thing.Id} ground" : $"{thing.Id} ground {pin.Pin}";
                var ground = pin.To is null ? built.Of(id) ?? NearestTo(thing) : Named(harness, pin.To, named => built.Of(id, named) ?? studs.Least(named));
                if (ground is null || !wired.Add(from.ToString()))
                {
                    continue;
                }

                studs.Count(ground);
                while (!ids.Add(id))
                {
                    id += "'";
                }

                circuits.Add(new()
                {
                    Id = id,
                    From = from,
                    Feeds = [ground],
                    IsReturn = true,
                    LiveWith = KeyPosition.Off,
                    OnlyWith = thing.OnlyWith,
                    NominalV = harness.Power.NominalV,
                    At = thing.At,
                });
                nets.Add(new() { Id = id, Circuit = id, Root = ground, Ends = [from], OnlyWith = thing.OnlyWith, Side = split ? thing.Side : Side.Bay });
            }
        }

        return harness with { Circuits = circuits.ToImmutable(), Nets = nets.ToImmutable() };
    }

    private static PinRef? Nearest(string place, Thing[] grounds, Func<string, string, double> distance)
    {
        var (nearest, least) = ((Thing?)null, 0.0);
        foreach (var ground in grounds)
        {
            var mm = distance(place, ground.Place);
            if (nearest is null || mm < least || (mm.Equals(least) && string.CompareOrdinal(ground.Id, nearest.Id) < 0))
            {
                (nearest, least) = (ground, mm);
            }
        }

        return nearest is null ? null : new(nearest.Id, nearest.Pins.Length == 1 ? nearest.Pins[0].Name : null);
    }

    private static PinRef? Named(Harness harness, string to, Func<Thing, PinRef?> studOf)
    {
        if (harness.Things.FirstOrDefault(t => t.Id == to) is { } thing)
        {
            return thing.Pins.Length == 1 ? new(thing.Id, thing.Pins[0].Name) : studOf(thing) ?? new(thing.Id, null);
        }

        var dot = to.LastIndexOf('.');
        return dot > 0 ? new(to[..dot], to[(dot + 1)..]) : null;
    }
}

/// <summary>How many nets end at each stud: a bar that is named without a stud gives its least used one.</summary>
internal sealed class StudUses(IEnumerable<Net> nets)
{
    private readonly Dictionary<PinRef, int> uses = nets.SelectMany(n => n.Ends.Append(n.Root)).GroupBy(p => p).ToDictionary(g => g.Key, g => g.Count());

    public void Count(PinRef pin) => uses[pin] = uses.GetValueOrDefault(pin) + 1;

    public PinRef? Least(Thing thing) => HarnessIndex.IsOneNode(thing) ? thing.Pins.Select(p => new PinRef(thing.Id, p.Name)).MinBy(p => uses.GetValueOrDefault(p)) : null;
}

/// <summary>The ground points to which the nets of a built harness return.</summary>
internal sealed class BuiltGrounds(FrozenHarness? built, Thing[] grounds)
{
    private readonly ILookup<string, FrozenWire> wires = (built?.Wires ?? []).ToLookup(w => w.Net, StringComparer.Ordinal);

    /// <summary>The ground point of a net as it was built; null where it was not, or where that point is no more.</summary>
    public PinRef? Of(string net) => wires.Contains(net) ? grounds.Select(g => Of(net, g)).FirstOrDefault(p => p is not null) : null;

    /// <summary>The stud of a thing that the net was built to; null where it was not.</summary>
    public PinRef? Of(string net, Thing ground) =>
        ground.Pins.Where(p => wires[net].Any(w => w.To == $"{ground.Id}.{p.Name}" || w.From == $"{ground.Id}.{p.Name}")).Select(p => new PinRef(ground.Id, p.Name)).FirstOrDefault();
}
