using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Follows current from the source through a circuit's loads and back, with what a meter should read on the way.</summary>
public static class CircuitTracer
{
    /// <summary>The ways of a circuit (one for each pin it feeds) or of a load (one for each of its parts that uses current).</summary>
    public static Outcome<Trace> Trace(Plan plan, string circuitOrLoad)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(circuitOrLoad);
        var wanted = Wanted(plan.Harness, circuitOrLoad);
        if (wanted is null)
        {
            return new(null, [NoSuchName(plan.Harness, circuitOrLoad)]);
        }

        var finder = new WayFinder(plan);
        var ways = wanted.Select(finder.Find).ToImmutableArray();
        var stops = ways.SelectMany(w => w.Stops).Select(s => s.Node).ToHashSet(StringComparer.Ordinal);
        return new(new(circuitOrLoad, ways) { Read = [.. plan.Harness.Measured.Volts.Where(v => stops.Contains(v.Pin))], NotKnown = [.. finder.NotKnown.Concat(Unknowns.Of(plan, ways)).Distinct()] }, []);
    }

    // null: neither a circuit nor a thing
    private static List<Target>? Wanted(Harness harness, string name)
    {
        if (harness.Circuits.FirstOrDefault(c => c.Id == name) is { } circuit)
        {
            return [.. circuit.Feeds.SelectMany(f => TargetsAt(harness, circuit, f))];
        }

        if (harness.Things.FirstOrDefault(t => t.Id == name) is not { } thing)
        {
            return null;
        }

        List<Target> found = [.. harness.Circuits.SelectMany(c => c.Feeds.Where(f => f.Thing == thing.Id).SelectMany(f => TargetsAt(harness, c, f)))];
        return found.Count > 0 ? found : [.. harness.Circuits.Where(c => c.From?.Thing == thing.Id).Select(c => new Target(c, c.From!, null))];
    }

    private static IEnumerable<Target> TargetsAt(Harness harness, Circuit circuit, PinRef feed)
    {
        var thing = harness.Things.FirstOrDefault(t => t.Id == feed.Thing);
        var loads = thing?.Elements.Where(e => CurrentGraph.IsLoad(e) && (e.PinA == feed.Pin || e.PinB == feed.Pin)).ToList() ?? [];
        return loads.Count > 0 ? loads.Select(e => new Target(circuit, feed, e)) : [new(circuit, feed, null)];
    }

    private static Diagnostic NoSuchName(Harness harness, string name)
    {
        var names = harness.Circuits.Select(c => c.Id).Concat(harness.Things.Select(t => t.Id)).Distinct(StringComparer.Ordinal);
        var nearest = names
            .OrderBy(n => n.Contains(name, StringComparison.OrdinalIgnoreCase) ? 0 : NearestName.Distance(n.ToLowerInvariant(), name.ToLowerInvariant()))
            .ThenBy(n => n, StringComparer.Ordinal)
            .Take(3);
        return new(DiagnosticCodes.UnknownName, Severity.Error, $"'{name}' is neither a circuit nor a load of this harness", null) { Hint = $"nearest names: {string.Join(", ", nearest.Select(n => $"'{n}'"))}" };
    }
}

/// <summary>What a way leads to: a pin that a circuit feeds and the part of the thing that uses the current, if any does.</summary>
internal sealed record Target(Circuit Circuit, PinRef Pin, Element? Load);
