using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class CrossLinkedReplaced : IDesignRule
{
    public RuleInfo Info { get; } = new("cross-linked-replaced", "PVC in the place of cross-linked insulation", Severity.Error, Consequence.Fire, "vehicle service practice: cross-linked may replace PVC, never PVC cross-linked",
        "Whoever chose cross-linked insulation there had heat in mind: PVC softens where it did not.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Circuits.Where(c => c.ReplacesWireType is not null)
            .Select(c => (Circuit: c, Was: context.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == c.ReplacesWireType), Wires: context.WiresOf(c.Id).Where(w => context.TypeOf(w)?.CrossLinked == false).ToList()))
            .Where(p => p.Was?.CrossLinked == true && p.Wires.Count > 0)
            .Select(p => context.Found(Info, $"{p.Circuit.Id} replaces {p.Was!.Title} ({Figure.Of(p.Was.MaxC, "°C")}) by {context.TypeOf(p.Wires[0])!.Title} ({Figure.Of(context.TypeOf(p.Wires[0])!.MaxC, "°C")}): {Wording.List(p.Wires.Select(w => w.Id))}.",
                $"Use {p.Was.Title} again.", [p.Circuit.Id, .. p.Wires.Select(w => w.Id)], p.Circuit.OnlyWith, p.Circuit.At));
}
