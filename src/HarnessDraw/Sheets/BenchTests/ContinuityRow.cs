using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BenchTests;

/// <summary>
/// One wire to be measured from end to end: milliohms at 20 degC with the joint at each end. The limit is the larger of 1.5 times and 20 milliohms more (common practice,
/// no source). Null: length or size is not known.
/// </summary>
internal sealed record ContinuityRow(int Step, Wire Wire, WireEnd ProbeA, WireEnd ProbeB, double? ExpectedMilliohm)
{
    /// <summary>Current of a 21 W lamp at 12 V, amperes.</summary>
    public const double LampA = 1.75;

    public double? LimitMilliohm => ExpectedMilliohm is { } mohm ? EndToEnd.LimitMilliohm(mohm) : null;

    /// <summary>The most a 21 W lamp's current may drop along the wire, millivolts.</summary>
    public double? LampMillivolt => LimitMilliohm * LampA;

    /// <summary>Every wire once; probe A stays at one connector as long as possible: those with the most ends first.</summary>
    public static ImmutableArray<ContinuityRow> Of(Plan plan)
    {
        var ends = plan.Wires.SelectMany(w => new[] { w.From, w.To }).Where(e => !e.IsSplice).GroupBy(e => e.At, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        var rows = plan.Wires.Select(w => Turned(w, ends))
            .OrderByDescending(r => ends.GetValueOrDefault(r.A.At))
            .ThenBy(r => r.A.At, CavityOrder.Instance)
            .ThenBy(r => r.A.Pin ?? "", CavityOrder.Instance)
            .ThenBy(r => r.Wire.Id, StringComparer.Ordinal);
        var joints = new JointOhms(new HarnessIndex(plan.Harness));
        return [.. rows.Select((r, i) => new ContinuityRow(i + 1, r.Wire, r.A, r.B, EndToEnd.Milliohm(plan.Harness, joints, r.Wire)))];
    }

    private static (Wire Wire, WireEnd A, WireEnd B) Turned(Wire wire, Dictionary<string, int> ends) =>
        ends.GetValueOrDefault(wire.To.At) > ends.GetValueOrDefault(wire.From.At) ? (wire, wire.To, wire.From) : (wire, wire.From, wire.To);
}
