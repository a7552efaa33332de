using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

/// <summary>A way from the live pole to the grounded one on which no load lies: its wires carry more than everything that is described could draw together.</summary>
internal sealed class DeadShort : IDesignRule
{
    public RuleInfo Info { get; } = new("dead-short", "The description joins both poles with no load between", Severity.Error, Consequence.Fire, "common practice, no source",
        "The fuse opens as soon as it is switched on. Sizes and fuses of everything on the way follow a current that is no load: mend this first.")
    {
        Limits =
        [
            new("times all loads", 1.25, "", "our own figure: all loads at once take 14.4 V over 12 V and a little; only a short takes more"),
            new("of way", 50, "%", "our own figure: wires of the way carry what the fullest of them does; loads beside it take a little more"),
        ],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var limit = context.Limit(Info, "times all loads") * AllA(context);
        var over = context.Plan.Wires.Where(w => w.Worst is { } worst && worst.CurrentA > limit).ToList();
        // the leads of starter and alternator carry more: a short behind a fuse shows in wires that lead elsewhere
        var fused = over.Where(w => !LeadsToMachine(context, w)).ToList();
        if (fused.Count == 0)
        {
            yield break;
        }

        var worst = fused.MaxBy(w => w.Worst!.CurrentA)!.Worst!;
        var way = over.Where(w => w.Worst!.CurrentA >= context.Limit(Info, "of way") / 100 * worst.CurrentA).ToList();
        foreach (var last in fused.Where(way.Contains).GroupBy(w => w.Circuit, StringComparer.Ordinal))
        {
            if (last.SelectMany(w => new[] { w.From.At, w.To.At }).FirstOrDefault(at => EndsIn(context, way, at)) is not { } end)
            {
                continue;
            }

            yield return context.Found(Info,
                $"In '{worst.State}' '{last.Key}' joins the live pole to ground at {end} with no load between: a dead short behind fuse {last.First().ProtectedBy[0]}, on paper {Figure.Amps(worst.CurrentA)}.",
                "Say what lies on the way: the load's current on its pin (lamp, motor, coil, sender, draws), or lead the wire to the pin that has it. A warning switch is told with its lamp: give the gauge's pin a lamp, or the switch a 'sender' with the ohms of both.",
                [last.Key, .. way.Select(w => w.Id)], at: context.Circuit(last.Key)?.At);
        }
    }

    // a ground point, or a thing from which the current goes on to ground: by a return of ours, or by its own body
    private static bool EndsIn(RuleContext context, List<Wire> way, string at) =>
        context.Thing(at) is { } thing && (thing.Kind == ThingKind.GroundPoint || thing.GroundsItself || way.Exists(w => context.IsReturn(w) && w.From.At == at));

    // every load but the starters' motors at its nominal current, and what circuits are given with
    private static double AllA(RuleContext context)
    {
        var volts = context.Harness.Power.Sources.Where(s => !context.Harness.Power.IsTap(s)).Select(context.Harness.Power.LiveV).DefaultIfEmpty(12).Min();
        return context.Harness.Things.SelectMany(t => t.Elements.Where(e => !(t.Kind == ThingKind.Starter && e.Kind == ElementKind.Motor))).Sum(e => e.Amps(e.NominalV ?? volts) ?? 0)
            + context.Harness.Circuits.Sum(c => c.CurrentA ?? 0);
    }

    private static bool LeadsToMachine(RuleContext context, Wire wire) =>
        wire.ProtectedBy.IsEmpty || context.IsReturn(wire) || new[] { wire.From.At, wire.To.At }.Any(at => context.Thing(at)?.Kind is ThingKind.Starter or ThingKind.Alternator);
}
