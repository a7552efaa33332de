using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class GrommetFit : IDesignRule
{
    public RuleInfo Info { get; } = new("grommet-fit", "Bundle and hole do not fit", Severity.Warning, Consequence.Fire, "FAA AC 43.13-1B chapter 11; fill is common practice",
        "A bundle that is forced through a hole is cut by its edge.")
    {
        Limits = [new("most", 70, "%", "common practice, no source: bore area filled"), new("least", 40, "%", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var opening in context.Harness.Layout.Openings.Where(o => context.Thing(o.Holds ?? "")?.Kind is not (ThingKind.Mate or ThingKind.Inline)))
        {
            var bundle = context.Plan.Tree.Segments.Where(s => (s.From == opening.Place || s.To == opening.Place) && !s.Wires.IsEmpty).Select(s => s.DiameterMm).DefaultIfEmpty(0).Max();
            if (bundle > 0)
            {
                var hole = Math.Min(opening.WidthMm, opening.HeightMm);
                var bore = opening.Round ? context.Harness.Catalogue.Grommets.FirstOrDefault(g => Math.Abs(g.HoleMm - hole) < 0.5)?.BoreMm ?? hole : hole;
                if (Judge(context, opening, bundle, bore) is { } finding)
                {
                    yield return finding;
                }
            }
        }
    }

    private Finding? Judge(RuleContext context, Opening opening, double bundle, double bore)
    {
        var fill = 100 * bundle * bundle / (bore * bore);
        var name = $"{opening.Place}{(opening.Panel is null ? "" : $" ({opening.Panel})")}";
        return bundle > bore
            ? context.Found(Info, $"Bundle {Figure.Of(bundle, "mm")} in a {Figure.Of(bore, "mm")} bore at {name}: it does not go through.", "Enlarge the hole and take the next grommet, or split the bundle.", [opening.Place], at: opening.At, severity: Severity.Error)
            : fill > context.Limit(Info, "most") ? context.Found(Info, $"Bundle {Figure.Of(bundle, "mm")} fills {Figure.Number(Math.Round(fill))} % of the {Figure.Of(bore, "mm")} bore at {name}: it presses on the edge.", "Take the next grommet.", [opening.Place], at: opening.At)
            : fill < context.Limit(Info, "least") ? context.Found(Info, $"Bundle {Figure.Of(bundle, "mm")} fills {Figure.Number(Math.Round(fill))} % of the {Figure.Of(bore, "mm")} bore at {name}.", "Seal the rest, or take a smaller grommet.", [opening.Place], at: opening.At, severity: Severity.Advice)
            : null;
    }
}
