using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Teaching;

/// <summary>For a class: a handout with blanks to fill in from the other sheets, and the same questions with their answers.</summary>
public static class HandoutSheets
{
    /// <summary>The handout for the pupils.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => Compose(plan, findings, options, SheetKinds.Handout, "HANDOUT", "fill in from chart, traces and fuse card", answered: false);

    /// <summary>The key for the teacher.</summary>
    public static SheetResult ComposeKey(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => Compose(plan, findings, options, SheetKinds.HandoutKey, "ANSWER KEY", "for the handout of the same revision", answered: true);

    private static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, string kind, string headline, string aside, bool answered) => WirePages.Compose(plan, findings, options,
        _ => new(kind, headline, answered ? "key" : "handout")
        {
            Aside = aside,
            Caution = "On the vehicle: battery disconnected before a connector is parted; hands clear of fan and belts; a fuse is never replaced by a larger one.",
        },
        (flow, shown) =>
        {
            var questions = ClassQuestion.Of(shown).Select((q, i) => (Question: q, Number: i + 1)).ToImmutableArray();
            if (!answered)
            {
                flow.Piece(9, (pen, y) => Blanks.Paint(pen, ["Name", "class", "date", "points"], flow.Area.X, y + 5, flow.Area.Width));
            }

            flow.Table(new TextTable<(ClassQuestion Question, int Number)>(
                questions, flow.Area,
                new TextColumn<(ClassQuestion Question, int Number)>("", q => Shown.Number(q.Number)) { Right = true, Style = TextStyle.Bold },
                new TextColumn<(ClassQuestion Question, int Number)>("question", q => q.Question.Ask) { LeastMm = 60 },
                answered
                    ? new TextColumn<(ClassQuestion Question, int Number)>("answer", q => q.Question.Answer) { FloorMm = 56, Style = TextStyle.Bold }
                    : TextColumn<(ClassQuestion Question, int Number)>.Box("answer", 62))
            { LeastRowMm = 8.6, GroupOf = q => q.Question.Group });
            flow.Gap(2);
            flow.Paragraph("Volts belong to the usual build and its own source; within 0.2 V is right. Losses are those of the copper alone at 20 °C, out of length, milliohms a metre and amperes.");
        });
}
