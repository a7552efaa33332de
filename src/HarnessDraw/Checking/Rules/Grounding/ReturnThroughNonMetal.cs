using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class ReturnThroughNonMetal : IDesignRule
{
    public RuleInfo Info { get; } = new("return-through-non-metal", "Ground point on a surface that does not conduct", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Glass fibre, carbon and wood return nothing.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint)
            .Select(t => (Thing: t, Surface: context.Harness.Layout.Surfaces.FirstOrDefault(s => s.Id == t.Surface && !s.Conducts)))
            .Where(p => p.Surface is not null)
            .Select(p => context.Found(Info, $"{p.Thing.Id} is bolted to {p.Surface!.Id}, which is {p.Surface.Material}: no return for {Wording.List(context.EndsAt(p.Thing.Id).Select(e => e.Wire.Named()))}.",
                "Move it to metal, or run a return wire to the battery.", [p.Thing.Id, .. context.EndsAt(p.Thing.Id).Select(e => e.Wire.Id)], at: p.Thing.At));
}
