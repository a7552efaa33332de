using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.OpeningTemplates;

/// <summary>
/// Templates of the openings at 1:1: cut line, waste side, drill starts, datum cross, old opening, check bars both ways; a mirrored copy for the other side of the panel; steps.
/// </summary>
public static class OpeningTemplateSheets
{
    private static readonly ImmutableArray<string> Portraits = ["A4", "A3 portrait", "A2 portrait", "A1 portrait"];
    private const double NoteMm = 4.3;

    /// <summary>Two pages an opening and one of steps, on the smallest paper that holds the largest opening; none where the layout has no opening.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var views = TemplateView.Of(plan);
        if (views.IsEmpty)
        {
            return new([]);
        }

        ImmutableArray<Paper> papers = options.Paper is { } asked ? [asked] : [.. Portraits.Select(p => PaperSizes.Find(p)!)];
        var makers = papers.Select(p => new PageMaker(plan, findings, options with { Paper = p }, Form)).ToList();
        var maker = makers.Find(m => views.All(v => v.WidthMm <= m.Area.Width && v.HeightMm + NotesMm(v, m.Area.Width, options.Units) <= m.Area.Height));
        if (maker is null)
        {
            var largest = views.MaxBy(v => v.WidthMm * v.HeightMm)!.Opening;
            return new([]) { Refused = $"the opening at {largest.Place} ({LengthWords.Of(largest, options.Units)}) at 1:1 does not fit {papers[^1].Name}: larger paper" };
        }

        foreach (var view in views)
        {
            Page(maker, view, options.Units);
        }

        return Steps(maker, views, options.Units);
    }

    private static PageForm Form => new(SheetKinds.OpeningTemplate, "OPENING TEMPLATE", "template 1:1")
    {
        Scale = "1:1",
        Caution = "Check the print: 100 mm must be 100 mm, both ways. Battery disconnected. Look behind the panel. Eye protection. Old harness, brake and fuel lines moved away.",
    };

    private static void Page(PageMaker maker, TemplateView view, UnitsShown units)
    {
        var opening = view.Opening;
        var side = view.Mirrored ? "from behind, mirrored" : "from the bay";
        var pen = maker.Begin($"Template, {opening.Place}, {side}", aside: $"{opening.Place}, seen {side}");
        var area = maker.Area;
        view.Paint(pen, new Box(area.X, area.Y, view.WidthMm, view.HeightMm), units);
        var y = area.Y + view.HeightMm + 5;
        pen.Rule(area.X, y - 3.5, area.Right, 0.35);
        Blanks.Paint(pen, [.. Measures(view, units)], area.X, y + 1.5, area.Width);
        y += 7;
        foreach (var line in Notes(view, units).SelectMany(n => LineBreaker.Lines(n, area.Width)).TakeWhile(_ => y <= area.Bottom))
        {
            pen.Letters(line, area.X, y, TextStyle.Plain);
            y += NoteMm;
        }
    }

    // a line to write on and the notes below the view
    private static double NotesMm(TemplateView view, double widthMm, UnitsShown units) => 9 + (Notes(view, units).Sum(n => LineBreaker.Lines(n, widthMm).Length) * NoteMm);

    // what is to be measured on the panel: the given datum once more, or its distances where none is given
    private static IEnumerable<string> Measures(TemplateView view, UnitsShown units)
    {
        var unit = units == UnitsShown.Inch ? "in" : "mm";
        return view.Opening.Datum is { } ? [$"Datum as measured, {unit}: across", "up"] : [$"Centre lines to the panel's edges, {unit}: left", "right", "top", "bottom"];
    }

    private static string Datum(TemplateView view, UnitsShown units)
    {
        var side = view.Mirrored ? "left" : "right";
        return view.Opening.Datum switch
        {
            { AcrossMm: { } across, UpMm: { } up } datum => $"Datum: {LengthWords.Small(across, units)} to the {side} and {LengthWords.Small(up, units)} up, from {datum.From}. Measure twice, both ways, before you cut.",
            { } datum => $"Datum: from {datum.From}, not yet measured. Measure twice, both ways, and write it in.",
            null => "Datum: not in the description. Measure to real edges of the panel twice, both ways, and write it in.",
        };
    }

    private static IEnumerable<string> Notes(TemplateView view, UnitsShown units)
    {
        var opening = view.Opening;
        yield return $"{(opening.Panel is { } panel ? $"Panel: {panel}. " : "")}{(view.Mirrored ? "Seen from the CABIN side or from behind: the mirror image of the other sheet. Use it only there." : "Seen from the BAY side, standing in front of the panel.")}";
        yield return Datum(view, units);
        if (view.Old is { } old)
        {
            yield return $"Dashed: old opening {LengthWords.Across(old.Width, old.Height, units)}, drawn in the middle: where it really lies shows on the panel.";
        }

        if (opening.OldOpening is { } edge)
        {
            yield return $"Given for the edge: {edge}.";
        }

        if (view.Body is { } body)
        {
            yield return $"For {body.Title} ({body.Id}), body {LengthWords.Across(body.WidthMm, body.HeightMm, units)}.";
        }
    }

    private static SheetResult Steps(PageMaker maker, ImmutableArray<TemplateView> views, UnitsShown units)
    {
        var flow = new PageFlow(maker);
        flow.Heading("STEPS", 60);
        ImmutableArray<(string What, string Why)> steps =
        [
            ("Lay a steel rule on the check bars, both ways.", "A printer that fits to the page makes the hole a few millimetres too small. 100 ±0.5 mm, else print again at 100 %."),
            ("Disconnect the battery. Take the old harness out of the opening and tie it away.", "A saw that meets a live feed starts a fire."),
            ("Look and feel behind the panel: brake and fuel lines, heater, wiring, double skins.", "What is there cannot be seen from the front."),
            ("Cut the sheet out with a margin, lay the datum cross on the measured centre, tape it down. Check it against the mirrored copy from the other side.", "The two copies must agree before the drill goes in."),
            ($"Punch the crosses and drill: {LengthWords.Small(3, units)}, then {LengthWords.Small(8, units)} in the corners (a hole saw for a round opening).", "Corners that are not drilled tear when the panel works. Corner holes: common practice, no source."),
            ("Vacuum beside the tool while you cut to the inside of the line; finish with a file.", $"Chips in a connector or a heater are found years later. Tolerance +{LengthWords.Small(1, units)}, −0."),
            ("Try the connector body without force.", "HOLD: go on only when it drops in."),
            ("Deburr both sides, clean, paint the bare edge, let it dry, fit edge trim or gasket.", "A bare edge rusts and cuts insulation."),
            ("Remove every chip on both sides. Look again behind the panel.", "HOLD: no harness goes through before this is signed."),
        ];
        flow.Table(new TextTable<(string What, string Why)>(
            steps, flow.Area,
            new TextColumn<(string What, string Why)>("what", s => s.What) { LeastMm = 70, Style = TextStyle.Bold },
            new TextColumn<(string What, string Why)>("why", s => s.Why) { LeastMm = 60 },
            TextColumn<(string What, string Why)>.Tick("done"))
        { LeastRowMm = 8 });
        flow.Heading("OPENINGS", 16);
        foreach (var opening in views.Where(v => !v.Mirrored).Select(v => v.Opening))
        {
            flow.Paragraph($"{opening.Place}: {LengthWords.Of(opening, units)}{(opening.Panel is { } panel ? $" in the {panel}" : "")}{(opening.Holds is { } holds ? $", for {holds}" : "")}{(opening.OldOpening is { } edge ? $"; {edge}" : "")}.");
        }

        return flow.ToResult();
    }
}
