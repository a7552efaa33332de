using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Sheets.OpeningTemplates;
using HarnessDraw.Writing.Pdf;
using HarnessDraw.Writing.Png;
using SkiaSharp;
using UglyToad.PdfPig;

namespace HarnessDraw.Tests.Sheets;

/// <summary>What is at 1:1 is at 1:1 in the files, measured in their own coordinates.</summary>
public class OpeningTemplateTests
{
    private const double PointsPerMm = 72 / 25.4;
    private const int Dpi = 300;

    private static Sheet Page => OpeningTemplateSheets.Compose(ExamplePlans.Of("brackmere-six"), [], new()).Sheets[0];

    /// <summary>A home printer takes A4 (210 mm wide): an opening of 124 x 148 mm with its check bars and notes needs no more.</summary>
    [Fact]
    public void Openings_that_fit_it_are_on_A4() =>
        Assert.All(OpeningTemplateSheets.Compose(ExamplePlans.Of("aldervane-coach"), [], new()).Sheets, s => Assert.Equal("A4", s.Paper.Name));

    [Fact]
    public void A_bar_of_100_mm_is_100_mm_in_the_pdf_both_ways()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write([Page], new("Template")));
        var boxes = pdf.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()).Where(b => b is not null).Select(b => (Width: b!.Value.Width / PointsPerMm, Height: b.Value.Height / PointsPerMm)).ToList();
        Assert.Single(boxes, b => Math.Abs(b.Width - 100) < 0.02 && b.Height is > 1 and < 2);
        Assert.Single(boxes, b => Math.Abs(b.Height - 100) < 0.02 && b.Width is > 1 and < 2);
        Assert.Single(boxes, b => Math.Abs(b.Width - 101.6) < 0.02 && b.Height is > 1 and < 2);
        Assert.Single(boxes, b => Math.Abs(b.Height - 101.6) < 0.02 && b.Width is > 1 and < 2);
    }

    [Fact]
    public void The_cut_line_of_the_opening_has_its_size_in_the_pdf()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write([Page], new("Template")));
        var boxes = pdf.GetPage(1).Paths.Select(p => p.GetBoundingRectangle()).Where(b => b is not null).Select(b => (Width: b!.Value.Width / PointsPerMm, Height: b.Value.Height / PointsPerMm));
        Assert.Contains(boxes, b => Math.Abs(b.Width - 80) < 0.05 && Math.Abs(b.Height - 118) < 0.05);
    }

    [Theory]
    [InlineData("check bar 100 mm, level", 100)]
    [InlineData("check bar 4 in, level", 101.6)]
    public void A_bar_has_its_length_in_the_picture_within_a_pixel(string bar, double lengthMm)
    {
        var page = Page;
        var box = Bar(page, bar);
        using var bitmap = SKBitmap.Decode(PngWriter.Write(page, Dpi));
        var y = (int)(box.Centre.Y / 25.4 * Dpi);
        var dark = Enumerable.Range((int)((box.X - 2) / 25.4 * Dpi), (int)((lengthMm + 4) / 25.4 * Dpi)).Count(x => bitmap.GetPixel(x, y).Red < 128);
        Assert.InRange(dark, (lengthMm / 25.4 * Dpi) - 1, (lengthMm / 25.4 * Dpi) + 1);
    }

    [Fact]
    public void Each_opening_has_a_page_for_either_side_of_the_panel_and_one_of_steps_follows()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        var sheets = OpeningTemplateSheets.Compose(plan, [], new()).Sheets;
        Assert.Equal((2 * plan.Harness.Layout.Openings.Length) + 1, sheets.Length);
        Assert.Equal(plan.Harness.Layout.Openings.Length, sheets.Count(s => s.Title.EndsWith("mirrored", StringComparison.Ordinal)));
    }

    [Fact]
    public void An_opening_larger_than_the_paper_is_refused_by_name()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var opening = plan.Harness.Layout.Openings[0] with { WidthMm = 700, HeightMm = 1300 };
        var result = OpeningTemplateSheets.Compose(plan with { Harness = plan.Harness with { Layout = plan.Harness.Layout with { Openings = [opening] } } }, [], new());
        Assert.Empty(result.Sheets);
        Assert.Contains("pass-through (700 × 1300 mm)", result.Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void The_datum_is_printed_as_given_and_to_the_other_hand_on_the_mirrored_copy()
    {
        var sheets = Templates(new("left seam", 120, 85));
        Assert.Contains("Datum: 120 mm to the right and 85 mm up, from left seam", Words(sheets[0]), StringComparison.Ordinal);
        Assert.Contains("Datum: 120 mm to the left and 85 mm up, from left seam", Words(sheets[1]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_datum_that_is_not_given_leaves_blanks_and_no_figure()
    {
        foreach (var (datum, says) in new[] { (null, "not in the description"), (new OpeningDatum("left seam", null, 85), "from left seam, not yet measured") })
        {
            var words = Words(Templates(datum)[0]);
            Assert.Contains(says, words, StringComparison.Ordinal);
            Assert.DoesNotContain("85 mm", words, StringComparison.Ordinal);
            Assert.Contains(datum is null ? "edges, mm: left" : "as measured, mm: across", words, StringComparison.Ordinal);
        }
    }

    private static System.Collections.Immutable.ImmutableArray<Sheet> Templates(OpeningDatum? datum)
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var layout = plan.Harness.Layout with { Openings = [plan.Harness.Layout.Openings[0] with { Datum = datum }] };
        return OpeningTemplateSheets.Compose(plan with { Harness = plan.Harness with { Layout = layout } }, [], new()).Sheets;
    }

    private static string Words(Sheet sheet) => string.Join(' ', ItemWalk.All(sheet).OfType<TextItem>().Select(t => t.Text));

    private static Box Bar(Sheet page, string title)
    {
        var steps = ItemWalk.All(page).OfType<PathItem>().Single(p => p.Tag?.Title == title).Outline.Steps.SelectMany(s => s switch { PathStep.MoveTo move => [move.To], PathStep.LineTo line => [line.To], _ => Array.Empty<Point>() }).ToList();
        return Box.FromEdges(steps.Min(p => p.X), steps.Min(p => p.Y), steps.Max(p => p.X), steps.Max(p => p.Y));
    }
}
