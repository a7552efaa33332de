namespace HarnessDraw.Fabrication;

/// <summary>
/// How much longer than stated a finished length may be; never shorter. IPC/WHMA-A-620 as quoted by makers: 25 mm up to 0.3 m, 50 up to 1.5 m, 100 up to
/// 3 m, 150 up to 7.5 m, 5 % above.
/// </summary>
public static class LengthTolerance
{
    public static double PlusMm(double lengthMm) => lengthMm switch
    {
        <= 300 => 25,
        <= 1500 => 50,
        <= 3000 => 100,
        <= 7500 => 150,
        _ => Math.Floor(lengthMm * 0.05),
    };
}
