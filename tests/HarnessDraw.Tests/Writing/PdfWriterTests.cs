using HarnessDraw.Drawing;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Writing.Pdf;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;
using UglyToad.PdfPig.Tokens;

namespace HarnessDraw.Tests.Writing;

public class PdfWriterTests
{
    private static readonly PdfOptions Options = new("Sample set") { Language = "en" };

    // ISO 216 in millimetres, ASME Y14.1 in inches (25.4 mm)
    [Theory]
    [InlineData("A4", 210, 297)]
    [InlineData("A4 landscape", 297, 210)]
    [InlineData("A3", 420, 297)]
    [InlineData("A2", 594, 420)]
    [InlineData("A1", 841, 594)]
    [InlineData("A0", 1189, 841)]
    [InlineData("2A0", 1682, 1189)]
    [InlineData("Letter", 215.9, 279.4)]
    [InlineData("Tabloid", 431.8, 279.4)]
    [InlineData("ANSI C", 558.8, 431.8)]
    [InlineData("ANSI D", 863.6, 558.8)]
    [InlineData("ANSI E", 1117.6, 863.6)]
    public void A_page_has_the_size_of_its_paper(string name, double widthMm, double heightMm)
    {
        var sheet = new Sheet("s", "S", PaperSizes.Find(name)!, [new TextItem("x", new(30, 30), 5)]);
        using var pdf = PdfDocument.Open(PdfWriter.Write([sheet], Options));
        var box = pdf.GetPage(1).MediaBox.Bounds;
        Assert.Equal(widthMm, box.Width / 72 * 25.4, 0.01);
        Assert.Equal(heightMm, box.Height / 72 * 25.4, 0.01);
    }

    [Fact]
    public void Text_is_found_where_it_was_drawn()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write([SampleSheet.Make(PaperSizes.A4Landscape)], Options));
        var page = pdf.GetPage(1);
        Assert.Contains("BRACKMERE SIX", page.Text, StringComparison.Ordinal);
        Assert.Contains("NOT FOR BUILD", page.Text, StringComparison.Ordinal);
        Assert.Contains("Жгут ≤ 2.5 мм² Ωμέγα 0O 1Il", page.Text, StringComparison.Ordinal);
        var letters = string.Concat(page.Letters.Select(l => l.Value));
        var first = page.Letters[letters.IndexOf("turquoise", StringComparison.Ordinal)];
        var drawn = SheetChecker.Texts(SampleSheet.Make(PaperSizes.A4Landscape).Items).Single(t => t.Item.Text == "TQ turquoise");
        Assert.Equal(drawn.Item.At.X + TextMeasure.Width("TQ ", 2.5), first.StartBaseLine.X / 72 * 25.4, 0.02);
        Assert.Equal(210 - drawn.Item.At.Y, first.StartBaseLine.Y / 72 * 25.4, 0.02);
    }

    [Fact]
    public void Every_face_used_is_embedded()
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write([SampleSheet.Make(PaperSizes.A4)], Options));
        var names = pdf.GetPage(1).Letters.Select(l => l.FontName).Distinct().ToList();
        Assert.Equal(3, names.Count);
        var text = PdfText.Of(PdfWriter.Write([SampleSheet.Make(PaperSizes.A4)], Options));
        Assert.Equal(3, text.Split("/FontFile2").Length - 1);
    }

    [Fact]
    public void The_file_says_title_language_and_true_size_and_has_no_date()
    {
        var bytes = PdfWriter.Write([SampleSheet.Make(PaperSizes.A4)], Options with { Language = "de" });
        using var pdf = PdfDocument.Open(bytes);
        Assert.Equal("Sample set", pdf.Information.Title);
        Assert.Null(pdf.Information.CreationDate);
        var catalogue = pdf.Structure.Catalog.CatalogDictionary;
        Assert.Equal("de", ((StringToken)catalogue.Data["Lang"]).Data);
        Assert.Equal("None", ((NameToken)((DictionaryToken)catalogue.Data["ViewerPreferences"]).Data["PrintScaling"]).Data);
        Assert.DoesNotContain("/CreationDate", PdfText.Of(bytes), StringComparison.Ordinal);
    }

    // ISO 32000-1, 14.11.2
    [Theory]
    [InlineData("CropBox")]
    [InlineData("BleedBox")]
    [InlineData("TrimBox")]
    [InlineData("ArtBox")]
    public void A_page_says_every_box_and_each_is_the_paper(string name)
    {
        using var pdf = PdfDocument.Open(PdfWriter.Write([new Sheet("a", "A", PaperSizes.Find("A3")!, []), new Sheet("b", "B", PaperSizes.A4, [])], Options));
        foreach (var page in pdf.GetPages())
        {
            Assert.True(page.Dictionary.TryGet(NameToken.Create(name), out ArrayToken box), name);
            Assert.Equal(((ArrayToken)page.Dictionary.Data["MediaBox"]).Data.Cast<NumericToken>().Select(n => n.Data), box.Data.Cast<NumericToken>().Select(n => n.Data));
        }
    }

    [Fact]
    public void Every_page_has_a_bookmark()
    {
        var a = new Sheet("a", "Erste ) Seite Ж", PaperSizes.A4, []);
        var pages = Enumerable.Range(1, 9).Select(i => a with { Number = i }).Prepend(new Sheet("cover", "Cover", PaperSizes.A3, []));
        using var pdf = PdfDocument.Open(PdfWriter.Write(pages, Options));
        Assert.True(pdf.TryGetBookmarks(out var bookmarks));
        var nodes = bookmarks.Roots.OfType<DocumentBookmarkNode>().ToList();
        Assert.Equal(10, nodes.Count);
        Assert.Equal("Cover", nodes[0].Title);
        Assert.Equal("Erste ) Seite Ж, page 9", nodes[9].Title);
        Assert.Equal(Enumerable.Range(1, 10), nodes.Select(n => n.PageNumber));
    }

    [Fact]
    public void A_link_leads_to_a_sheet_of_the_set_and_only_there()
    {
        var first = new Sheet("first", "First", PaperSizes.A4, [new LinkItem(new(10, 10, 20, 20), "second#part"), new LinkItem(new(50, 10, 20, 20), "nowhere")]);
        var second = new Sheet("second", "Second", PaperSizes.A4, [new GroupItem([]) { Name = "part", MoveXMm = 30 }]);
        var bytes = PdfWriter.Write([first, second], Options);
        using var pdf = PdfDocument.Open(bytes);
        Assert.Single(pdf.GetPage(1).GetAnnotations());
        Assert.Contains("/second#23part", PdfText.Of(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_writings_are_the_same_bytes() =>
        Assert.Equal(PdfWriter.Write([SampleSheet.Make(PaperSizes.A4)], Options), PdfWriter.Write([SampleSheet.Make(PaperSizes.A4)], Options));
}
