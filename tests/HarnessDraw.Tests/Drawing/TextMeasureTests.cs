using HarnessDraw.Drawing;
using SkiaSharp;

namespace HarnessDraw.Tests.Drawing;

public class TextMeasureTests
{
    [Theory]
    [InlineData("BRACKMERE SIX", FaceWeight.Bold)]
    [InlineData("E08 RD/WH 2.5 1l|I 0O", FaceWeight.Medium)]
    [InlineData("≤ 25 °C × 3 − 1 Ω ²", FaceWeight.Medium)]
    [InlineData("→ △ Жгут проводов Ωμέγα 0", FaceWeight.Bold)]
    public void Width_equals_what_the_painter_measures(string text, FaceWeight weight)
    {
        double skia = 0;
        foreach (var run in TextMeasure.Runs(text, 100, weight))
        {
            using var data = SKData.CreateCopy(run.Face.Bytes.Span);
            using var face = SKTypeface.FromData(data);
            using var font = new SKFont(face, (float)run.SizeMm) { Subpixel = true, LinearMetrics = true, Hinting = SKFontHinting.None };
            skia += font.MeasureText(run.Text);
        }

        // the painter's font engine rounds scaled advances: 1 part in 5000 is 0.01 mm on a 50 mm line
        var measured = TextMeasure.Width(text, 100, weight);
        Assert.Equal(skia, measured, measured / 5000);
    }

    [Fact]
    public void Capitals_are_as_high_as_asked_in_both_faces()
    {
        foreach (var text in (string[])["H", "Ж"])
        {
            var run = TextMeasure.Runs(text, 100)[0];
            using var data = SKData.CreateCopy(run.Face.Bytes.Span);
            using var face = SKTypeface.FromData(data);
            using var font = new SKFont(face, (float)run.SizeMm) { Hinting = SKFontHinting.None };
            font.MeasureText(text, out var bounds);
            Assert.Equal(100, bounds.Height, 0.5);
        }
    }

    [Fact]
    public void The_cap_ratio_of_the_latin_face_is_0_668() => Assert.Equal(0.668, FaceSet.Shipped.Face(FaceWeight.Medium, 0).CapRatio, 4);

    [Fact]
    public void Width_grows_with_the_cap_height_in_proportion() =>
        Assert.Equal(4 * TextMeasure.Width("trunk", 2.5), TextMeasure.Width("trunk", 10), 9);

    [Fact]
    public void Runs_add_up_to_the_width_and_lose_no_letter()
    {
        const string Text = "Левая фара → G2, 4 мм² 🔥 end";
        var runs = TextMeasure.Runs(Text, 2.5);
        Assert.Equal(Text, string.Concat(runs.Select(r => r.Text)));
        Assert.Equal(TextMeasure.Width(Text, 2.5), runs.Sum(r => r.WidthMm), 9);
        Assert.True(runs.Length > 1);
    }

    [Fact]
    public void Missing_names_what_no_face_can_draw()
    {
        Assert.Empty(Glyphs.Missing("Ærø žluťoučký Ελλάδα Україна ←↑→↓ Ω ≤ ≥ − × Ø ° ² △ ⚠ □ ☐"));
        Assert.Equal(["あ", "🔥"], Glyphs.Missing("fan 🔥 あ fan"));
        Assert.Equal("U+3042", Glyphs.CodePoint("あ"));
    }

    [Fact]
    public void A_users_face_fills_the_gap()
    {
        var brought = new FontFile(FaceSet.Shipped.Face(FaceWeight.Medium, 1).Bytes.ToArray(), "Brought");
        Assert.Equal(3, FaceSet.Shipped.With(brought).Count);
        var cut = FaceSet.Shipped.Face(FaceWeight.Medium, 1).Bytes.ToArray();
        var broken = 0;
        for (var length = 300; length < cut.Length; length += 997)
        {
            try
            {
                FaceSet.Shipped.With(new FontFile(cut[..length], "x"));
            }
            catch (InvalidDataException)
            {
                broken++;
            }
        }

        Assert.True(broken > 10);
        Assert.Throws<InvalidDataException>(() => new FontFile([0, 1, 0, 0, 0, 0], "x"));
        Assert.Throws<InvalidDataException>(() => new FontFile(new byte[3], "x"));
    }

    [Fact]
    public void Shown_text_has_no_control_characters_and_no_direction_marks() =>
        Assert.Equal("a b ?c??d", ShownText.Of("a\nb\t\u0001c\ud800\u0085\u202e\u2066d".Replace("\u0085", "\u0086", StringComparison.Ordinal)));

    [Fact]
    public void Wrap_keeps_every_word_and_the_width()
    {
        const string Text = "Earth lead off first and on last. Keep the lead from springing back.\nNext line " + "Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww";
        var lines = TextFit.Wrap(Text, 40, 2.5);
        Assert.All(lines, l => Assert.True(TextMeasure.Width(l, 2.5) <= 40 + 1e-9, l));
        Assert.Equal(Text.Replace("\n", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        Assert.Equal([""], TextFit.Wrap("", 40, 2.5));
    }

    [Fact]
    public void Ellipsis_cuts_only_what_does_not_fit()
    {
        Assert.Equal("short", TextFit.Ellipsis("short", 40, 2.5));
        var cut = TextFit.Ellipsis(new string('x', 300), 40, 2.5);
        Assert.EndsWith("…", cut, StringComparison.Ordinal);
        Assert.InRange(TextMeasure.PlanWidth(cut, 2.5), 37, 40);
    }

    [Fact]
    public void A_planned_width_is_never_less_than_the_drawn_one()
    {
        foreach (var text in (string[])["BRACKMERE SIX", "iiiiiiii", "E08 RD/WH 2.5", "Жгут проводов", "→ ≤ − …", "あ"])
        {
            foreach (var weight in (FaceWeight[])[FaceWeight.Medium, FaceWeight.Bold])
            {
                Assert.True(TextMeasure.PlanWidth(text, 2.5, weight) >= TextMeasure.Width(text, 2.5, weight), text);
            }
        }

        // DejaVu Sans: digits 1303 of 2048 units
        Assert.Equal(10 * 1303 / 2048.0 / 0.668, TextMeasure.PlanWidth("1234567890", 1), 6);
    }
}
