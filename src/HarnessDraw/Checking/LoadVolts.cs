using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Volts across a load that is on, against the volts across its source in the same state.</summary>
public sealed record LoadVolts(Circuit Circuit, Thing Thing, Element Element, string State, double SourceV, double AtLoadV)
{
    // under half the source's volts a load counts as off: what drops that much is found as not connected or overloaded
    private const double OnFrom = 0.5;

    public double DropV => SourceV - AtLoadV;

    /// <summary>Number of the solved build it was seen in.</summary>
    public int Build { get; init; }

    /// <summary>Volts across what lies in series behind the load; part of <see cref="AtLoadV"/>.</summary>
    public double InSeriesV { get; init; }

    /// <summary>Every load that is on, in every state of every solved build that has it.</summary>
    public static IEnumerable<LoadVolts> Of(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var loads = Loads(context);
        var states = context.Harness.States.Where(s => s.Engine != EngineState.Cranking).Select(s => s.Id).ToList();
        for (var build = 0; build < context.SolvedBuilds.Length; build++)
        {
            var sources = new Dictionary<(double, string), double?>();
            foreach (var load in loads.Where(l => l.Circuit.OnlyWith.Holds(context.SolvedBuilds[build]) && l.Thing.OnlyWith.Holds(context.SolvedBuilds[build])))
            {
                foreach (var volts in InStates(context, build, sources, load, states))
                {
                    yield return volts;
                }
            }
        }
    }

