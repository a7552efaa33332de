using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

/// <summary>
/// What an open ground point lets glow: the loads that return there, with whatever else hangs on the feeds that are switched off, are solved as a network of their own.
/// </summary>
internal sealed class GroundBackFeed : IDesignRule
{
    private const double FeedOhm = 0.01;

    public RuleInfo Info { get; } = new("ground-back-feed", "An open ground feeds one lamp through another", Severity.Advice, Consequence.LostFunction, "workshop practice, no standard",
        "Lamps then glow that are switched off, and a driver signals what he does not mean.")
    {
        Limits = [new("share of a lamp", 10, "%", "workshop practice, no standard")],
    };

    // told once for all ground points, the worst first
    public IEnumerable<Finding> Find(RuleContext context)
    {
        var switching = new CircuitSwitching(new HarnessIndex(context.Harness));
        var feeding = context.Harness.Circuits.Where(c => !c.IsReturn).SelectMany(c => c.Feeds.Select(f => (f.Thing, f.Pin)).Distinct().Select(pin => (pin, c))).ToLookup(f => f.pin, f => f.c);
        var glowing = context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && !IsLinked(context, t)).Select(g => (Ground: g, Worst: Worst(context, g, switching, feeding)))
            .Where(g => g.Worst is { } worst && 100 * worst.Share > context.Limit(Info, "share of a lamp")).OrderByDescending(g => g.Worst!.Share).ThenBy(g => g.Ground.Id, StringComparer.Ordinal).ToList();
        if (glowing.Count > 0)
        {
            yield return context.Found(Info, $"If {Wording.List(glowing.Select(g => $"{g.Ground.Id} opens, {g.Worst!.Load.Thing.Id} ({g.Worst.Load.Element.Id}) gets {Figure.Percent(g.Worst.Share)} of its current through other loads in '{g.Worst.State}'"), "; ")}, while it is switched off.",
                "Give the lamps of each job a ground point of their own, or join two ground points.", [.. glowing.Select(g => g.Ground.Id), .. glowing.Select(g => g.Worst!.Load.Thing.Id)], at: glowing[0].Ground.At);
        }
    }

    // a wire to another ground point holds it when its own bolt is loose
    private static bool IsLinked(RuleContext context, Thing ground) =>
        context.EndsAt(ground.Id).Any(e => context.Thing((e.End == e.Wire.From ? e.Wire.To : e.Wire.From).At) is { Kind: ThingKind.GroundPoint } other && other != ground);

    private static Glow? Worst(RuleContext context, Thing ground, CircuitSwitching switching, ILookup<(string Thing, string? Pin), Circuit> feeding)
    {
        var loads = Returning(context, ground, feeding).ToList();
        return loads.Select(l => l.Circuit.Id).Distinct(StringComparer.Ordinal).Count() < 2 ? null
            : context.Harness.States.SelectMany(s => Opened(context, loads, switching, s)).OrderByDescending(g => g.Share).ThenBy(g => g.Load.Thing.Id, StringComparer.Ordinal).FirstOrDefault();
    }

    /// <summary>Loads whose return wire ends on the ground point, with the circuit that feeds them.</summary>
    private static IEnumerable<Grounded> Returning(RuleContext context, Thing ground, ILookup<(string Thing, string? Pin), Circuit> feeding) =>
        from end in context.EndsAt(ground.Id)
        let far = end.End == end.Wire.From ? end.Wire.To : end.Wire.From
        let thing = context.Thing(far.At)
        where thing is not null
        from element in thing.Elements
        where element.PinB is not null && element.PinB == far.Pin && element.Draws()
        from circuit in feeding[(thing.Id, element.PinA)]
        select new Grounded(thing, element, circuit);

    private static IEnumerable<Glow> Opened(RuleContext context, List<Grounded> loads, CircuitSwitching switching, OperatingState state)
    {
        if (!loads.Exists(l => switching.IsLive(l.Circuit.Id, state)) || loads.TrueForAll(l => switching.IsLive(l.Circuit.Id, state)))
        {
            return [];
        }

        // node 0 the body, 1 the live feed, 2 the open ground point, then one for each feed that is off
        var off = loads.Where(l => !switching.IsLive(l.Circuit.Id, state)).Select(l => l.Circuit).Distinct().ToList();
        int Node(Circuit circuit) => off.IndexOf(circuit) is >= 0 and var number ? 3 + number : 1;
        var volts = loads[0].Circuit.NominalV;
        var parts = loads.Select(l => Part(l, Node(l.Circuit), 2)).Append(new("source", 1, 0, PartLaw.Source(volts, FeedOhm)))
            .Concat(off.SelectMany(c => c.Feeds.Where(f => context.Thing(f.Thing) is not null).SelectMany(f => Loads.At(context.Thing(f.Thing)!, f.Pin).Select(e => new Grounded(context.Thing(f.Thing)!, e, c))))
                .Where(l => !loads.Contains(l)).Select(l => Part(l, Node(l.Circuit), 0)))
            .Where(p => p.Law.Kind != PartBehaviour.Open).ToList();
        var point = NetworkSolver.Solve([.. parts]);
        return loads.Where(l => l.Element.Kind == ElementKind.Lamp && off.Contains(l.Circuit) && l.Element.Amps(volts) is > 0)
            .Select(l => new Glow(l, state.Id, Math.Abs(point.Amperes[parts.FindIndex(p => p.Name == Name(l))]) / l.Element.Amps(volts)!.Value));
    }

    private static NetworkPart Part(Grounded load, int from, int to) => new(Name(load), from, to, load.Element.Amps(load.Circuit.NominalV) is > 0 and var amps
        ? PartLaw.Load(load.Element.Kind switch { ElementKind.Lamp => PartBehaviour.Filament, ElementKind.Motor => PartBehaviour.Motor, ElementKind.Electronic => PartBehaviour.ConstantPower, _ => PartBehaviour.Ohmic }, load.Circuit.NominalV, amps) : PartLaw.Nothing);

    private static string Name(Grounded load) => $"{load.Thing.Id} {load.Element.Id}";

    private sealed record Grounded(Thing Thing, Element Element, Circuit Circuit);

    private sealed record Glow(Grounded Load, string State, double Share);
}
