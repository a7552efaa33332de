using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Makes the working rows of all wires: way, currents by case, ambient, protections and the sizes to choose from.</summary>
internal sealed class RowMaker(HarnessIndex index, PlanningOptions options, RoutedTree tree, LoadFlow flow)
{
    private readonly BuiltWiring built = new(index.Harness.Built);

    public ImmutableArray<WireRow> Make(Wiring wiring)
    {
        var protections = index.Harness.Circuits.GroupBy(c => c.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => ProtectionFinder.Of(index, g.First()), StringComparer.Ordinal);
        var alike = Alike(wiring.Wires);
        ImmutableArray<WireRow> rows = [.. wiring.Wires.Select((w, n) => Row(w, wiring.Splices, protections, alike.GetValueOrDefault(n)))];
        foreach (var group in alike.Where(a => !rows[a.Key].Given).GroupBy(a => a.Value, a => rows[a.Key]).Where(g => g.Skip(1).Any()))
        {
            ImmutableArray<WireRow> together = [.. group];
            foreach (var row in together)
            {
                row.Alike = together;
            }
        }

        CountLoaded(rows);
        return rows;
    }

    /// <summary>Wires that are to be sized alike: the sizes that all their types have, and the largest that one of them is given.</summary>
    private sealed record AlikeSizes(ImmutableHashSet<string> Labels, double GivenMm2);

    private Dictionary<int, AlikeSizes> Alike(ImmutableArray<DraftWire> wires)
    {
        var found = new Dictionary<int, AlikeSizes>();
        if (index.Harness.SizedAlike.IsEmpty)
        {
            return found;
        }

        var groups = AlikeWires.GroupsOf(index.Harness, wires);
        foreach (var group in Enumerable.Range(0, wires.Length).Where(w => groups[w] >= 0).GroupBy(w => groups[w]))
        {
            var sizes = group.Select(w => index.Circuit(index.Harness.Nets[wires[w].Net].Circuit) is var c ? SizesFor(wires[w], c, index.WireTypeOf(c)) : default).ToList();
            var labels = sizes.Where(s => !s.Given).Select(s => s.Sizes.Select(z => z.Label).ToImmutableHashSet(StringComparer.Ordinal)).Aggregate((ImmutableHashSet<string>?)null, (all, l) => all?.Intersect(l) ?? l);
            // of types without a size in common, as metric and gauges, each stays with its own
            if (labels is { IsEmpty: false })
            {
                var alike = new AlikeSizes(labels, sizes.Where(s => s.Given).Select(s => s.Sizes[0].AreaMm2).DefaultIfEmpty(0).Max());
                foreach (var w in group)
                {
                    found.Add(w, alike);
                }
            }
        }

        return found;
    }

    /// <summary>Copper of the wire at each net member, mm2, from rows that have sizes.</summary>
    public static Dictionary<(int Net, int Member), double> Areas(IEnumerable<WireRow> rows)
    {
        var areas = new Dictionary<(int, int), double>();
        foreach (var row in rows)
        {
            foreach (var end in (DraftEnd[])[row.Draft.From, row.Draft.To])
            {
                if (end.Member >= 0)
                {
                    areas[(row.Draft.Net, end.Member)] = row.SizeNow.AreaMm2;
                }
            }
        }

        return areas;
    }

