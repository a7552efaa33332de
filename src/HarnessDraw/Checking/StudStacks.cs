using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The wires on one stud, as many as one build has.</summary>
internal sealed record StudStack(Thing Thing, string Pin, IReadOnlyList<Wire> Wires)
{
    /// <summary>The fewest options with which there are more than so many.</summary>
    public BuildCondition Cause(RuleContext context, double most) => context.Builds.CauseOf(Wires, w => w.Builds, _ => 1, most);
}

/// <summary>Studs with their rings.</summary>
internal static class StudStacks
{
    public static IEnumerable<StudStack> Of(RuleContext context, bool ground) =>
        context.Harness.Things.Where(t => (t.Kind == ThingKind.GroundPoint) == ground)
            .SelectMany(t => t.Pins.Where(p => p.Style == PinStyle.Stud).Select(p => new StudStack(t, $"{t.Id}.{p.Name}", Together(context, [.. context.EndsAt(t.Id, p.Name).Select(e => e.Wire)]))))
            .Where(s => s.Wires.Count > 0);

    private static IReadOnlyList<Wire> Together(RuleContext context, List<Wire> wires) => context.Builds.Heaviest(wires, w => w.Builds, _ => 1);
}
