using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class CurrentNotGiven : IDesignRule
{
    public RuleInfo Info { get; } = new("current-not-given", "Load without a current", Severity.Advice, Consequence.DoesNotWork, "common practice, no source",
        "Without it no size, no fuse and no expected volts can be worked out.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var silent = context.Harness.Circuits.Where(c => c is { IsReturn: false, CurrentA: null } && c.Duty != Duty.Signal)
            .SelectMany(c => c.Feeds.Select(f => context.Thing(f.Thing)).OfType<Thing>().Where(t => t.Side == Side.Bay && IsSilent(t, c)).Select(t => (t, c))).DistinctBy(p => p.t.Id).ToList();
        if (silent.Count > 0)
        {
            yield return context.Found(Info, $"No current given for {Wording.List(silent.Select(p => p.t.Id))}: expected volts cannot be printed.", "Read the plate or measure with a clamp, and add amperes, watts or ohms.", silent.SelectMany(p => new[] { p.t.Id, p.c.Id }), at: silent[0].t.At);
        }
    }

    private static bool IsSilent(Thing thing, Circuit circuit) =>
        thing.Elements.Any(e => e.Draws() && circuit.Feeds.Any(f => f.Thing == thing.Id && (f.Pin is null || f.Pin == e.PinA)) && e.Amps(circuit.NominalV) is null)
        || (thing is { Kind: ThingKind.Load or ThingKind.Lamp or ThingKind.Motor, Elements.IsEmpty: true });
}
