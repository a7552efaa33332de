namespace HarnessDraw.Fabrication;

/// <summary>
/// Marks along a wire, FAA AC 43.13-1B chapter 11: within 3 in of each end and at most 15 in apart; one in the middle of a wire of 3 to 7 in, none on a shorter
/// one. In a wrapped harness the labels at both ends do; open runs get the marks between too.
/// </summary>
public static class LabelSpacing
{
    public const double FromEndMm = 3 * 25.4;
    public const double ApartMm = 15 * 25.4;
    private const double MiddleUpToMm = 7 * 25.4;

    /// <summary>How far from its end a label sits at the most; on a short wire it is the middle.</summary>
    public static double AtMm(double lengthMm) => lengthMm <= MiddleUpToMm ? lengthMm / 2 : FromEndMm;

    /// <summary>Marks between those at the ends, so that no two are farther apart than 15 in.</summary>
    public static int Between(double lengthMm) => lengthMm <= MiddleUpToMm ? 0 : Math.Max(0, (int)Math.Ceiling((lengthMm - (2 * FromEndMm)) / ApartMm - 1e-9) - 1);
}
