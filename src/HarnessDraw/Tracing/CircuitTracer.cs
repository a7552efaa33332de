using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Follows current from the source through a circuit's loads and back, with what a meter should read on the way. One tracer serves all traces of a plan.</summary>
public sealed class CircuitTracer
{
    private readonly Plan plan;
    private readonly Lazy<ImmutableArray<TraceWay>> all;
    private readonly Lazy<SharedHops> shared;
    private readonly Lazy<TracedPlan> traced;

    public CircuitTracer(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        this.plan = plan;
        traced = new(() => new(plan));
        all = new(() => [.. plan.Harness.Circuits.SelectMany(c => Find(CircuitTargets(c)).Ways).Where(w => !w.Hops.IsEmpty)]);
        shared = new(() => new(all.Value));
    }

    /// <summary>The ways of all circuits, in the order of the description.</summary>
    public ImmutableArray<TraceWay> All => all.Value;

    /// <summary>What <see cref="Of"/> gives, for one trace.</summary>
    public static Outcome<Trace> Trace(Plan plan, string what) => new CircuitTracer(plan).Of(what);

    /// <summary>
    /// The ways of a circuit (one for each pin it feeds) or of a load (one for each of its parts that uses current); every way through a wire, cavity, splice or
    /// fuse; every way through the one wire that is described by colour, size and place.
    /// </summary>
    public Outcome<Trace> Of(string what)
    {
        ArgumentNullException.ThrowIfNull(what);
        if (Wanted(what) is { } wanted)
        {
            var (ways, notKnown) = Find(wanted);
            return Told(what, ways, notKnown);
        }

        var (asked, kind) = Asked(what);
        var wire = kind is "wire" or "" ? plan.Wires.FirstOrDefault(w => w.Id == asked) : null;
        var fuse = kind is "fuse" or "" ? plan.Fuses.FirstOrDefault(f => f.Id == asked) : null;
        if (wire is not null && fuse is not null)
        {
            return new(null, [new(DiagnosticCodes.Ambiguous, Severity.Error, $"'{what}' is a wire and a fuse", null) { Hint = $"write 'wire {what}' or 'fuse {what}'" }]);
        }

        if (wire is not null)
        {
            // what carries nothing to a load is shown with its circuit
            return Passing(w => w.Hops.Any(h => h.Wire == wire.Id)) is { IsEmpty: false } through ? Told(what, through, []) : Of(wire.Circuit);
        }

        string[] nodes = fuse is not null ? [$"{fuse.Id}.out"] : kind is "" or "cavity" or "splice" ? Pins(asked) : [];
        if (Passing(w => w.Stops.Any(s => nodes.Contains(s.Node))) is { IsEmpty: false } passing)
        {
            return Told(what, passing, []);
        }

        return SoughtWires.Find(plan, what) switch
        {
            null => new(null, [NoSuchName(what)]),
            [] => new(null, [NoSuchWire(what)]),
            [var one] => Of($"wire {one.Id}"),
            { } several => new(null, [SoughtWires.Several(what, several)]),
        };
    }

    private Outcome<Trace> Told(string name, ImmutableArray<TraceWay> ways, IEnumerable<string> notKnown)
    {
        var stops = ways.SelectMany(w => w.Stops).Select(s => s.Node).ToHashSet(StringComparer.Ordinal);
        return new(new(name, [.. ways.Select(shared.Value.Told)]) { Read = [.. plan.Harness.Measured.Volts.Where(v => stops.Contains(v.Pin))], NotKnown = [.. notKnown.Concat(Unknowns.Of(plan, ways)).Distinct()] }, []);
    }

    private (ImmutableArray<TraceWay> Ways, IReadOnlyList<string> NotKnown) Find(IEnumerable<Target> targets)
    {
        var finder = new WayFinder(traced.Value);
        return ([.. targets.Select(finder.Find)], finder.NotKnown);
    }

    private ImmutableArray<TraceWay> Passing(Func<TraceWay, bool> passes) => [.. All.Where(passes)];

    /// <summary>'wire F19', 'fuse K19', 'cavity firewall B4', 'splice SP8': the name and its kind; no kind where none is said.</summary>
    private static (string Name, string Kind) Asked(string what)
    {
        var space = what.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && what[..space] is "wire" or "fuse" or "cavity" or "splice" ? (what[(space + 1)..], what[..space]) : (what, "");
    }

    /// <summary>A pin may be written 'firewall.B4', 'firewall:B4' or 'firewall B4'.</summary>
    private static string[] Pins(string name)
    {
        name = PointWords.Plain(name);
        var space = name.LastIndexOf(' ');
        return [name, name.Replace(':', '.'), space < 0 ? name : $"{name[..space]}.{name[(space + 1)..]}"];
    }

    private IEnumerable<Target> CircuitTargets(Circuit circuit) => circuit.Feeds.SelectMany(f => TargetsAt(plan.Harness, circuit, f));

    // null: neither a circuit nor a thing; what passes a fuse is found among the ways
    private List<Target>? Wanted(string name)
    {
        var harness = plan.Harness;
        if (harness.Circuits.FirstOrDefault(c => c.Id == name) is { } circuit)
        {
            return [.. CircuitTargets(circuit)];
        }

        if (harness.Things.FirstOrDefault(t => t.Id == name && t.Kind != ThingKind.Fuse) is not { } thing)
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

    private Diagnostic NoSuchName(string name)
    {
        var names = plan.Harness.Circuits.Select(c => c.Id).Concat(plan.Harness.Things.Select(t => t.Id)).Concat(plan.Wires.Select(w => w.Id)).Concat(plan.Wires.SelectMany(w => new[] { w.From.ToString(), w.To.ToString() }))
            .Distinct(StringComparer.Ordinal);
        return new(DiagnosticCodes.UnknownName, Severity.Error, $"'{name}' is no circuit, load, wire, cavity, splice or fuse of this harness, and no wire's colour", null) { Hint = $"nearest names: {Nearest(names, name)}" };
    }

    private Diagnostic NoSuchWire(string words)
    {
        var colours = plan.Wires.Select(w => w.Colour).Distinct(StringComparer.Ordinal);
        return new(DiagnosticCodes.UnknownName, Severity.Error, $"no wire of this harness is '{words}'", null) { Hint = $"leave out size or place, or look for another colour; nearest colours: {Nearest(colours, words.Split(' ')[0])}" };
    }

    private static string Nearest(IEnumerable<string> names, string name)
    {
        const int Most = 3;
        var nearest = names
            .OrderBy(n => n.Contains(name, StringComparison.OrdinalIgnoreCase) ? 0 : NearestName.Distance(n.ToLowerInvariant(), name.ToLowerInvariant()))
            .ThenBy(n => n, StringComparer.Ordinal)
            .Take(Most);
        return string.Join(", ", nearest.Select(n => $"'{n}'"));
    }
}

/// <summary>What a way leads to: a pin that a circuit feeds and the part of the thing that uses the current, if any does.</summary>
internal sealed record Target(Circuit Circuit, PinRef Pin, Element? Load);
