namespace HarnessDraw.Planning;

/// <summary>How long a lead may be before its first fuse, mm (ABYC E-11 as quoted: 7 in from a battery; 40 in where the source is not the battery itself and the lead is sheathed).</summary>
public static class UnfusedRun
{
    public const double FromBatteryMm = 180;
    public const double FromJunctionSheathedMm = 1000;
}
