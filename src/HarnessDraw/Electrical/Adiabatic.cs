namespace HarnessDraw.Electrical;

/// <summary>
/// Short-circuit heating with all heat kept in the copper: I²t = k²S², k = 226 √ln((234.5 + final) / (234.5 + start)), IEC 60364-5-54 annex A
/// and IEC 60949. 115 for PVC from 70 to 160 degC, 143 for XLPE from 90 to 250.
/// </summary>
public static class Adiabatic
{
    public const double CopperK = 226;
    public const double Beta = 234.5;
    public const double PvcFinalC = 160;
    public const double XlpeFinalC = 250;

    /// <summary>k in A√s/mm² from a starting to a final temperature in degC; zero when it starts above.</summary>
    public static double K(double startC, double finalC) => startC >= finalC ? 0 : CopperK * Math.Sqrt(Math.Log((Beta + finalC) / (Beta + startC)));

    /// <summary>Temperature in degC after a current has flowed for a time.</summary>
    public static double FinalC(double startC, double currentA, double seconds, double areaMm2)
    {
        var share = currentA * currentA * seconds / (CopperK * CopperK * areaMm2 * areaMm2);
        return share > 5 ? 1083 : Math.Min(1083, ((Beta + startC) * Math.Exp(share)) - Beta);
    }
}
