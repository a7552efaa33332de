using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>What all ways of a plan have in common, made once.</summary>
internal sealed class TracedPlan(Plan plan)
{
    public Plan Plan => plan;

    public CurrentGraph Graph { get; } = new(plan);

    public StopBook Book { get; } = new(plan);

    public VoltSpread Spread { get; } = new(plan);

    public ImmutableHashSet<string> LivePoles { get; } = Poles(plan, live: true);

    public ImmutableHashSet<string> GroundedPoles { get; } = Poles(plan, live: false);

    /// <summary>The poles of the batteries (of any source where there is no battery): the live ones or the grounded ones.</summary>
    private static ImmutableHashSet<string> Poles(Plan plan, bool live)
    {
        var kinds = plan.Harness.Power.Sources.ToLookup(s => s.Kind == SourceKind.Battery);
        var sources = (kinds.Contains(true) ? kinds[true] : kinds[false]).Select(s => s.Id);
        var plusIsLive = plan.Harness.Power.Ground == GroundPolarity.Negative;
        var elements = plan.Harness.Things.Where(t => sources.Contains(t.Id)).SelectMany(t => t.Elements.Where(e => e.Kind == ElementKind.Source).Select(e => (t, e)));
        return elements
            .Select(p => plusIsLive == live ? CurrentGraph.Node(p.t.Id, p.e.PinA) : p.e.PinB is { } pin ? CurrentGraph.Node(p.t.Id, pin) : CurrentGraph.Body)
            .ToImmutableHashSet(StringComparer.Ordinal);
    }
}
