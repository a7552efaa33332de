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
}
