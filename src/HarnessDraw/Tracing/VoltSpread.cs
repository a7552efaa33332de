using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>
/// How far volts may lie off the expected ones with every part good: a contact may have up to 20 milliohm, a wire 5 % more than its copper should
/// (common practice, no source); they add up as errors do that know nothing of each other. A contact of much current is bad before its milliohms say so: it may lose
/// no more volts than a service manual of 1999 to 2005, quoting SAE, allows. The meter's own error comes on top.
/// </summary>
internal sealed class VoltSpread(Plan plan)
{
    public const double MostContactOhm = 0.020;
    public const double WireShare = 0.05;

    /// <summary>The most that a connection and a switch may lose with the load on (a service manual of 1999 to 2005 quoting SAE; printed for 12 V).</summary>
    public const double MostConnectionV = 0.1;
    public const double MostSwitchV = 0.3;
    private readonly JointOhms joints = new(new HarnessIndex(plan.Harness));
    private readonly Dictionary<string, Wire> wires = plan.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);

    /// <summary>The stops with the farthest volts that good parts allow: below the expected ones on the feed, above them on the return.</summary>
    public ImmutableArray<TraceStop> Over(IReadOnlyList<TraceStop> stops, IReadOnlyList<TraceHop> hops, bool isReturn)
    {
        var spread = new double[hops.Count];
        double? amperes = null;
        for (var h = 0; h < spread.Length; h++)
        {
            (spread[h], amperes) = Of(hops[h], amperes);
        }

        var load = Enumerable.Range(0, spread.Length).FirstOrDefault(h => hops[h].Kind == HopKind.Load, isReturn ? -1 : spread.Length);
        return
        [
            .. stops.Select((stop, i) => stop.OnV is not { } volts ? stop
                : i <= load ? stop with { LimitV = Math.Sign(volts) * Math.Max(0, Math.Abs(volts) - Together(spread[..i])), LimitIsLeast = volts >= 0 }
                : stop with { LimitV = (volts < 0 ? -1 : 1) * (Math.Abs(volts) + Together(spread[i..])), LimitIsLeast = volts < 0 }),
        ];
    }

    // parts err independently of each other
    private static double Together(double[] spread) => Math.Sqrt(spread.Sum(s => s * s));

    /// <summary>Volts more that the hop may lose, and the current, which goes on along the way.</summary>
    private (double Volts, double? Amperes) Of(TraceHop hop, double? amperes)
    {
        if (hop.Kind is HopKind.Load or HopKind.Link or HopKind.Body or HopKind.NotDescribed || hop.DropV is not { } drop)
        {
            return (0, amperes);
        }

        if (hop.Wire is not { } id || !wires.TryGetValue(id, out var wire))
        {
            return amperes is { } same ? (Math.Max(0, Math.Min(same * MostContactOhm, MostSwitchV) - drop), amperes) : (0, null);
        }

        var copper = Copper.MilliohmPerM(wire.AreaMm2) * 1e-3 * (wire.CutLengthMm ?? 0) / 1000;
        var current = copper > 0 ? drop / (copper + joints.Of(wire)) : amperes ?? 0;
        var contacts = new[] { wire.From, wire.To }.Where(e => e.Pin is not null && joints.Of(e) > JointOhms.TightOhm)
            .Sum(e => Math.Max(0, Math.Min(current * MostContactOhm, MostConnectionV) - (current * joints.Of(e))));
        return ((current * copper * WireShare) + contacts, current);
    }
}
