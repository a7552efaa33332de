using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.OpeningTemplates;

/// <summary>One opening seen from one side of its panel, at 1:1.</summary>
internal sealed partial record TemplateView(Opening Opening, ConnectorPart? Body, bool Mirrored)
{
    // common practice, no source: an 8 mm drill starts each corner
    private const double CornerMm = 4;
    private const double CrossMm = 9;

    /// <summary>Left and right of the opening: room for centre lines and the words at their ends.</summary>
    private const double SideMm = 14;
    public const double AboveMm = 12;
    public const double BelowMm = 10;

    /// <summary>The views of a plan's openings: from the bay and, mirrored, from behind.</summary>
    public static ImmutableArray<TemplateView> Of(Plan plan) =>
    [
        .. plan.Harness.Layout.Openings.OrderBy(o => o.Place, StringComparer.Ordinal)
            .Select(o => (Opening: o, Body: plan.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == plan.Harness.Things.FirstOrDefault(t => t.Id == o.Holds)?.ConnectorPart)))
            .SelectMany(o => new[] { new TemplateView(o.Opening, o.Body, false), new TemplateView(o.Opening, o.Body, true) }),
    ];

    public double WidthMm => Opening.WidthMm + (2 * SideMm) + CheckBars.UprightMm + 4;

    public double HeightMm => Math.Max(Opening.HeightMm + AboveMm + BelowMm, CheckBars.InchMm + 12) + CheckBars.LevelMm;

    /// <summary>'58 x 92 mm' in the note on the old opening, or null.</summary>
    public (double Width, double Height)? Old =>
        Opening.OldOpening is { } words && OldSize().Match(words) is { Success: true } match
            ? (double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture), double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture))
            : null;

    public void Paint(Pen pen, Box area, UnitsShown units)
    {
        var cut = new Box(area.X + SideMm, area.Y + AboveMm, Opening.WidthMm, Opening.HeightMm);
        Waste(pen, cut);
        if (Old is { } old && old.Width < cut.Width - 2 && old.Height < cut.Height - 2)
        {
            Dashed(pen, new Box(cut.Centre.X - (old.Width / 2), cut.Centre.Y - (old.Height / 2), old.Width, old.Height));
        }

        pen.Add(new PathItem(CutLine(cut)) { Stroke = new(Ink.Black, 0.35), Tag = new() { Title = $"cut line of {Opening.Place}" } });
        Starts(pen, cut);
        CentreLines(pen, cut);
        Words(pen, cut, units);
        CheckBars.Upright(pen, cut.Right + SideMm + 4, area.Y + 2);
        CheckBars.Level(pen, area.X, area.Y + HeightMm - CheckBars.LevelMm + 3);
    }

    private Outline CutLine(Box cut) => Opening.Round ? Outline.Circle(cut.Centre, cut.Width / 2) : Outline.Rectangle(cut, CornerMm);

    // short strokes inside the line: what falls out
    private void Waste(Pen pen, Box cut)
    {
        var steps = ImmutableArray.CreateBuilder<PathStep>();
        void Stroke(double x, double y, double dx, double dy)
        {
            steps.Add(new PathStep.MoveTo(new(x, y)));
            steps.Add(new PathStep.LineTo(new(x + dx, y + dy)));
        }

        if (Opening.Round)
        {
            for (var degrees = 0; degrees < 360; degrees += 10)
            {
                var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
                var r = cut.Width / 2;
                Stroke(cut.Centre.X + (cos * r), cut.Centre.Y + (sin * r), -cos * 3, -sin * 3);
            }
        }
        else
        {
            for (var x = cut.X + CornerMm + 2; x < cut.Right - CornerMm - 1; x += 4)
            {
                Stroke(x, cut.Y, 2, 2.4);
                Stroke(x, cut.Bottom, 2, -2.4);
            }

            for (var y = cut.Y + CornerMm + 2; y < cut.Bottom - CornerMm - 1; y += 4)
            {
                Stroke(cut.X, y, 2.4, 2);
                Stroke(cut.Right, y, -2.4, 2);
            }
        }

        pen.Add(new PathItem(new(steps.ToImmutable())) { Stroke = new(Ink.Black, 0.18) });
    }

    private static void Dashed(Pen pen, Box box) =>
        pen.Add(new PathItem(Outline.Rectangle(box, 2)) { Stroke = new(Ink.Black, 0.35) { DashMm = [3, 1.5] } });

    // where the drill goes in before the saw
    private void Starts(Pen pen, Box cut)
    {
        ImmutableArray<Point> centres = Opening.Round
            ? [cut.Centre]
            : [new(cut.X + CornerMm, cut.Y + CornerMm), new(cut.Right - CornerMm, cut.Y + CornerMm), new(cut.X + CornerMm, cut.Bottom - CornerMm), new(cut.Right - CornerMm, cut.Bottom - CornerMm)];
        foreach (var at in centres)
        {
            pen.Add(new PathItem(Outline.Line(at.X - 2, at.Y, at.X + 2, at.Y)) { Stroke = new(Ink.Black, 0.25) });
            pen.Add(new PathItem(Outline.Line(at.X, at.Y - 2, at.X, at.Y + 2)) { Stroke = new(Ink.Black, 0.25) });
        }
    }

    private static void CentreLines(Pen pen, Box cut)
    {
        var chain = new Stroke(Ink.Black, 0.25) { DashMm = [6, 1.2, 0.8, 1.2] };
        var c = cut.Centre;
        foreach (var line in new[] { Outline.Line(cut.X - CrossMm, c.Y, cut.X + 7, c.Y), Outline.Line(cut.Right - 7, c.Y, cut.Right + CrossMm, c.Y), Outline.Line(c.X, cut.Y - CrossMm, c.X, cut.Y + 7), Outline.Line(c.X, cut.Bottom - 7, c.X, cut.Bottom + CrossMm) })
        {
            pen.Add(new PathItem(line) { Stroke = chain });
        }

        pen.Add(new PathItem(Outline.Line(c.X - 4, c.Y, c.X + 4, c.Y)) { Stroke = new(Ink.Black, 0.5) });
        pen.Add(new PathItem(Outline.Line(c.X, c.Y - 4, c.X, c.Y + 4)) { Stroke = new(Ink.Black, 0.5) });
    }

    private void Words(Pen pen, Box cut, UnitsShown units)
    {
        // the cut-out is narrow: one unit
        var shown = units == UnitsShown.Inch ? units : UnitsShown.Metric;
        var room = cut.Width - 14;
        var y = cut.Centre.Y + 11;
        foreach (var (line, style) in new[] { ("DATUM", TextStyle.Bold), (LengthWords.Of(Opening, shown), TextStyle.Bold.At(3.5)), ($"+{LengthWords.Small(1, shown)} −0", TextStyle.Plain), ("waste", TextStyle.Plain) })
        {
            var fits = Pen.Width(line, style) <= room && y < cut.Bottom - 8;
            if (fits)
            {
                pen.Letters(line, cut.Centre.X, y, style.Middle);
                y += 6;
            }
        }

        pen.Letters("UP", cut.Centre.X + 2, cut.Y - 4, TextStyle.Bold);
    }

    [GeneratedRegex(@"(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)\s*mm")]
    private static partial Regex OldSize();
}
