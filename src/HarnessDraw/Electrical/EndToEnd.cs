using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>Resistance of a wire from probe to probe: its copper at 20 degC and the joint at each end.</summary>
public static class EndToEnd
{
    /// <summary>Milliohms; null: length or size is not known.</summary>
    public static double? Milliohm(Harness harness, Wire wire) => Milliohm(harness, new JointOhms(new HarnessIndex(harness)), wire);

    /// <summary>The same with joints at hand, for many wires.</summary>
    internal static double? Milliohm(Harness harness, JointOhms joints, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(wire);
        var size = harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType)?.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel);
        return size is not null && wire.CutLengthMm is { } mm ? (size.MilliohmPerM * mm / 1000) + (joints.Of(wire) * 1000) : null;
    }

    /// <summary>The most that a good wire reads: the larger of 1.5 times and 20 milliohms more (common practice, no source).</summary>
    public static double LimitMilliohm(double milliohm) => Math.Max(milliohm * 1.5, milliohm + 20);
}
