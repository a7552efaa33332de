using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

/// <summary>Several cavities that disagree with the kept half, all of which agree when one half is seen in the mirror.</summary>
internal sealed class MirroredPinMap : IDesignRule
{
    public RuleInfo Info { get; } = new("mirrored-pin-map", "One half seems to be typed from the other face", Severity.Error, Consequence.LostFunction, "common practice, no source",
        "The wire-entry face and the mating face are mirror images: a pin map read from the wrong one swaps every circuit.")
    {
        Limits = [new("cavities put right", 2, "", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Things.Where(t => t.Kind == ThingKind.Mate).Select(mate => Of(context, mate)).OfType<Finding>();

    private Finding? Of(RuleContext context, Thing mate)
    {
        var kept = context.Harness.Kept.Where(k => k.Connector == mate.Id && k.ComesFrom is not null && context.EndsAt(mate.Id, k.Cavity).Any()).ToList();
        var wrong = kept.Where(k => !Agrees(context, k, k.Cavity)).ToList();
        if (context.PartOf(mate) is not { } part || wrong.Count < context.Limit(Info, "cavities put right"))
        {
            return null;
        }

        foreach (var (axis, words) in new[] { (Columns: true, "left and right"), (Columns: false, "top and bottom") })
        {
            var left = kept.Count(k => !Agrees(context, k, Mirrored(part, k.Cavity, axis)));
            if (wrong.Count - left >= context.Limit(Info, "cavities put right"))
            {
                var fixedAll = left == 0 ? $"All {wrong.Count}" : $"{wrong.Count - left} of {wrong.Count}";
                return context.Found(Info, $"{mate.Id}: {fixedAll} cavities that differ from the kept half ({Wording.List(wrong.Select(k => k.Cavity))}) agree with {words} swapped: one half is written down from the other face.",
                    "Look which face the pin map was read from, and write the cavities down again.", [mate.Id, .. wrong.Select(k => $"{mate.Id}.{k.Cavity}")], at: wrong[0].At);
            }
        }

        return null;
    }

    private static bool Agrees(RuleContext context, KeptPin kept, string? cavity) =>
        cavity is not null && context.EndsAt(kept.Connector, cavity).ToList() is { Count: > 0 } ends && ends.All(e => context.Circuit(e.Wire.Circuit) is { } circuit && NetDiffersAcrossMate.Agrees(context, kept, circuit));

    private static string? Mirrored(ConnectorPart part, string cavity, bool columns)
    {
        if (part.Cavities.FirstOrDefault(c => c.Name == cavity) is not { } here)
        {
            return null;
        }

        var (x, y) = columns ? (part.Cavities.Min(c => c.Xmm) + part.Cavities.Max(c => c.Xmm) - here.Xmm, here.Ymm) : (here.Xmm, part.Cavities.Min(c => c.Ymm) + part.Cavities.Max(c => c.Ymm) - here.Ymm);
        return part.Cavities.FirstOrDefault(c => Math.Abs(c.Xmm - x) < 0.5 && Math.Abs(c.Ymm - y) < 0.5)?.Name;
    }
}
