using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class PairSizesDiffer : IDesignRule
{
    public RuleInfo Info { get; } = new("pair-sizes-differ", "Lamps of both sides on wires of two sizes", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "A pair is mostly wired alike: one size to cut and crimp, and neither side is taken for a repair.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var lamps = context.Harness.Things.Where(t => t.Elements.Any(e => e.Kind == ElementKind.Lamp) && Sides.Of(t) is not null).GroupBy(Sides.Sideless, StringComparer.Ordinal);
        foreach (var pair in lamps)
        {
            foreach (var left in pair.Where(t => Sides.Of(t) == "L"))
            {
                foreach (var right in pair.Where(t => Sides.Of(t) == "R"))
                {
                    if (Of(context, left, right) is { } found)
                    {
                        yield return found;
                    }
                }
            }
        }
    }

    private Finding? Of(RuleContext context, Thing left, Thing right)
    {
        var apart = left.Elements.Where(e => e.Kind == ElementKind.Lamp).SelectMany(e => new[] { e.PinA, e.PinB }).OfType<string>().Distinct(StringComparer.Ordinal)
            .SelectMany(pin => context.EndsAt(left.Id, pin).SelectMany(l => context.EndsAt(right.Id, pin).Select(r => (Left: l.Wire, Right: r.Wire))))
            .Where(p => p.Left.AreaMm2 != p.Right.AreaMm2 && context.CanMeet(p.Left.Builds, p.Right.Builds)).Distinct().ToList();
        return apart.Count == 0
            ? null
            : context.Found(Info, $"{left.Id} and {right.Id} are a pair on wires of two sizes: {Wording.List(apart.Select(p => $"{Told(p.Left)} beside {Told(p.Right)}"), "; ")}.",
                Cure(context, left, right, [.. apart.SelectMany(p => new[] { p.Left, p.Right })]),
                [left.Id, right.Id, .. apart.SelectMany(p => new[] { p.Left.Id, p.Right.Id }).Distinct(StringComparer.Ordinal)], at: left.At);
    }

    private static string Cure(RuleContext context, Thing left, Thing right, IReadOnlyList<Wire> wires) =>
        !context.Harness.SizedAlike.Any(a => !a.AreCircuits && a.Names.Contains(left.Id) && a.Names.Contains(right.Id))
            ? $"Have them sized alike (`sized-alike: [[{left.Id}, {right.Id}]]`), or leave it: a wire that is too thin has a finding of its own."
            : wires.FirstOrDefault(w => w.DecidedBy == "given by hand") is { } given
                ? $"They are to be sized alike, but the size of {given.Named()} is given: leave it out, or give the other the same."
                : "They are to be sized alike, but their wire types have no size in common: give them one wire type.";

    private static string Told(Wire wire) => $"{wire.Named()} {wire.SizeLabel}{(wire.Awg is null ? " mm²" : "")}{(wire.CutLengthMm is { } mm ? $" over {Figure.Millimetres(mm)}" : "")}";
}
