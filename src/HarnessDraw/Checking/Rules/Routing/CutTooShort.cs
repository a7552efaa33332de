using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class CutTooShort : IDesignRule
{
    public RuleInfo Info { get; } = new("cut-too-short", "Wire cut shorter than its route", Severity.Error, Consequence.DoesNotWork, "IPC/WHMA-A-620 as quoted by makers: no minus tolerance",
        "A short wire cannot be made longer.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var wire in context.Plan.Wires.Where(w => w is { CutLengthMm: not null, PathLengthMm: not null }))
        {
            if (wire.LeastCutMm is { } need && wire.CutLengthMm < need - 0.5)
            {
                yield return context.Found(Info, $"{wire.Named()} is cut {Figure.Millimetres(wire.CutLengthMm!.Value)}; its route needs {Figure.Millimetres(wire.PathLengthMm!.Value)}{(wire.Allowances.IsEmpty ? "" : $" and {Figure.Millimetres(need - wire.PathLengthMm.Value)} of allowances")}.",
                    $"Cut {Figure.Millimetres(Math.Ceiling((wire.PathLengthMm.Value + wire.Allowances.Sum(a => a.LengthMm)) / 10) * 10)}.", [wire.Id, wire.Circuit], wire.Builds, context.AtOf(wire));
            }
        }
    }
}
