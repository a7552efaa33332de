using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>The wire a row is cut from: type, size and colour.</summary>
public sealed record Reel(string WireType, double AreaMm2, string SizeLabel, string Colour)
{
    /// <summary>'1.5 mm2' or '16 AWG': a text that no spreadsheet takes for a number.</summary>
    public string SizeWords => SizeLabel.Any(char.IsAsciiLetter) ? SizeLabel : $"{SizeLabel} mm2";

    public override string ToString() => $"{WireType} {SizeWords} {Colour}";
}

/// <summary>
/// One line of the cut list: a wire, the reel it comes from and its lengths. <see cref="ExactMm"/> is the length before it was rounded up, or the length
/// given by hand; null while a length on the way is unknown.
/// </summary>
public sealed record CutRow(int Number, Wire Wire, Reel Reel, double? ExactMm)
{
    /// <summary>Sum of the wire's allowances, mm.</summary>
    public double AllowanceMm => Wire.Allowances.Sum(a => a.LengthMm);

    /// <summary>The length in inches, converted once from the exact value and rounded up: to 1/4 in up to 36 in, to 1/2 in above.</summary>
    public double? CutIn => ExactMm is { } mm ? InchLength.RoundedUp(mm) : null;
}