    private WireRow Row(DraftWire draft, ImmutableArray<DraftSplice> splices, Dictionary<string, ImmutableArray<string>> protections, AlikeSizes? alike)
    {
        var net = index.Harness.Nets[draft.Net];
        var circuit = index.Circuit(net.Circuit);
        var type = index.WireTypeOf(circuit);
        var way = tree.Way(draft.From.Point, draft.To.Point);
        var (sizes, given) = SizesFor(draft, circuit, type);
        if (alike is not null && !given)
        {
            sizes = sizes.RemoveAll(s => !alike.Labels.Contains(s.Label));
        }

        var amperes = AmperesOf(draft);
        var path = tree.LengthMm(draft.From.Point, draft.To.Point);
        (PinRef?, string?) EndOf(DraftEnd end) => (end.Pin, end.Splice >= 0 ? splices[end.Splice].Id : null);
        var was = given ? null : built.WireOf(net, EndOf(draft.From), EndOf(draft.To));
        return new()
        {
            Draft = draft,
            Net = net,
            Circuit = circuit,
            Type = type,
            Way = way,
            SegmentIds = [.. way.Select(s => tree.Segments[s].Id)],
            PathMm = path,
            Sizes = sizes,
            Given = given,
            ByGivenAlike = given || alike is null ? 0 : Math.Max(0, WireRow.SizeOfAtLeast(sizes, alike.GivenMm2)),
            BuiltSize = was?.WireType == type.Id ? sizes.IndexOf(sizes.FirstOrDefault(s => s.Label == was.Size)!) : -1,
            BuiltSpareMm = (was?.CutMm ?? path) - path,
            CaseA = amperes,
            CaseC = NotKnown(amperes.Length),
            Unknown = way.Any(s => tree.Segments[s].IsUnknown),
            Estimated = way.Any(s => tree.Segments[s].IsEstimated || tree.Segments[s].IsUnknown),
            AmbientC = AmbientOf(draft, way),
            ProtectedBy = protections[circuit.Id],
            FusesBeyond = circuit.IsReturn ? FusesOfMotor(draft, protections) : FusesFed(circuit),
            SeriesA = SeriesLoads.LetPassA(index, circuit),
            SteadyA = SteadyOf(amperes, flow, options),
            IsStrap = circuit.IsReturn && IsStrap(draft),
            FeedsStarter = !circuit.IsReturn && (KindAt(draft.From) == ThingKind.Starter || KindAt(draft.To) == ThingKind.Starter),
            ConductorMm = (path * (1 + options.LayFraction)) + 100,
            FromCavity = Given(draft.From, net),
            ToCavity = Given(draft.To, net),
        };
    }

    private bool IsStrap(DraftWire draft)
    {
        bool Ground(DraftEnd end) => KindAt(end) == ThingKind.GroundPoint;
        bool Post(DraftEnd end) => end.Pin is { } pin && index.Harness.Power.Sources.Any(s => s.Id == pin.Thing && s.Kind == SourceKind.Battery);
        bool AtStarter(DraftEnd end) => end.Pin is { } pin && index.Thing(pin.Thing)?.Place is { } place && index.Harness.Things.Any(t => t.Kind == ThingKind.Starter && t.Place == place);
        return (Post(draft.From) && Ground(draft.To)) || (Post(draft.To) && Ground(draft.From)) || (Ground(draft.From) && Ground(draft.To) && (AtStarter(draft.From) || AtStarter(draft.To)));
    }

    private ThingKind? KindAt(DraftEnd end) => end.Pin is { } pin ? index.Thing(pin.Thing)?.Kind : null;

    private static double[] NotKnown(int count)
    {
        var celsius = new double[count];
        Array.Fill(celsius, double.NaN);
        return celsius;
    }

    private double[] AmperesOf(DraftWire draft)
    {
        var amperes = new double[flow.Cases.Count];
        for (var c = 0; c < amperes.Length; c++)
        {
            var members = flow.Cases[c].MemberA[draft.Net];
            foreach (var m in draft.FromSide)
            {
                amperes[c] += members[m];
            }

            amperes[c] = Math.Abs(amperes[c]);
        }

        return amperes;
    }

    /// <summary>Largest of the currents by case, short ones counted for less.</summary>
    public static double SteadyOf(double[] caseA, LoadFlow flow, PlanningOptions options)
    {
        var most = 0.0;
        for (var i = 0; i < caseA.Length; i++)
        {
            most = Math.Max(most, flow.Cases[i].Momentary ? caseA[i] / options.MomentaryFactor : caseA[i]);
        }

        return most;
    }

    private ImmutableArray<string> FusesOfMotor(DraftWire draft, Dictionary<string, ImmutableArray<string>> protections)
    {
        foreach (var pin in new[] { draft.From.Pin, draft.To.Pin }.OfType<PinRef>())
        {
            var name = index.PinOf(pin)?.Name ?? pin.Pin;
            var motors = index.Thing(pin.Thing)?.Elements.Where(e => e.Kind == ElementKind.Motor && e.PinB == name).Select(e => e.PinA).ToArray() ?? [];
            if (motors.Length > 0)
            {
                return [.. index.Harness.Circuits.Where(c => c.Feeds.Any(f => f.Thing == pin.Thing && motors.Contains(f.Pin, StringComparer.Ordinal)))
                    .Select(c => protections[c.Id].FirstOrDefault()).OfType<string>().Distinct(StringComparer.Ordinal)];
            }
        }

        return [];
    }

