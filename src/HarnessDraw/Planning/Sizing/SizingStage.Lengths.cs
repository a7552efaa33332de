using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Lengths;

namespace HarnessDraw.Planning.Sizing;

/// <summary>Lengths and bundles for the sizes so far.</summary>
internal sealed partial class SizingStage
{
    private readonly LengthModel model = new(routed.Index, options, routed.Tree);

    /// <summary>Conductor lengths from the cut lengths of the sizes so far: those that the finished plan will have.</summary>
    private void SetLengths()
    {
        var ends = new EndFitter(index, terminals);
        var joinedMm2 = new double[wiring.Splices.Length];
        foreach (var row in rows)
        {
            var (from, to) = (row.Draft.From.Splice, row.Draft.To.Splice);
            if (from >= 0)
            {
                joinedMm2[from] += row.SizeNow.AreaMm2;
            }

            if (to >= 0 && to != from)
            {
                joinedMm2[to] += row.SizeNow.AreaMm2;
            }
        }

        ImmutableArray<(string, SplicePart?)> splices = [.. wiring.Splices.Select((s, n) => ("splice", EndFitter.SpliceFor(index, routed.Tree, s.Point, joinedMm2[n])))];
        var bundles = Bundles();
        foreach (var row in rows)
        {
            var allowances = model.Of(row, ends.Fit(row, true, splices), ends.Fit(row, false, splices), s => bundles[s]);
            row.ConductorMm = row.Draft.Hand?.CutLengthMm ?? model.RoundUp(row.PathMm + allowances.Sum(a => a.LengthMm));
        }
    }

    private int[][] Inside(int segments)
    {
        var found = Enumerable.Range(0, segments).Select(_ => new List<int>()).ToArray();
        for (var w = 0; w < rows.Length; w++)
        {
            foreach (var s in rows[w].Way)
            {
                if (found[s] is not [.., var last] || last != w)
                {
                    found[s].Add(w);
                }
            }
        }

        return [.. found.Select(f => f.ToArray())];
    }

    private double[] Bundles()
    {
        BeginPacking().Finish();
        return [.. packed.Select(p => p.OutsideMm)];
    }

    // packing takes long: segments are packed side by side, and only those with a wire of another size
    private SharedWork BeginPacking()
    {
        var count = routed.Tree.Segments.Count;
        inside ??= Inside(count);
        return SideBySide.Begin(count, () => Pack);

        void Pack(int s)
        {
            var sizes = Array.ConvertAll(inside[s], w => rows[w].Size);
            if (packed[s].Sizes is not { } before || !before.AsSpan().SequenceEqual(sizes))
            {
                packed[s] = (sizes, bundles.CoveredMm(Array.ConvertAll(inside[s], w => (rows[w].SizeNow.OutsideMm, rows[w].Draft.Builds)), routed.Tree.Segments[s].Zone, isRough));
            }
        }
    }
}
