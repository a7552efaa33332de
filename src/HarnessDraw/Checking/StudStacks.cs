using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The wires on one stud, as many as one build has.</summary>
internal sealed record StudStack(Thing Thing, string Pin, IReadOnlyList<Wire> Wires);

/// <summary>Studs with their rings.</summary>
internal static class StudStacks
{
    public static IEnumerable<StudStack> Of(RuleContext context, bool ground) =>
        context.Harness.Things.Where(t => (t.Kind == ThingKind.GroundPoint) == ground)
            .SelectMany(t => t.Pins.Where(p => p.Style == PinStyle.Stud).Select(p => new StudStack(t, $"{t.Id}.{p.Name}", Together(context, [.. context.EndsAt(t.Id, p.Name).Select(e => e.Wire)]))))
            .Where(s => s.Wires.Count > 0);

    private static List<Wire> Together(RuleContext context, List<Wire> wires) =>
        context.Plan.BuildCount != context.Plan.Builds.Length || context.Plan.Builds.IsEmpty
            ? wires
            : context.Plan.Builds.Select(b => wires.Where(w => w.Builds.Holds(b)).ToList()).MaxBy(l => l.Count)!;
}
