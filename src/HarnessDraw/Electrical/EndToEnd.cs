using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>Resistance of a wire from probe to probe: its copper at 20 degC and a contact at each end that is no splice.</summary>
public static class EndToEnd
{
    /// <summary>Milliohms; null: length or size is not known.</summary>
    public static double? Milliohm(Harness harness, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(wire);
        var size = harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType)?.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel);
        var contacts = new[] { wire.From, wire.To }.Count(e => !e.IsSplice) * harness.Assumed.ContactOhm * 1000;
        return size is not null && wire.CutLengthMm is { } mm ? (size.MilliohmPerM * mm / 1000) + contacts : null;
    }

    /// <summary>The most that a good wire reads: the larger of 1.5 times and 20 milliohms more (common practice, no source).</summary>
    public static double LimitMilliohm(double milliohm) => Math.Max(milliohm * 1.5, milliohm + 20);
}
