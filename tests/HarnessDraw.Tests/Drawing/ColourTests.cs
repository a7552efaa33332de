using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Drawing;

public class ColourTests
{
    // W3C WCAG 2.1, definitions of relative luminance and contrast ratio; ratios computed from them for well-known pairs
    [Theory]
    [InlineData("#000000", "#FFFFFF", 21.00)]
    [InlineData("#767676", "#FFFFFF", 4.54)]
    [InlineData("#777777", "#FFFFFF", 4.48)]
    [InlineData("#595959", "#FFFFFF", 7.00)]
    [InlineData("#949494", "#FFFFFF", 3.03)]
    [InlineData("#FF0000", "#FFFFFF", 4.00)]
    [InlineData("#0000FF", "#FFFFFF", 8.59)]
    [InlineData("#FFFF00", "#FFFFFF", 1.07)]
    [InlineData("#008000", "#FFFFFF", 5.14)]
    [InlineData("#FFA500", "#FFFFFF", 1.97)]
    [InlineData("#FFA500", "#000000", 10.63)]
    [InlineData("#FF0000", "#000000", 5.25)]
    public void Contrast_is_that_of_WCAG_2(string a, string b, double ratio)
    {
        Assert.Equal(ratio, Contrast.Ratio(Rgb.Hex(a), Rgb.Hex(b)), 0.0051);
        Assert.Equal(Contrast.Ratio(Rgb.Hex(a), Rgb.Hex(b)), Contrast.Ratio(Rgb.Hex(b), Rgb.Hex(a)));
    }

    // L*a*b* of the sRGB primaries under D65, as given by B. Lindbloom's colour calculator (from memory, no source seen)
    [Theory]
    [InlineData("#FF0000", 53.24, 80.09, 67.20)]
    [InlineData("#00FF00", 87.73, -86.18, 83.18)]
    [InlineData("#0000FF", 32.30, 79.19, -107.86)]
    [InlineData("#FFFFFF", 100, 0, 0)]
    public void Lab_of_the_primaries_is_known(string hex, double l, double a, double b)
    {
        var lab = ColourVision.Lab(Rgb.Hex(hex));
        Assert.Equal(l, lab.L, 0.02);
        Assert.Equal(a, lab.A, 0.05);
        Assert.Equal(b, lab.B, 0.05);
    }

    // Machado, Oliveira, Fernandes 2009 (matrices as quoted in several public repositories): rows add up to 1, so greys stay grey
    [Theory]
    [InlineData(Eye.Protan)]
    [InlineData(Eye.Deutan)]
    [InlineData(Eye.Tritan)]
    public void Greys_look_the_same_to_every_eye(Eye eye)
    {
        var usual = ColourVision.Lab(Rgb.Hex("#808080"));
        var seen = ColourVision.Lab(Rgb.Hex("#808080"), eye);
        Assert.Equal(usual.L, seen.L, 0.01);
        Assert.Equal(0, seen.A, 0.05);
    }

    // the twelve common codes: the least distances that the inks were chosen for
    [Theory]
    [InlineData(Eye.Usual, 35)]
    [InlineData(Eye.Protan, 16.5)]
    [InlineData(Eye.Deutan, 15)]
    [InlineData(Eye.Tritan, 22.5)]
    public void Any_two_of_the_twelve_common_inks_differ_to_every_eye(Eye eye, double least)
    {
        string[] codes = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ"];
        foreach (var a in codes)
        {
            foreach (var b in codes.Where(c => string.CompareOrdinal(c, a) > 0))
            {
                var distance = ColourVision.Distance(ColourCodes.Find(a)!.Ink, ColourCodes.Find(b)!.Ink, eye);
                Assert.True(distance >= least, $"{a} and {b}: {distance:0.0}");
            }
        }
    }

    [Fact]
    public void Every_ink_under_three_to_one_on_white_has_an_outline_that_reaches_it()
    {
        foreach (var code in ColourCodes.All)
        {
            Assert.True(code.Outline is not null || Contrast.Ratio(code.Ink, Ink.Paper) >= 3, code.Code);
            Assert.True(code.Outline is null || Contrast.Ratio(code.Outline.Value, Ink.Paper) >= 3, code.Code);
        }
    }

    [Fact]
    public void No_two_codes_share_a_black_pattern()
    {
        var patterns = ColourCodes.All.Select(c => c.BlackSolid + string.Join(' ', c.BlackDashMm)).ToList();
        Assert.Equal(patterns.Count, patterns.Distinct().Count());
    }

    // IEC 60757 as quoted in public tables of its letter codes
    [Fact]
    public void The_codes_of_IEC_60757_are_there() =>
        Assert.Equal(
            ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR"],
            ColourCodes.All.Where(c => !c.Extension).Select(c => c.Code));

    [Theory]
    [InlineData("BU", "blue")]
    [InlineData("BU/OG", "blue, orange tracer")]
    [InlineData("LBU/DGN", "light blue, dark green tracer")]
    [InlineData("TN", "tan")]
    public void A_code_is_read_and_said_in_words(string code, string words)
    {
        var colour = WireColour.TryParse(code)!;
        Assert.Equal(code, colour.Code);
        Assert.Equal(words, colour.Words);
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("XX")]
    [InlineData("bu")]
    [InlineData("BU/BU")]
    [InlineData("BU/OG/BK")]
    [InlineData("LBK")]
    [InlineData("LLB")]
    [InlineData("BU/")]
    public void A_wrong_code_is_none(string? code) => Assert.Null(WireColour.TryParse(code));
}
