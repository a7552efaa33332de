using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Network;

internal sealed class NeverOn : IDesignRule
{
    public RuleInfo Info { get; } = new("never-on", "A switch that no state closes", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "Sizes and fuses rest on the states: what is on in none of them is sized for no current.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var switching = new CircuitSwitching(new HarnessIndex(context.Harness));
        return context.Harness.Circuits.Where(c => !c.IsReturn && c.Duty != Duty.Signal && context.Harness.States.All(s => !switching.IsLive(c.Id, s)) && context.WiresOf(c.Id).Any())
            .Select(c => context.Found(Info, $"{c.Id} is on in {(context.Harness.States.IsEmpty ? "no state, for there is none" : $"none of the states {Wording.List(context.Harness.States.Select(s => $"'{s.Id}'"))}")}: its wires are sized for no current.",
                "Name it in the 'on' of the state in which it works, or give its key position.", [c.Id, .. context.WiresOf(c.Id).Select(w => w.Id)], c.OnlyWith, c.At));
    }
}
