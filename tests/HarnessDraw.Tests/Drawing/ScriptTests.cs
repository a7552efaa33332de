using System.Text;
using HarnessDraw.Drawing;
using HarnessDraw.Tests.Writing;
using HarnessDraw.Writing.Pdf;
using UglyToad.PdfPig;

namespace HarnessDraw.Tests.Drawing;

/// <summary>Scripts that run from right to left, join or stack.</summary>
public sealed class ScriptTests
{
    private const string Lamp = "مصباح";

    /// <summary>Unicode Standard Annex 9, section 3.4, rule L2: capitals stand for right-to-left letters; the second line adds a number (rule W2, level 2), as in its note on numbers.</summary>
    [Theory]
    [InlineData("car means CAR.", "car means RAC.")]
    [InlineData("he said CAR MEANS CAR to her", "he said RAC SNAEM RAC to her")]
    [InlineData("LAMP 12 LEFT", "TFEL 12 PMAL")]
    [InlineData("E12 LAMP", "E12 PMAL")]
    public void Letters_stand_in_the_order_of_the_bidirectional_algorithm(string written, string seen)
    {
        var rightToLeft = string.Concat(written.Select((c, i) => char.IsAsciiLetterUpper(c) && !(i + 1 < written.Length && char.IsAsciiDigit(written[i + 1])) ? (char)(c - 'A' + 0x5D0) : c));
        Rune[] runes = [.. rightToLeft.EnumerateRunes()];
        Assert.Equal(seen, string.Concat(ScriptRuns.LeftToRight(ScriptRuns.Levels(runes)).Select(i => written[i])));
    }

    [Fact]
    public void Arabic_letters_are_joined_and_run_from_right_to_left()
    {
        var run = Assert.Single(TextMeasure.Runs(Lamp, 5, faces: Faces()));
        var alone = Lamp.EnumerateRunes().Select(r => run.Face.Glyph(r.Value)).ToArray();
        Assert.Equal(Lamp.Length - 1, run.Glyphs[0].From); // the last letter stands at the left
        Assert.Equal(0, run.Glyphs[^1].From);
        Assert.NotEqual(alone[^2], run.Glyphs[1].Glyph); // and its neighbour has its joined form
        Assert.Equal(run.WidthMm, TextMeasure.Width(Lamp, 5, faces: Faces()), 6);
        Assert.True(run.WidthMm <= TextMeasure.PlanWidth(Lamp, 5), "the width that composers keep free, without the face, is enough");
    }

    [Fact]
    public void A_line_of_two_directions_has_its_pieces_side_by_side()
    {
        var runs = TextMeasure.Runs($"E12 {Lamp} {Lamp} 0.5", 5, faces: Faces());
        Assert.Equal($"E12 {Lamp} {Lamp} 0.5", string.Concat(runs.Select(r => r.Text)));
        var at = 0.0;
        foreach (var run in runs.OrderBy(r => r.OffsetMm))
        {
            Assert.Equal(at, run.OffsetMm, 6);
            at += run.WidthMm;
        }

        Assert.Equal(at, TextMeasure.Width($"E12 {Lamp} {Lamp} 0.5", 5, faces: Faces()), 6);
    }

    [Fact]
    public void A_PDF_is_searched_for_what_was_written()
    {
        var sheet = new Sheet("test", "Test", new("A4", 297, 210), [new TextItem(Lamp, new(20, 20), 5)]);
        using var pdf = PdfDocument.Open(PdfWriter.Write([sheet], new PdfOptions("Test") { Faces = Faces() }));
        // joined forms are compatible with the letter itself (Unicode Character Database, block FE70)
        var letters = string.Concat(pdf.GetPage(1).Letters.Select(l => l.Value)).Replace('\uFE8E', 'ا').Replace('\uFE92', 'ب').Replace('\uFEBC', 'ص').Replace('\uFEE3', 'م');
        Assert.Equal(Lamp.Order(), letters.Order());
    }

    private static FaceSet Faces()
    {
        var dejaVu = OutsideTool.FileAt("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf");
        return FaceSet.Shipped.With(new FontFile(File.ReadAllBytes(dejaVu), "DejaVu Sans"));
    }
}
