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

    private readonly Conductor[] conductors;
    private readonly int segments;
    private readonly PlanningOptions options;

    public ConductorHeat(Plan plan, HarnessIndex index, PlanningOptions options)
    {
        this.options = options;
        var number = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var segment in plan.Tree.Segments)
        {
            number.TryAdd(segment.Id, number.Count);
        }

        segments = number.Count;
        var zones = plan.Tree.Segments.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Zone, StringComparer.Ordinal);
        var types = plan.Harness.Catalogue.WireTypes.GroupBy(t => t.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        conductors = [.. plan.Wires.Select(w => Of(w, index, number, zones, types.GetValueOrDefault(w.WireType) ?? index.UsualWire))];
    }

    /// <summary>Ohms of a wire of the plan, by its number, with its conductor at a temperature; joints not included.</summary>
    public double Ohm(int wire, double conductorC) => conductors[wire].OhmCold * Copper.Heat(conductorC);

    /// <summary>True when a wire is as long, as thick and as warm there as it is here; its way is taken to be the same.</summary>
    public bool IsSame(int wire, ConductorHeat other) => conductors[wire] with { Way = [] } == other.conductors[wire] with { Way = [] };

    public double AmbientC(int wire) => conductors[wire].AmbientC;

    /// <summary>Highest temperature of the wire's insulation, degC.</summary>
    public double ClassC(int wire) => conductors[wire].MaxC;

    public bool IsCrossLinked(int wire) => conductors[wire].CrossLinked;

    /// <summary>Steady temperatures of all wires for their currents in amperes.</summary>
    public double[] Temperatures(double[] amperes)
    {
        var loaded = new int[segments];
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

        var celsius = new double[conductors.Length];
        for (var w = 0; w < celsius.Length; w++)
        {
            celsius[w] = Temperature(conductors[w], amperes[w], loaded);
        }

        return celsius;
    }

    /// <summary>Steady temperature of one wire alone in its bundle.</summary>
    public double Temperature(int wire, double amperes) => Temperature(conductors[wire], amperes, new int[segments]);

    private static double Temperature(Conductor c, double amperes, int[] loaded)
    {
        var most = 1;
        foreach (var s in c.Way)
        {
            most = Math.Max(most, loaded[s]);
        }

        var load = amperes / (c.InAirA * Ampacity.BundleFactor(most));
        return Math.Min(MeltsAtC, c.AmbientC + ((c.MaxC - Ampacity.PublishedAtC) * load * load));
    }

    private Conductor Of(Wire wire, HarnessIndex index, Dictionary<string, int> number, Dictionary<string, string?> zones, WireType type)
    {
        var size = type.Sizes.FirstOrDefault(s => s.Label == wire.SizeLabel)
            ?? new WireSize(wire.SizeLabel, wire.AreaMm2, null, 1.03 * 1000 * Copper.Resistivity / wire.AreaMm2, wire.OutsideMm, null, null, "by area");
        var celsius = wire.Segments.Where(zones.ContainsKey).Select(s => index.AmbientC(zones[s], options)).ToList();
        foreach (var end in (WireEnd[])[wire.From, wire.To])
        {
            if (index.Thing(end.At) is { } thing && index.Place(thing.Place)?.Zone is { } zone)
            {
                celsius.Add(index.AmbientC(zone, options));
            }
        }

        var length = wire.CutLengthMm ?? wire.PathLengthMm ?? 0;
        return new(Math.Max(Copper.Ohm(size, length, 20), 1e-7), Ampacity.InAirA(size), type.MaxC, celsius.DefaultIfEmpty(options.UsualAmbientC).Max(),
            [.. wire.Segments.Where(number.ContainsKey).Select(s => number[s])], type.CrossLinked);
    }

    private sealed record Conductor(double OhmCold, double InAirA, double MaxC, double AmbientC, ImmutableArray<int> Way, bool CrossLinked);
}
