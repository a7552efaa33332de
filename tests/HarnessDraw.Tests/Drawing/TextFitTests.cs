using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Drawing;

/// <summary>Text broken into as few or as narrow lines as asked.</summary>
public sealed class TextFitTests
{
    [Theory]
    [InlineData("AIR PRESSURE FRONT SENDER", 1)]
    [InlineData("AIR PRESSURE FRONT SENDER", 2)]
    [InlineData("AIR PRESSURE FRONT SENDER", 3)]
    [InlineData("FRONT EMERGENCY SWITCH", 2)]
    [InlineData("A BB CCC DDDD EEEEE FFFFFF", 3)]
    public void TheNarrowestWidthHoldsTheLinesAndNothingLessDoes(string text, int lines)
    {
        var width = TextFit.NarrowestMm(text, lines, 7.5, FaceWeight.Bold);

        Assert.True(TextFit.Wrap(text, width + 0.001, 7.5, FaceWeight.Bold).Length <= lines);
        Assert.True(TextFit.Wrap(text, width - 0.01, 7.5, FaceWeight.Bold).Length > lines);
    }

    [Fact]
    public void AWordIsNeverNarrowerThanItself() =>
        Assert.Equal(TextFit.NarrowestMm("THERMOSTAT", 1, 5), TextFit.NarrowestMm("FAN THERMOSTAT", 4, 5));

    /// <summary>A line that begins with a unit or with the number of a name is read as something else.</summary>
    [Theory]
    [InlineData("Crimp splice with lined shrink, to 2 mm², strip 9 mm", "2 mm²,|9 mm")]
    [InlineData("floor left 5, floor left 4, bus bars, roof right 3", "left 5,|left 4,|right 3")]
    [InlineData("wanted 124 × 148 mm", "124 × 148 mm")]
    [InlineData("Milliamperes with everything off: under 5 mA", "5 mA")]
    public void FiguresKeepTheirUnitsAndNamesTheirNumbers(string text, string kept)
    {
        for (var width = 32.0; width < 120; width += 1)
        {
            var lines = TextFit.Wrap(text, width, 2.5);
            Assert.Equal(text, string.Join(' ', lines));
            Assert.All(kept.Split('|'), k => Assert.Contains(lines, l => l.Contains(k, StringComparison.Ordinal)));
        }
    }
}
