using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Electrical;

/// <summary>
/// Steady temperature and resistance of the wires of a plan in one state: the rise over the ambient of the hottest zone on the way goes with
/// the square of the current and, at the current that the wire bears where it lies, reaches its class. Wires loaded at the same time share a bundle's heat.
/// </summary>
internal sealed class ConductorHeat
{
    /// <summary>Copper melts; no model of an insulated wire reaches so far.</summary>
    private const double MeltsAtC = 1083;

    // segments or wires whose figures find room on the stack
    internal const int MostOnStack = 1024;

    private readonly Conductor[] conductors;
    private readonly int segments;
    private readonly PlanningOptions options;
    private readonly Dictionary<string, WireType> types;
    private readonly WireType usual;

    /// <param name="plan">The plan whose wires these are.</param>
    /// <param name="index">Look-ups over its harness.</param>
    /// <param name="options">Ambient of a place without a zone, share of load that warms.</param>
    public ConductorHeat(Plan plan, HarnessIndex index, PlanningOptions options)
    {
        this.options = options;
        types = plan.Harness.Catalogue.WireTypes.GroupBy(t => t.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        usual = index.UsualWire;
        var number = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var segment in plan.Tree.Segments)
        {
            number.TryAdd(segment.Id, number.Count);
        }

        segments = number.Count;
        double[] ambientC = [.. plan.Tree.Segments.DistinctBy(s => s.Id, StringComparer.Ordinal).Select(s => index.AmbientC(s.Zone, options))];
        conductors =
        [
            .. plan.Wires.Select(w =>
            {
                var (way, warmest) = WayOf(w);
                return Of(w, way, Warmer(Warmer(EndC(w.From, index), EndC(w.To, index)), warmest) ?? options.UsualAmbientC);
            }),
        ];

        (ImmutableArray<int> Way, double? WarmestC) WayOf(Wire wire)
        {
            var way = ImmutableArray.CreateBuilder<int>(wire.Segments.Length);
            double? warmest = null;
            foreach (var segment in wire.Segments)
            {
                if (number.TryGetValue(segment, out var s))
                {
                    way.Add(s);
                    warmest = Math.Max(warmest ?? ambientC[s], ambientC[s]);
                }
            }

            return (way.DrainToImmutable(), warmest);
        }
    }

    /// <summary>The wires of <paramref name="likePlan"/> in other sizes and lengths: they lie where those lie, and a wire that is the same one is as it was.</summary>
    public ConductorHeat(Plan plan, Plan likePlan, ConductorHeat like)
    {
        (options, types, usual, segments) = (like.options, like.types, like.usual, like.segments);
        conductors = [.. like.conductors];
        for (var w = 0; w < conductors.Length; w++)
        {
            if (plan.Wires[w] != (object)likePlan.Wires[w])
            {
                conductors[w] = Of(plan.Wires[w], conductors[w].Way, conductors[w].AmbientC);
            }
        }
    }

    /// <summary>Ohms of a wire of the plan, by its number, with its conductor at a temperature; joints not included.</summary>
    public double Ohm(int wire, double conductorC) => conductors[wire].OhmCold * Copper.Heat(conductorC);

    /// <summary>True when a wire is as long, as thick and as warm there as it is here; its way is taken to be the same.</summary>
    public bool IsSame(int wire, ConductorHeat other)
    {
        var (a, b) = (conductors[wire], other.conductors[wire]);
        return a.OhmCold == b.OhmCold && a.InAirA == b.InAirA && a.MaxC == b.MaxC && a.AmbientC == b.AmbientC;
    }

    public double AmbientC(int wire) => conductors[wire].AmbientC;

    /// <summary>Highest temperature of the wire's insulation, degC.</summary>
    public double ClassC(int wire) => conductors[wire].MaxC;

    public bool IsCrossLinked(int wire) => conductors[wire].CrossLinked;

    /// <summary>Steady temperatures of all wires for their currents in amperes, put into <paramref name="celsius"/>, which is returned.</summary>
    public Span<double> Temperatures(ReadOnlySpan<double> amperes, Span<double> celsius)
    {
        Span<int> loaded = segments <= MostOnStack ? stackalloc int[segments] : new int[segments];
        for (var w = 0; w < conductors.Length; w++)
        {
            if (Math.Abs(amperes[w]) > options.LoadedShare * conductors[w].InAirA)
            {
                foreach (var s in conductors[w].Way)
                {
                    loaded[s]++;
                }
            }
        }

        for (var w = 0; w < conductors.Length; w++)
        {
            celsius[w] = Temperature(conductors[w], amperes[w], loaded);
        }

        return celsius;
    }

    /// <summary>Steady temperature of one wire alone in its bundle.</summary>
    public double Temperature(int wire, double amperes) => Temperature(conductors[wire], amperes, new int[segments]);

    private static double Temperature(Conductor c, double amperes, ReadOnlySpan<int> loaded)
    {
        var most = 1;
        foreach (var s in c.Way)
        {
            most = Math.Max(most, loaded[s]);
        }

        var load = amperes / (c.InAirA * Ampacity.BundleFactor(most, c.Bundles));
        return Math.Min(MeltsAtC, c.AmbientC + ((c.MaxC - Ampacity.PublishedAtC) * load * load));
    }

    private Conductor Of(Wire wire, ImmutableArray<int> way, double ambientC)
    {
        var type = types.GetValueOrDefault(wire.WireType) ?? usual;
        var size = type.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel)
            ?? new WireSize(wire.SizeLabel, wire.AreaMm2, null, Copper.MilliohmPerM(wire.AreaMm2), wire.OutsideMm, null, null, "by area");
        var length = wire.CutLengthMm ?? wire.PathLengthMm ?? 0;
        return new(Math.Max(Copper.Ohm(size, length, 20), 1e-7), Ampacity.InAirA(size), type.MaxC, ambientC, way, type.CrossLinked, type.Bundles);
    }

    private double? EndC(WireEnd end, HarnessIndex index) => index.Thing(end.At) is { } thing && index.Place(thing.Place)?.Zone is { } zone ? index.AmbientC(zone, options) : null;

    private static double? Warmer(double? a, double? b) => a is null || b > a ? b : a;

    private sealed record Conductor(double OhmCold, double InAirA, double MaxC, double AmbientC, ImmutableArray<int> Way, bool CrossLinked, BundleDerating Bundles);
}
