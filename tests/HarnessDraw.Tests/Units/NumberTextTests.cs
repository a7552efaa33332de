using CsCheck;
using HarnessDraw.Units;

namespace HarnessDraw.Tests.Units;

public class NumberTextTests
{
    [Theory]
    [InlineData(1.005, 2, "1.01")]
    [InlineData(0.125, 2, "0.13")]
    [InlineData(2.5, 0, "3")]
    [InlineData(-2.5, 0, "-3")]
    [InlineData(-0.001, 2, "0.00")]
    [InlineData(-0.0, 0, "0")]
    [InlineData(1234567.891, 1, "1234567.9")]
    [InlineData(double.NaN, 2, "-")]
    public void Numbers_are_rounded_once_and_never_minus_nought(double value, int decimals, string text) => Assert.Equal(text, NumberText.Fixed(value, decimals));

    [Theory]
    [InlineData(1.500, "1.5")]
    [InlineData(2, "2")]
    [InlineData(100, "100")]
    [InlineData(0.0004, "0")]
    public void Brief_numbers_have_no_trailing_noughts(double value, string text) => Assert.Equal(text, NumberText.Brief(value));

    [Theory]
    [InlineData(1225.55, 16, "48 1/4 in")]
    [InlineData(6.35, 16, "1/4 in")]
    [InlineData(25.4, 16, "1 in")]
    [InlineData(0, 16, "0 in")]
    [InlineData(-6.35, 16, "-1/4 in")]
    public void Inches_are_fractions_in_lowest_terms(double lengthMm, int denominator, string text) => Assert.Equal(text, LengthText.Inches(lengthMm, denominator));

    [Fact]
    public void Cut_lengths_are_never_rounded_down()
    {
        Assert.Equal(640, LengthText.RoundUpMm(640, 5));
        Assert.Equal(645, LengthText.RoundUpMm(640.01, 5));
        Assert.Equal("25 1/4 in", LengthText.InchesUp(640));
        Gen.Double[0, 1e5].Sample(lengthMm => LengthText.RoundUpMm(lengthMm, 5) is var up && up >= lengthMm - 1e-5 && up < lengthMm + 5.001);
    }

    [Fact]
    public void Fixed_numbers_have_the_digits_asked_for() => Gen.Select(Gen.Double[-1e9, 1e9], Gen.Int[0, 6]).Sample((value, decimals) =>
    {
        var text = NumberText.Fixed(value, decimals);
        return decimals == 0 ? !text.Contains('.') : text.Length - text.IndexOf('.') - 1 == decimals;
    });
}
