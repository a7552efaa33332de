using System.Collections.Concurrent;
using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Bundles;

/// <summary>Diameter of a segment's bundle in its worst build, and the covering that fits.</summary>
internal sealed class BundleSizer(HarnessIndex index, PlanningOptions options, ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
{
    private static readonly ImmutableArray<string> RunKinds = ["split loom", "braided sleeve", "heat sleeve", "tape"];
    private readonly ConcurrentDictionary<double[], double> packed = new(new SameDiameters());

    // those that are laid along a run, what is rather taken first
    private readonly CoveringPart[] coverings = index.Harness.Catalogue.Coverings.Where(c => c.Kind != "heat shrink")
        .OrderBy(c => RunKinds.IndexOf(c.Kind) is >= 0 and var rank ? rank : RunKinds.Length).ThenBy(c => c.MaxBundleMm).ThenBy(c => c.Id, StringComparer.Ordinal).ToArray();

    // by condition: which of the builds have it
    private readonly ConcurrentDictionary<BuildCondition, bool[]> holding = new(ReferenceEqualityComparer.Instance);

    /// <summary>Largest bare diameter over all builds, mm.</summary>
    public double BareMm((double OutsideMm, BuildCondition Builds)[] wires) => Largest(wires, Packed);

    private double Largest((double OutsideMm, BuildCondition Builds)[] wires, Func<double[], double> diameterOf)
    {
        if (Array.TrueForAll(wires, w => w.Builds.IsAlways))
        {
            return diameterOf(Array.ConvertAll(wires, w => w.OutsideMm));
        }

        var inBuilds = Array.ConvertAll(wires, w => BuildsOf(w.Builds));
        var sets = new bool[builds.Length][];
        for (var b = 0; b < sets.Length; b++)
        {
            sets[b] = Array.ConvertAll(inBuilds, holds => holds[b]);
        }

        var largest = 0.0;
        for (var b = 0; b < sets.Length; b++)
        {
            if (!IsCovered(sets, b))
            {
                var build = b;
                largest = Math.Max(largest, diameterOf(Array.ConvertAll(Array.FindAll(wires, w => BuildsOf(w.Builds)[build]), w => w.OutsideMm)));
            }
        }

        return largest;
    }

    private bool[] BuildsOf(BuildCondition condition) => holding.GetOrAdd(condition, c => [.. builds.Select(c.Holds)]);

    private static bool IsCovered(bool[][] sets, int set)
    {
        for (var other = 0; other < sets.Length; other++)
        {
            if (Covers(sets[other], sets[set], other < set))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when <paramref name="other"/> holds every wire of the set and more, or the same ones and comes first: the set needs no packing of its own.</summary>
    private static bool Covers(bool[] other, bool[] set, bool first)
    {
        var more = false;
        for (var i = 0; i < set.Length; i++)
        {
            if (set[i] && !other[i])
            {
                return false;
            }

            more |= other[i] && !set[i];
        }

        return more || first;
    }

    /// <summary>Diameter over the covering, mm; 0 for no wires. Rough: by the trade's factor, as long as sizes are still sought.</summary>
    public double CoveredMm((double OutsideMm, BuildCondition Builds)[] wires, string? zone, bool rough)
    {
        var bare = wires.Length == 0 ? 0 : Largest(wires, rough ? d => CirclePacking.ByFactor(d, options.BundleFactor) : Packed);
        return wires.Length == 0 ? 0 : Math.Round(bare + (2 * (CoveringFor(bare, zone)?.WallMm ?? 0)), 2);
    }

    /// <summary>
    /// The tightest covering that takes the bundle and bears the ambient, of the kinds that are laid along a run: what opens again before what must be threaded on, tape where
    /// neither fits (common practice, no source). Heat shrink belongs to splices and ends. Null when the catalogue has none.
    /// </summary>
    public CoveringPart? CoveringFor(double bareMm, string? zone)
    {
        var ambient = index.AmbientC(zone, options);
        return Array.Find(coverings, c => bareMm >= c.MinBundleMm - 1e-9 && bareMm <= c.MaxBundleMm + 1e-9 && c.MaxC >= ambient);
    }

    private double Packed(double[] outsideMm)
    {
        if (outsideMm.Length > CirclePacking.MostPacked)
        {
            return CirclePacking.ByFactor(outsideMm, options.BundleFactor);
        }

        Array.Sort(outsideMm);
        return packed.GetOrAdd(outsideMm, d => CirclePacking.Diameter(d, options.BundleFactor));
    }

    private sealed class SameDiameters : IEqualityComparer<double[]>
    {
        public bool Equals(double[]? x, double[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(double[] obj)
        {
            var hash = 0L;
            foreach (var mm in obj)
            {
                hash = (hash * 31) + BitConverter.DoubleToInt64Bits(mm);
            }

            return hash.GetHashCode();
        }
    }
}
