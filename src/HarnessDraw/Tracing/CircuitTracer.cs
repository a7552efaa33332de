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
        var (asked, kind) = Wanted(what, "") is null ? Asked(what) : (what, "");
        if (Wanted(asked, kind) is { } wanted)
        {
            var (ways, notKnown) = Find(wanted);
            return Told(what, ways, notKnown, Others(asked, kind, plan.Harness.Circuits.Any(c => c.Id == asked) ? "circuit" : "load", ways));
        }

        var wire = kind is "wire" or "" ? plan.Wires.FirstOrDefault(w => w.Id == asked) : null;
        var fuse = kind is "fuse" or "" ? plan.Fuses.FirstOrDefault(f => f.Id == asked) : null;
        if (wire is not null && fuse is not null)
        {
            return new(null, [new(DiagnosticCodes.Ambiguous, Severity.Error, $"'{what}' is a wire and a fuse", null) { Hint = $"write 'wire {what}' or 'fuse {what}'" }]);
        }

        if (wire is not null)
        {
            // what carries nothing to a load is shown with its circuit
            var through = Through(wire.Id);
            return through.IsEmpty ? Of(wire.Circuit) with { Diagnostics = Others(asked, kind, "wire", through) } : Told(what, through, [], Others(asked, kind, "wire", through));
        }

        string[] nodes = fuse is not null ? [$"{fuse.Id}.out"] : kind is "" or "cavity" or "splice" ? Pins(asked) : [];
        if (Passing(w => w.Stops.Any(s => nodes.Contains(s.Node))) is { IsEmpty: false } passing)
        {
            return Told(what, passing, [], fuse is null ? [] : Others(asked, kind, "fuse", passing));
        }

        return SoughtWires.Find(plan, what) switch
        {
            null => new(null, [NoSuchName(what)]),
            [] => new(null, [NoSuchWire(what)]),
            [var one] => Of($"wire {one.Id}"),
            { } several => new(null, [SoughtWires.Several(what, several)]),
        };
    }

    private Outcome<Trace> Told(string name, ImmutableArray<TraceWay> ways, IEnumerable<string> notKnown, ImmutableArray<Diagnostic> said)
    {
        var stops = ways.SelectMany(w => w.Stops).Select(s => s.Node).ToHashSet(StringComparer.Ordinal);
        return new(new(name, [.. ways.Select(shared.Value.Told)]) { Read = [.. plan.Harness.Measured.Volts.Where(v => stops.Contains(v.Pin))], NotKnown = [.. notKnown.Concat(Unknowns.Of(plan, ways)).Distinct()] }, said);
    }

    private (ImmutableArray<TraceWay> Ways, IReadOnlyList<string> NotKnown) Find(IEnumerable<Target> targets)
    {
        var finder = new WayFinder(traced.Value);
        return ([.. targets.Select(finder.Find)], finder.NotKnown);
    }

    // what else has the name that was asked for without its kind, and other ways
    private ImmutableArray<Diagnostic> Others(string name, string kind, string taken, ImmutableArray<TraceWay> ways)
    {
        List<(string Kind, string Ask, ImmutableArray<TraceWay> Ways)> meant = [];
        meant.AddRange(new[] { "circuit", "load" }.Where(k => kind.Length == 0 && k != taken && Wanted(name, k) is not null).Select(k => (k, $"{k} {name}", Find(Wanted(name, k)!).Ways)));
        meant.AddRange(plan.Wires.Where(w => kind.Length == 0 && taken != "wire" && w.Id == name).Select(w => ("wire", $"wire {name}", Through(name))));
        meant.AddRange(plan.Fuses.Where(f => kind.Length == 0 && taken != "fuse" && f.Id == name).Select(f => ("fuse", $"fuse {name}", Passing(w => w.Stops.Any(s => s.Node == $"{name}.out")))));
        meant.AddRange(plan.Wires.SelectMany(w => new[] { w.From, w.To }).Where(e => kind.Length == 0 && e.Pin == name && plan.Harness.ThingOf(e.At).Kind is ThingKind.Mate or ThingKind.Inline).Distinct()
            .OrderBy(e => e.At, StringComparer.Ordinal).Select(e => ("cavity", PointWords.Of(e), Passing(w => w.Stops.Any(s => s.Node == e.ToString())))));
        var others = meant.Where(m => !m.Ways.Select(w => w.Title).SequenceEqual(ways.Select(w => w.Title))).DistinctBy(m => m.Ask).ToList();
        return others.Count == 0 ? [] :
        [
            new(DiagnosticCodes.Ambiguous, Severity.Advice, $"'{name}' is a {taken}, which is followed here, and a {string.Join(", and a ", others.Select(o => o.Kind).Distinct())}", null) { Hint = $"write {string.Join(" or ", others.Select(o => $"'{o.Ask}' for the {o.Kind}"))}" },
        ];
    }

    private ImmutableArray<TraceWay> Through(string wire) => Passing(w => w.Hops.Any(h => h.Wire == wire));

    private ImmutableArray<TraceWay> Passing(Func<TraceWay, bool> passes) => [.. All.Where(passes)];

    /// <summary>'wire F19', 'fuse K19', 'load horn', 'cavity firewall B4', 'splice SP8': the name and its kind; no kind where none is said.</summary>
    private static (string Name, string Kind) Asked(string what)
    {
        var space = what.IndexOf(' ', StringComparison.Ordinal);
        return space > 0 && what[..space] is "circuit" or "load" or "wire" or "fuse" or "cavity" or "splice" ? (what[(space + 1)..], what[..space]) : (what, "");
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
    private List<Target>? Wanted(string name, string kind)
    {
        var harness = plan.Harness;
        if (kind is "circuit" or "" && harness.Circuits.FirstOrDefault(c => c.Id == name) is { } circuit)
        {
            return [.. CircuitTargets(circuit)];
        }

        if (kind is not ("load" or "") || harness.Things.FirstOrDefault(t => t.Id == name && t.Kind != ThingKind.Fuse) is not { } thing)
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