    private static List<Load> Loads(RuleContext context)
    {
        var loads = new List<Load>();
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal))
        {
            foreach (var thing in circuit.Feeds.Select(f => context.Thing(f.Thing)).OfType<Thing>().Where(t => t.Kind is not (ThingKind.Starter or ThingKind.Alternator)).Distinct())
            {
                var pins = circuit.Feeds.Where(f => f.Thing == thing.Id).Select(f => f.Pin).ToHashSet(StringComparer.Ordinal);
                loads.AddRange(thing.Elements.Where(e => e.Draws() && (pins.Contains(e.PinA) || pins.Contains(e.PinB)))
                    .Select(e => new Load(circuit, thing, e, $"{thing.Id}.{e.PinA}", e.PinB is null ? null : $"{thing.Id}.{e.PinB}", [.. InSeries(context, thing, e)])));
            }
        }

        return loads;
    }

    /// <summary>Where the volts go, from the battery to the load and back, as far as the nodes are known.</summary>
    public DropParts Parts(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var post = context.Graph.Posts.Where(p => context.Harness.Power.LiveV(p.Source) == Circuit.NominalV)
            .OrderBy(p => !context.Reach(p.Node).ContainsKey($"{Thing.Id}.{Element.PinA}")).ThenBy(p => p.Source.Kind).FirstOrDefault();
        if (post is null)
        {
            return new(0, 0, 0, 0, null, 0);
        }

        var sign = Math.Sign(context.Volts(post.Node, State, Build) ?? 1);
        var (wires, kept, contacts, worst, most) = (0.0, 0.0, 0.0, (Wire?)null, 0.0);
        foreach (var hop in PowerGraph.Way(context.Reach(post.Node), $"{Thing.Id}.{Element.PinA}"))
        {
            if (context.Volts(hop.A, State, Build) is not { } a || context.Volts(hop.B, State, Build) is not { } b)
            {
                continue;
            }

            // while the alternator feeds, the first stretch from the battery rises: signed, the parts still add up
            var drop = (a - b) * sign;
            (wires, kept, contacts) = hop.Kind switch { HopKind.Wire => (wires + drop, kept, contacts), HopKind.Kept => (wires, kept + drop, contacts), _ => (wires, kept, contacts + drop) };
            if (hop.Wire is not null && drop > most)
            {
                (worst, most) = (hop.Wire, drop);
            }
        }

        var back = Element.PinB is { } pin ? ((context.Volts($"{Thing.Id}.{pin}", State, Build) ?? 0) * sign) - InSeriesV : 0;
        return new(wires, contacts, kept, back, worst, most);
    }

    private static IEnumerable<LoadVolts> InStates(RuleContext context, int build, Dictionary<(double, string), double?> sources, Load load, List<string> states)
    {
        var (atA, atB) = (context.Volts(load.NodeA, build), load.NodeB is null ? null : context.Volts(load.NodeB, build));
        if (atA is null || (atB is null && load.NodeB is not null))
        {
            yield break;
        }

        foreach (var state in states)
        {
            if (!sources.TryGetValue((load.Circuit.NominalV, state), out var source))
            {
                sources.Add((load.Circuit.NominalV, state), source = SourceVolts(context, build, load.Circuit.NominalV, state));
            }

            if (source is { } volts && atA.GetValueOrDefault(state) is { } a && (atB is null ? 0 : atB.GetValueOrDefault(state)) is { } b && Math.Abs(a - b) >= OnFrom * volts)
            {
                // what lies in series on the far side (a coil's module) is load, not loss
                var series = load.InSeries.Select(s => Math.Abs((context.Volts(s.From, state, build) ?? 0) - (s.To is null ? 0 : context.Volts(s.To, state, build) ?? 0))).DefaultIfEmpty(0).Max();
                yield return new(load.Circuit, load.Thing, load.Element, state, volts, Math.Abs(a - b) + series) { InSeriesV = series, Build = build };
            }
        }
    }

    // nodes of the loads that lie in series behind one: at the far end of a wire, or of the circuit that comes from its other pin (a charge lamp before the exciter)
    private static IEnumerable<(string From, string? To)> InSeries(RuleContext context, Thing thing, Element element)
    {
        if (element.PinB is not { } pin)
        {
            return [];
        }

        var wired = context.EndsAt(thing.Id, pin).Select(end => end.End == end.Wire.From ? end.Wire.To : end.Wire.From).Select(o => (o.At, o.Pin));
        var fed = context.Harness.Circuits.Where(c => !c.IsReturn && c.From is { } from && from.Thing == thing.Id && from.Pin == pin).SelectMany(c => c.Feeds).Select(f => (At: f.Thing, f.Pin));
        return from other in wired.Concat(fed).Distinct()
               where other.At != thing.Id
               from e in context.Thing(other.At)?.Elements ?? []
               where (e.Draws() || e.Kind == ElementKind.Sender) && e.PinA == other.Pin
               select ($"{other.At}.{other.Pin}", e.PinB is null ? null : $"{other.At}.{e.PinB}");
    }

    /// <summary>
    /// Volts at the battery posts: the loop of a load starts there also while the alternator feeds, whose lead has a rule of its own. Without a
    /// battery of these volts: the source that has them.
    /// </summary>
    private static double? SourceVolts(RuleContext context, int build, double nominalV, string state)
    {
        foreach (var kind in new[] { SourceKind.Battery, SourceKind.Converter, SourceKind.Alternator })
        {
            double? best = null;
            foreach (var source in context.Harness.Power.Sources.Where(s => s.Kind == kind && context.Harness.Power.LiveV(s) == nominalV))
            {
                if (context.Harness.Power.Chain(source).Aggregate((double?)0, (sum, s) => sum + PoleVolts(context, build, s, state)) is { } volts)
                {
                    best = Math.Max(best ?? 0, volts);
                }
            }

            if (best is not null)
            {
                return best;
            }
        }

        return null;
    }

    private static double? PoleVolts(RuleContext context, int build, Source source, string state) =>
        context.Thing(source.Id)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) is { } element
            && context.Volts($"{source.Id}.{element.PinA}", state, build) is { } a && (element.PinB is null ? 0 : context.Volts($"{source.Id}.{element.PinB}", state, build)) is { } b
            ? Math.Abs(a - b) : null;

    /// <summary>A load of a circuit, the nodes of its pins, and those of what lies in series behind it.</summary>
    private sealed record Load(Circuit Circuit, Thing Thing, Element Element, string NodeA, string? NodeB, ImmutableArray<(string From, string? To)> InSeries);
}

/// <summary>Volts lost in feed wires, in fuses, switches and relays, in the kept cabin side and on the return; and the feed wire that loses most.</summary>
public sealed record DropParts(double WiresV, double ContactsV, double KeptV, double ReturnV, Wire? Worst, double WorstV)
{
    // less than this is not told
    private const double LeastV = 0.005;

    /// <summary>'feed wires 0.31 V, fuses and contacts 0.2 V, return side 0.08 V', the largest share first.</summary>
    public override string ToString() => Told(0);

    /// <summary>The same with volts that go where nothing is described.</summary>
    public string Told(double restV) => string.Join(", ", new[] { ("feed wires", WiresV), ("fuses and contacts", ContactsV), ("kept cabin side", KeptV), ("return side", ReturnV), ("kept wiring and feed that are not described", restV) }
        .Where(p => p.Item2 >= LeastV).OrderByDescending(p => p.Item2).Select(p => $"{p.Item1} {Figure.Volts(p.Item2)}"));
}
