using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Volts across a load that is on, against the volts across its source in the same state.</summary>
public sealed record LoadVolts(Circuit Circuit, Thing Thing, Element Element, string State, double SourceV, double AtLoadV)
{
    // under half the source's volts a load counts as off: what drops that much is found as not connected or overloaded
    private const double OnFrom = 0.5;

    public double DropV => SourceV - AtLoadV;

    public static IEnumerable<LoadVolts> Of(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var nodes = context.Plan.Nodes.DistinctBy(n => n.Node).ToDictionary(n => n.Node, StringComparer.Ordinal);
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal))
        {
            foreach (var thing in circuit.Feeds.Select(f => context.Thing(f.Thing)).OfType<Thing>().Where(t => t.Kind is not (ThingKind.Starter or ThingKind.Alternator)).Distinct())
            {
                var pins = circuit.Feeds.Where(f => f.Thing == thing.Id).Select(f => f.Pin).ToHashSet(StringComparer.Ordinal);
                foreach (var element in thing.Elements.Where(e => e.Draws() && (pins.Contains(e.PinA) || pins.Contains(e.PinB))))
                {
                    foreach (var volts in InStates(context, nodes, circuit, thing, element))
                    {
                        yield return volts;
                    }
                }
            }
        }
    }

    /// <summary>The wire on the way from the source that loses most, and how much.</summary>
    public (Wire Wire, double DropV)? WorstWire(RuleContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var nodes = context.Plan.Nodes.DistinctBy(n => n.Node).ToDictionary(n => n.Node, StringComparer.Ordinal);
        var best = context.Graph.Posts.Select(p => PowerGraph.Way(context.Graph.Search(p.Node, _ => true), $"{Thing.Id}.{Element.PinA}")).FirstOrDefault(w => w.Length > 0);
        var drops = (best.IsDefault ? [] : best).Where(h => h.Wire is not null).Select(h => (Wire: h.Wire!, Drop: Math.Abs((At(nodes, h.A, State) ?? 0) - (At(nodes, h.B, State) ?? 0)), Known: At(nodes, h.A, State) is not null && At(nodes, h.B, State) is not null))
            .Where(d => d.Known && d.Drop > 0).OrderByDescending(d => d.Drop).ThenBy(d => d.Wire.Id, StringComparer.Ordinal).ToList();
        return drops.Count == 0 ? null : (drops[0].Wire, drops[0].Drop);
    }

    private static IEnumerable<LoadVolts> InStates(RuleContext context, Dictionary<string, NodeVolts> nodes, Circuit circuit, Thing thing, Element element)
    {
        foreach (var state in context.Harness.States.Where(s => s.Engine != EngineState.Cranking))
        {
            var source = SourceVolts(context, nodes, circuit.NominalV, state.Id);
            var (a, b) = (At(nodes, $"{thing.Id}.{element.PinA}", state.Id), element.PinB is null ? 0 : At(nodes, $"{thing.Id}.{element.PinB}", state.Id));
            if (source is { } volts && a is { } va && b is { } vb && Math.Abs(va - vb) >= OnFrom * volts)
            {
                yield return new(circuit, thing, element, state.Id, volts, Math.Abs(va - vb));
            }
        }
    }

    /// <summary>The highest volts across a source of the same nominal volts: the one that feeds while the engine runs.</summary>
    private static double? SourceVolts(RuleContext context, Dictionary<string, NodeVolts> nodes, double nominalV, string state)
    {
        double? best = null;
        foreach (var source in context.Harness.Power.Sources.Where(s => s.NominalV == nominalV))
        {
            if (context.Thing(source.Id)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) is { } element
                && At(nodes, $"{source.Id}.{element.PinA}", state) is { } a && (element.PinB is null ? 0 : At(nodes, $"{source.Id}.{element.PinB}", state)) is { } b)
            {
                best = Math.Max(best ?? 0, Math.Abs(a - b));
            }
        }

        return best;
    }

    private static double? At(Dictionary<string, NodeVolts> nodes, string node, string state) => nodes.GetValueOrDefault(node)?.Volts.GetValueOrDefault(state);
}
