using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace HarnessDraw.Tests.Writing;

public class PdfSetTests
{
    private static readonly Lazy<(Plan Plan, byte[] File, int Pages)> Set = new(() =>
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var sheets = SheetCount.Fill([.. SheetKinds.All.SelectMany(k => SheetKinds.Compose(k, plan, [], new()).Sheets)]);
        return (plan, PdfWriter.Write(sheets, new("Set")), sheets.Length);
    });

    [Fact]
    public void The_set_of_the_saloon_projector_pages_included_stays_under_two_megabytes_with_each_face_embedded_once()
    {
        Assert.InRange(Set.Value.File.Length, 1, 2_000_000);
        Assert.Equal(2, PdfText.Of(Set.Value.File).Split("/FontFile2").Length - 1);
    }

    [Fact]
    public void Every_wire_can_be_found_on_the_chart_and_in_the_cut_list_and_leads_from_one_to_the_other()
    {
        using var pdf = PdfDocument.Open(Set.Value.File);
        var texts = pdf.GetPages().Select(p => " " + string.Join(' ', p.GetWords().Select(w => w.Text)) + " ").ToList();
        var names = PdfText.Of(Set.Value.File);
        foreach (var wire in Set.Value.Plan.Wires)
        {
            Assert.Contains(wire.Id, texts[^1] + string.Concat(texts.Skip(1)), StringComparison.Ordinal);
            Assert.Contains($"#23wire-{wire.Id}", names, StringComparison.Ordinal);
        }

        var links = pdf.GetPages().Sum(p => p.GetAnnotations().Count(a => a.AnnotationDictionary.TryGet(NameToken.Subtype, out NameToken type) && type.Data == "Link"));
        Assert.True(links >= 2 * Set.Value.Plan.Wires.Length, $"{links} links");
    }

    [Fact]
    public void Each_name_that_a_link_leads_to_is_in_the_file()
    {
        var text = PdfText.Of(Set.Value.File);
        var targets = text.Split("/Subtype /Link").Length - 1;
        Assert.True(targets > 0);
        using var pdf = PdfDocument.Open(Set.Value.File);
        Assert.Equal(Set.Value.Pages, pdf.NumberOfPages);
        var named = text.Split("#23wire-").Skip(1).Select(t => new string([.. t.TakeWhile(char.IsAsciiLetterOrDigit)])).GroupBy(t => t).ToList();
        Assert.All(named, n => Assert.True(n.Count() > 1, n.Key));
    }

    // SVG 1.1, 11.4: dashes and gaps alternate from the start of the line
    [Fact]
    public void Dashes_in_a_PDF_are_strokes_of_their_length()
    {
        var dashed = new PathItem(Outline.Line(20, 50, 60, 50)) { Stroke = new(Ink.Black, 0.35) { DashMm = [6, 2], DashPhaseMm = 4 } };
        var dotted = new PathItem(Outline.Line(20, 80, 60, 80)) { Stroke = new(Ink.Black, 0.35) { DashMm = [0.01, 1.4], RoundCap = true } };
        using var pdf = PdfDocument.Open(PdfWriter.Write([new Sheet("s", "S", PaperSizes.A4, [dashed, dotted])], new("S")));
        var commands = pdf.GetPage(1).Paths.SelectMany(p => p).SelectMany(s => s.Commands).ToList();
        Assert.DoesNotContain(commands, c => c is UglyToad.PdfPig.Core.PdfSubpath.CubicBezierCurve);
        var lines = commands.OfType<UglyToad.PdfPig.Core.PdfSubpath.Line>().Select(l => (Left: l.From.X / 72 * 25.4, Right: l.To.X / 72 * 25.4, Y: 297 - (l.From.Y / 72 * 25.4))).ToList();
        Assert.Equal([(20, 22), (24, 30), (32, 38), (40, 46), (48, 54), (56, 60)], lines.Where(l => l.Y < 60).Select(l => (Math.Round(l.Left, 2), Math.Round(l.Right, 2))));
        Assert.Equal(29, lines.Count(l => l.Y > 60)); // 40 mm at 1.41 mm
    }

    [Fact]
    public void A_circle_in_a_PDF_is_four_curves()
    {
        var circle = new PathItem(Outline.Circle(new(50, 60), 10)) { Stroke = new(Ink.Black, 0.5) };
        using var pdf = PdfDocument.Open(PdfWriter.Write([new Sheet("s", "S", PaperSizes.A4, [circle])], new("S")));
        var path = Assert.Single(pdf.GetPage(1).Paths);
        var box = path.GetBoundingRectangle()!.Value;
        Assert.Equal(20, box.Width / 72 * 25.4, 0.01);
        Assert.Equal(40, box.Left / 72 * 25.4, 0.01);
        Assert.Equal(297 - 70, box.Bottom / 72 * 25.4, 0.01);
        Assert.Equal(4, path.SelectMany(p => p.Commands).Count(c => c is UglyToad.PdfPig.Core.PdfSubpath.CubicBezierCurve));
    }
}
