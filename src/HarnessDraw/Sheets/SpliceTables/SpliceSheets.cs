using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.SpliceTables;

/// <summary>The splice table: for each splice its station, its wires side by side as they lie in the joint, the part, strip and sleeve, boxes to tick.</summary>
public static class SpliceSheets
{
    /// <summary>As many A4 (or Letter) pages as the splices need; none where there is no splice.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var facts = SpliceFacts.Of(shown, options.Units);
        if (facts.IsEmpty)
        {
            return new([]);
        }

        var form = new PageForm(SheetKinds.SpliceTable, "SPLICES", "splice table")
        {
            Aside = "by branch, then by station from the datum",
            Caution = "Battery disconnected while you work. Sleeve on first. Right die; pull-test a sample. No splice in a bend, never two at the same spot.",
        };
        var keys = new OptionKeys(shown.Wires.Select(w => w.Builds));
        var flow = new PageFlow(new(plan, findings, options, form));
        string? branch = null;
        foreach (var fact in facts)
        {
            if (fact.Branch != branch)
            {
                flow.Heading(fact.Branch, SpliceCard.HeightOf(fact, keys, flow.Area.Width));
                branch = fact.Branch;
            }

            var height = SpliceCard.HeightOf(fact, keys, flow.Area.Width);
            flow.Piece(height, (pen, y) => SpliceCard.Paint(pen, fact, keys, shown.Tree.Root, flow.Area with { Y = y, Height = height }));
        }

        flow.Heading("SIGNS", 10);
        flow.Paragraph($"Datum: {shown.Tree.Root}. Side A lies towards it, side B away from it. Sleeve: the joint (two strip lengths) and 25 mm beyond it on each side. Ruler: this splice black, others of the same stretch white.");
        if (keys.ExplainedFor(facts.SelectMany(f => f.SideA.Concat(f.SideB)).Select(l => l.Wire.Builds)).ToList() is { Count: > 0 } explained)
        {
            flow.Paragraph($"Option {string.Join("; ", explained)}.");
        }
        return flow.ToResult();
    }
}
