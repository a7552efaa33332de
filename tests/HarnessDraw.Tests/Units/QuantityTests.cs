using CsCheck;
using HarnessDraw.Units;

namespace HarnessDraw.Tests.Units;

public class QuantityTests
{
    [Theory]
    [InlineData("1200 mm", 1200)]
    [InlineData("48 in", 1219.2)]
    [InlineData("3 ft 2 in", 965.2)]
    [InlineData("48 1/4 in", 1225.55)]
    [InlineData("1/4 in", 6.35)]
    [InlineData("1.2 m", 1200)]
    [InlineData("33mm", 33)]
    [InlineData("0 mm", 0)]
    [InlineData(".5 in", 12.7)]
    public void Lengths_are_held_in_millimetres(string text, double lengthMm) => Assert.Equal(lengthMm, Value(text, QuantityKind.Length), 9);

    [Theory]
    [InlineData("1200")]
    [InlineData("mm")]
    [InlineData("")]
    [InlineData("12 furlong")]
    [InlineData("1,5 mm")]
    [InlineData("1_0 mm")]
    [InlineData("7E05 mm")]
    [InlineData("7e5 mm")]
    [InlineData("-3 mm")]
    [InlineData("3 mm 2 mm")]
    [InlineData("3 in 2 ft")]
    [InlineData("1/0 in")]
    [InlineData("1 2 mm")]
    [InlineData("NaN mm")]
    [InlineData("0x10 mm")]
    [InlineData("1. mm")]
    [InlineData("12 MM")]
    public void What_is_no_length_is_refused_with_a_reason(string text)
    {
        Assert.False(Quantity.TryParse(text, QuantityKind.Length, out _, out var problem));
        Assert.False(string.IsNullOrEmpty(problem));
    }

    [Fact]
    public void Every_kind_reads_its_units()
    {
        Assert.Equal(4.6, Value("4.6 A", QuantityKind.Current), 12);
        Assert.Equal(0.17, Value("170 mA", QuantityKind.Load), 12);
        Assert.Equal(0.005, Value("5 mohm", QuantityKind.Resistance), 12);
        Assert.Equal(105, Value("105 degC", QuantityKind.Temperature), 12);
        Assert.Equal(100, Value("212 degF", QuantityKind.Temperature), 9);
        Assert.Equal(-40, Value("-40 degC", QuantityKind.Temperature), 12);
        Assert.Equal(0.75, Value("0.75 mm2", QuantityKind.WireSize), 12);
        Assert.Equal(24, Value("24 V", QuantityKind.Voltage), 12);
        Assert.Equal(13.558, Value("10 lbf ft", QuantityKind.Torque), 3);
    }

    [Theory]
    [InlineData("18 AWG", 18)]
    [InlineData("0 AWG", 0)]
    [InlineData("1/0 AWG", 0)]
    [InlineData("4/0 AWG", -3)]
    public void Gauges_are_numbers_and_keep_their_text(string text, double gauge)
    {
        Assert.True(Quantity.TryParse(text, QuantityKind.WireSize, out var quantity, out _));
        Assert.True(quantity.IsAwg);
        Assert.Equal(gauge, quantity.Value);
        Assert.Equal(text[..^4], quantity.NumberText);
    }

    [Theory]
    [InlineData("18.5 AWG")]
    [InlineData("5/0 AWG")]
    [InlineData("1/2 AWG")]
    public void Gauges_that_do_not_exist_are_refused(string text) => Assert.False(Quantity.TryParse(text, QuantityKind.WireSize, out _, out _));

    [Fact]
    public void What_is_printed_is_read_back() => Gen.Double[0, 1e6].Sample(value =>
        Math.Abs(Value(NumberText.Brief(value, 3) + " mm", QuantityKind.Length) - value) <= 0.0005 + 1e-9);

    [Fact]
    public void Inches_are_read_back_within_half_a_fraction() => Gen.Select(Gen.Double[0, 20000], Gen.Int[0, 6]).Sample((lengthMm, power) =>
    {
        var denominator = 1 << power;
        var read = Value(LengthText.Inches(lengthMm, denominator), QuantityKind.Length);
        var readUp = Value(LengthText.InchesUp(lengthMm, denominator), QuantityKind.Length);
        return Math.Abs(read - lengthMm) <= (12.7 / denominator) + 1e-6 && readUp >= lengthMm - 1e-5 && readUp - lengthMm < (25.4 / denominator) + 1e-5;
    });

    [Fact]
    public void Any_text_is_read_or_refused_but_never_throws()
    {
        QuantityKind[] kinds = [QuantityKind.Length, QuantityKind.WireSize, QuantityKind.Temperature, QuantityKind.Torque];
        var near = Gen.Char["0123456789.,/ +-_eEmftinAWG'\"°²"].Array[0, 14].Select(c => new string(c));
        Gen.Select(Gen.OneOf(near, Gen.String), Gen.Int[0, kinds.Length - 1]).Sample((text, kind) =>
            Quantity.TryParse(text, kinds[kind], out var read, out var problem) ? double.IsFinite(read.Value) && problem is null : problem is not null);
    }

    [Theory]
    [InlineData("2 to 60 mm", 2, 60)]
    [InlineData("1 cm to 60 mm", 10, 60)]
    public void A_range_shares_its_unit(string text, double first, double second)
    {
        Assert.True(QuantityPair.TryParse(text, QuantityKind.Length, " to ", false, out var pair));
        Assert.Equal((first, second), (pair.First, pair.Second));
    }

    [Fact]
    public void A_size_may_be_round()
    {
        Assert.True(QuantityPair.TryParse("round 40 mm", QuantityKind.Length, " x ", true, out var pair));
        Assert.True(pair.IsRound && pair.First == 40);
        Assert.False(QuantityPair.TryParse("round 40 mm", QuantityKind.Length, " x ", false, out _));
        Assert.False(QuantityPair.TryParse("62 x", QuantityKind.Length, " x ", true, out _));
    }

    private static double Value(string text, QuantityKind kind)
    {
        Assert.True(Quantity.TryParse(text, kind, out var quantity, out var problem), $"{text}: {problem}");
        return quantity.Value;
    }
}