    // a bus bar's lead carries what its largest fuse does before it opens
    private ImmutableArray<string> FusesFed(Circuit circuit) => circuit.UnfusedBecause is null ? []
        : [.. index.Harness.Protections.Where(p => circuit.Feeds.Any(f => f.Thing == p.Id || f.Thing == p.On)).Select(p => p.Id)];

    private string? Given(DraftEnd end, Net net) => end.Pin is { } pin && index.IsMate(pin) ? pin.Pin ?? net.FixedCavity : null;

    private double AmbientOf(DraftWire draft, ImmutableArray<int> way)
    {
        var warmest = double.NegativeInfinity;
        foreach (var s in way)
        {
            warmest = Math.Max(warmest, index.AmbientC(tree.Segments[s].Zone, options));
        }

        foreach (var end in (DraftEnd[])[draft.From, draft.To])
        {
            if (end.Pin is { } pin && index.Place(index.PlaceOf(pin))?.Zone is { } zone)
            {
                warmest = Math.Max(warmest, index.AmbientC(zone, options));
            }
        }

        return double.IsNegativeInfinity(warmest) ? options.UsualAmbientC : warmest;
    }

    private static (ImmutableArray<WireSize> Sizes, bool Given) SizesFor(DraftWire draft, Circuit circuit, WireType type)
    {
        var area = draft.Hand?.AreaMm2 ?? (draft.Hand?.Awg is null ? circuit.AreaMm2 : null);
        var awg = draft.Hand?.Awg ?? (draft.Hand?.AreaMm2 is null ? circuit.Awg : null);
        if (area is null && awg is null)
        {
            return (type.Sizes.IsEmpty ? [Invented(1, null)] : type.Sizes, false);
        }

        // a gauge is its own size and never a metric one of the same number or about its area
        var match = awg is not null ? type.Sizes.FirstOrDefault(s => s.Awg == awg) : type.Sizes.FirstOrDefault(s => Math.Abs(s.AreaMm2 - area!.Value) <= 0.01 * area.Value);
        return ([match ?? Invented(area ?? 1, awg)], true);
    }

    /// <summary>A size by its area alone, where the catalogue has no row: IACS copper and a usual wall.</summary>
    private static WireSize Invented(double areaMm2, string? awg) => new(
        awg is null ? areaMm2.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) : $"{awg} AWG", areaMm2, awg, Copper.MilliohmPerM(areaMm2), 1 + (1.25 * Math.Sqrt(areaMm2)), null, null, "by area");

    /// <summary>
    /// Wires that carry more than the stated share of the current which the least sufficient size bears in air, at the same time, in the
    /// fullest segment on the way.
    /// </summary>
    private void CountLoaded(ImmutableArray<WireRow> rows)
    {
        var limits = rows.Select(r =>
        {
            var least = r.Sizes.FirstOrDefault(s => s.AreaMm2 >= options.SmallestAreaMm2 - 1e-9 && Ampacity.InAirA(s) * Ampacity.AmbientFactor(r.Type.MaxC, r.AmbientC) >= r.SteadyA) ?? r.Sizes[^1];
            return options.LoadedShare * Ampacity.InAirA(least);
        }).ToArray();
        var most = new int[tree.Segments.Count];
        for (var c = 0; c < flow.Cases.Count; c++)
        {
            if (flow.Cases[c].Momentary)
            {
                continue;
            }

            var count = new int[tree.Segments.Count];
            for (var w = 0; w < rows.Length; w++)
            {
                if (rows[w].CaseA[c] > limits[w])
                {
                    foreach (var s in rows[w].Way)
                    {
                        count[s]++;
                    }
                }
            }

            for (var s = 0; s < most.Length; s++)
            {
                most[s] = Math.Max(most[s], count[s]);
            }
        }

        foreach (var row in rows)
        {
            row.Loaded = Math.Max(1, row.Way.Select(s => most[s]).DefaultIfEmpty(1).Max());
        }
    }
}
