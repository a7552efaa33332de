using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class TriggerFeedsLoad : IDesignRule
{
    public RuleInfo Info { get; } = new("trigger-feeds-load", "Trigger wire used as a power wire", Severity.Error, Consequence.Fire, "common practice, no source",
        "A trigger is made for a relay coil: a motor on it burns wire, contact and switch.")
    {
        Limits = [new("most", 1, "A", "common practice, no source: a relay coil draws 0.12 to 0.2 A")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var circuit in context.Harness.Circuits.Where(c => c.TriggersOnly))
        {
            var loads = circuit.Feeds.Where(f => context.Thing(f.Thing) is not null).SelectMany(f => Loads.At(context.Thing(f.Thing)!, f.Pin).Select(e => (f.Thing, Element: e, Amps: e.Amps(circuit.NominalV) ?? 0))).ToList();
            var total = Math.Max(loads.Sum(l => l.Amps), circuit.CurrentA ?? 0);
            var motors = loads.Where(l => l.Element.Kind == ElementKind.Motor).Select(l => l.Thing).ToList();
            if (total > context.Limit(Info, "most") || motors.Count > 0)
            {
                yield return context.Found(Info, $"{circuit.Id} is a trigger for a relay coil (0.2 A) but feeds {Wording.List(loads.Select(l => $"{l.Thing} ({Figure.Amps(l.Amps)})"))}{(loads.Count == 0 ? Figure.Amps(total) : "")}.",
                    "Feed the motor from a bolt-in fuse through the relay's contact.", [circuit.Id, .. loads.Select(l => l.Thing)], circuit.OnlyWith, circuit.At);
            }
        }
    }
}
