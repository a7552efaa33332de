using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Choices;

internal sealed class NotFittedNoFate : IDesignRule
{
    public RuleInfo Info { get; } = new("not-fitted-no-fate", "Nothing said about a wire whose option is not fitted", Severity.Warning, Consequence.Fire, "common practice, no source",
        "A wire left in its cavity stays live and bare at its far end.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Circuits
            .Where(c => c is { IsReturn: false, WhenNotFitted: null } && !c.OnlyWith.IsAlways && Leaves(context, c))
            .Select(c => (Circuit: c, Pins: context.WiresOf(c.Id).SelectMany(w => new[] { w.From, w.To }).Where(e => context.Thing(e.At)?.Kind == ThingKind.Mate).ToList()))
            .Where(p => p.Pins.Count > 0)
            .Select(p => context.Found(Info, $"Without {p.Circuit.OnlyWith} the wire of {p.Circuit.Id} in {Wording.List(p.Pins.Select(PointWords.Of))} has no fate: left in, it may be live and bare.",
                "Say 'remove' (take the terminal out and plug the cavity) or 'cap' (adhesive shrink 25 mm past the end, folded back and tied).", [p.Circuit.Id], p.Circuit.OnlyWith, p.Circuit.At));

    private static bool Leaves(RuleContext context, Circuit circuit) => !context.Builds.Smallest(circuit.OnlyWith).IsAlways;
}
