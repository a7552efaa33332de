using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class BaseTracerSwapped : IDesignRule
{
    public RuleInfo Info { get; } = new("base-tracer-swapped", "Base and tracer swapped in one connector", Severity.Warning, Consequence.Untidy, "common practice, no source",
        "RD/GN and GN/RD are told apart only by looking twice.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        ColourPairs.Of(context, (a, b) => TiredColours.Split(a.Colour) is { Tracer: { } tracer, Base: var own } && b.Colour == $"{tracer}/{own}" && tracer != own, neighboursOnly: false).Select(c => context.Found(Info,
            $"{c.Connector.Thing.Id}: {Wording.List(c.Pairs.Select(p => $"{p.A.Wire.Named()} is {p.A.Wire.Colour} and {p.B.Wire.Named()} {p.B.Wire.Colour}"))}.", "Change one of the two.", [c.Connector.Thing.Id, .. c.Pairs.SelectMany(p => new[] { p.A.Wire.Id, p.B.Wire.Id })], at: c.Connector.Thing.At));
}
