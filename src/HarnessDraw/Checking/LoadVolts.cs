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
        return Enumerable.Range(0, context.SolvedBuilds.Length).SelectMany(build => InBuild(context, build));
    }

    private static IEnumerable<LoadVolts> InBuild(RuleContext context, int build)
    {
        var source = new Dictionary<(double, string), double?>();
        var choices = context.SolvedBuilds[build];
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal && c.OnlyWith.Holds(choices)))
        {
            foreach (var thing in circuit.Feeds.Select(f => context.Thing(f.Thing)).OfType<Thing>().Where(t => t.Kind is not (ThingKind.Starter or ThingKind.Alternator) && t.OnlyWith.Holds(choices)).Distinct())
            {
                var pins = circuit.Feeds.Where(f => f.Thing == thing.Id).Select(f => f.Pin).ToHashSet(StringComparer.Ordinal);
                foreach (var element in thing.Elements.Where(e => e.Draws() && (pins.Contains(e.PinA) || pins.Contains(e.PinB))))
                {
                    foreach (var volts in InStates(context, build, source, circuit, thing, element))
                    {
                        yield return volts;
                    }
                }
            }
        }
    }

    /// <summary>Where the volts go, from the battery to the load and back, as far as the nodes are known.</summary>
    public DropParts Parts(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var post = context.Graph.Posts.Where(p => p.Source.NominalV == Circuit.NominalV).OrderBy(p => p.Source.Kind).FirstOrDefault();
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

    private static IEnumerable<LoadVolts> InStates(RuleContext context, int build, Dictionary<(double, string), double?> sources, Circuit circuit, Thing thing, Element element)
    {
        var (pinA, pinB) = ($"{thing.Id}.{element.PinA}", $"{thing.Id}.{element.PinB}");
        foreach (var state in context.Harness.States.Where(s => s.Engine != EngineState.Cranking))
        {
            if (!sources.TryGetValue((circuit.NominalV, state.Id), out var source))
            {
                sources.Add((circuit.NominalV, state.Id), source = SourceVolts(context, build, circuit.NominalV, state.Id));
            }

            if (source is { } volts && context.Volts(pinA, state.Id, build) is { } a && (element.PinB is null ? 0 : context.Volts(pinB, state.Id, build)) is { } b && Math.Abs(a - b) >= OnFrom * volts)
            {
                // what lies in series on the far side (a coil's module) is load, not loss
                var series = InSeries(context, build, thing, element, state.Id);
                yield return new(circuit, thing, element, state.Id, volts, Math.Abs(a - b) + series) { InSeriesV = series, Build = build };
            }
        }
    }

    private static double InSeries(RuleContext context, int build, Thing thing, Element element, string state)
    {
        if (element.PinB is not { } pin)
        {
            return 0;
        }

        var others = context.EndsAt(thing.Id, pin).Select(e => e.End == e.Wire.From ? e.Wire.To : e.Wire.From).Where(e => e.At != thing.Id);
        return others.SelectMany(o => (context.Thing(o.At)?.Elements ?? []).Where(e => (e.Draws() || e.Kind == ElementKind.Sender) && e.PinA == o.Pin)
                .Select(e => Math.Abs((context.Volts(o.ToString(), state, build) ?? 0) - (e.PinB is null ? 0 : context.Volts($"{o.At}.{e.PinB}", state, build) ?? 0))))
            .DefaultIfEmpty(0).Max();
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
            foreach (var source in context.Harness.Power.Sources.Where(s => s.NominalV == nominalV && s.Kind == kind))
            {
                if (context.Thing(source.Id)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) is { } element
                    && context.Volts($"{source.Id}.{element.PinA}", state, build) is { } a && (element.PinB is null ? 0 : context.Volts($"{source.Id}.{element.PinB}", state, build)) is { } b)
                {
                    best = Math.Max(best ?? 0, Math.Abs(a - b));
                }
            }

            if (best is not null)
            {
                return best;
            }
        }

        return null;
    }
}

/// <summary>Volts lost in feed wires, in fuses, switches and relays, in the kept cabin side and on the return; and the feed wire that loses most.</summary>
public sealed record DropParts(double WiresV, double ContactsV, double KeptV, double ReturnV, Wire? Worst, double WorstV)
{
    /// <summary>'feed wires 0.31 V, fuses and contacts 0.2 V, return side 0.08 V'.</summary>
    public override string ToString() => string.Join(", ", new[] { ("feed wires", WiresV), ("fuses and contacts", ContactsV), ("kept cabin side", KeptV), ("return side", ReturnV) }.Where(p => p.Item2 >= 0.005).Select(p => $"{p.Item1} {Figure.Volts(p.Item2)}"));
}
