using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.SurveySheets;

/// <summary>What is still to be found out at the vehicle, each with a box to write in: lengths, openings, cavities of the kept half, torques, ratings, open questions.</summary>
public static class SurveySheet
{
    /// <summary>One page or more on A4 (or Letter); a harness with nothing unknown gets a page that says so.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var form = new PageForm(SheetKinds.Survey, "SURVEY", "survey")
        {
            Aside = "to be measured and written in at the vehicle",
            Caution = "Battery disconnected before you reach behind panels or measure ohms. Photograph everything before you undo anything.",
        };
        var asked = SurveyQuestions.Of(shown);
        var kept = SurveyQuestions.Kept(shown).ToImmutableArray();
        var flow = new PageFlow(new(plan, findings, options, form));
        if (asked.IsEmpty && kept.IsEmpty)
        {
            flow.Heading("NOTHING IS UNKNOWN", 12);
            flow.Paragraph("Every length, opening, torque and rating that the sheets need is in the description. Check a few of them all the same.");
        }

        if (!asked.IsEmpty)
        {
            flow.Table(new TextTable<SurveyQuestion>(
                asked, flow.Area,
                new TextColumn<SurveyQuestion>("what", q => q.What) { LeastMm = 50 },
                new TextColumn<SurveyQuestion>("now in the description", q => q.Known) { LeastMm = 36 },
                new TextColumn<SurveyQuestion>("unit", q => q.Unit),
                TextColumn<SurveyQuestion>.Box("found", 30),
                TextColumn<SurveyQuestion>.Box("again", 20, q => q.Twice))
            { LeastRowMm = 8.4, GroupOf = q => q.Group });
        }

        foreach (var (connector, cavities) in kept)
        {
            flow.Heading($"COLOURS OF THE KEPT WIRES AT {connector.ToUpperInvariant()}", 14);
            Cavities(flow, cavities);
        }

        flow.Heading("ALSO LOOK FOR", 14);
        flow.Paragraph("Hot, sharp and moving things within 50 mm of the run; holes and clips that can be used again; colours and sizes of the kept wires where the harness joins them; what was added later and hangs on the old harness; bare metal for grounds.");
        flow.SignOff("Surveyed by", "date", "vehicle number");
        return flow.ToResult();
    }

    // a box for each cavity, six to a row
    private static void Cavities(PageFlow flow, ImmutableArray<string> cavities)
    {
        const int Columns = 6;
        const double RowMm = 8.6;
        var width = flow.Area.Width / Columns;
        var nameMm = cavities.Max(c => Math.Min(12, Pen.Width(c, TextStyle.Bold)));
        foreach (var row in cavities.Chunk(Columns))
        {
            flow.Piece(RowMm, (pen, y) =>
            {
                for (var i = 0; i < row.Length; i++)
                {
                    var x = flow.Area.X + (i * width);
                    pen.Letters(LineBreaker.Lines(row[i], 12, TextStyle.Bold)[0], x, y + 5.4, TextStyle.Bold);
                    pen.Frame(Box.FromEdges(x + nameMm + 1.5, y + 0.8, x + width - 3, y + RowMm - 0.8), 0.25, 0.6);
                }
            });
        }
    }
}
