using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Cavities;
using HarnessDraw.Planning.Bundles;
using HarnessDraw.Planning.Lengths;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning;

/// <summary>Names everything and makes the plan's records from the settled rows.</summary>
internal static class PlanAssembler
{
    public static Plan Assemble(
        RoutedHarness routed, ImmutableArray<WireRow> rows, SizingResult sizing, PlanningOptions options,
        BundleSizer bundles, ImmutableArray<ImmutableSortedDictionary<string, string>> builds, long buildCount, PlanningFindings findings)
    {
        var index = routed.Index;
        var spliceIds = SpliceNames.Of(sizing.Wiring);
        var ids = new WireNames(index, spliceIds).Of(rows);
        var splices = Splices(routed, rows, sizing.Wiring, ids, spliceIds);
        var tree = Tree(routed, rows, ids, bundles, options);
        var wires = Wires(routed, rows, sizing, ids, splices, tree, options);
        Report(index, sizing, rows, ids, findings);
        var plan = new Plan
        {
            Harness = index.Harness,
            Tree = tree,
            Wires = wires,
            Splices = splices,
            Cavities = CavityList.Of(index, sizing, rows, ids),
            Fuses = FuseList.Of(index, sizing, rows, ids, options),
            Nodes = [],
            GivenBeyondLoadsA = routed.Flow.ExtraLoadA.ToImmutableSortedDictionary(StringComparer.Ordinal),
            Builds = builds,
            BuildCount = buildCount,
            PlanningFindings = findings.All,
            RoutingObjective = Objective(routed, wires, tree, options),
        };
        var volts = NetworkSolver.Volts(sizing.States.Finished(plan), BuildLister.Covering(builds), sizing.States.Near);
        return plan with { Nodes = volts[0].Nodes, FurtherBuilds = volts[1..] };
    }

    private static ImmutableArray<Splice> Splices(RoutedHarness routed, ImmutableArray<WireRow> rows, Wiring wiring, ImmutableArray<string> ids, ImmutableArray<string> spliceIds)
    {
        var made = ImmutableArray.CreateBuilder<Splice>();
        var met = wiring.Splices.Select(_ => new List<int>()).ToArray();
        for (var w = 0; w < rows.Length; w++)
        {
            foreach (var n in new[] { rows[w].Draft.From.Splice, rows[w].Draft.To.Splice }.Where(n => n >= 0 && n < met.Length).Distinct())
            {
                met[n].Add(w);
            }
        }

        for (var n = 0; n < wiring.Splices.Length; n++)
        {
            var splice = wiring.Splices[n];
            var at = met[n];
            var net = routed.Index.Harness.Nets[splice.Net];
            var part = EndFitter.SpliceFor(routed.Index, routed.Tree, splice.Point, at.Sum(w => rows[w].SizeNow.AreaMm2));
            made.Add(new()
            {
                Id = spliceIds[n],
                Circuit = net.Circuit,
                Net = net.Id,
                Segment = splice.Point.Segment < 0 ? "" : routed.Tree.Segments[splice.Point.Segment].Id,
                AtMm = Math.Round(splice.Point.AtMm, 3),
                StationMm = IsMeasured(routed, splice) ? Math.Round(routed.Tree.StationMm(splice.Point), 3) : null,
                Wires = [.. at.OrderByDescending(w => rows[w].Draft.FromSide is [0] && rows[w].Draft.From.Member == 0).Select(w => ids[w])],
                Part = part?.Id,
                Builds = net.OnlyWith,
            });
        }

        return made.ToImmutable();
    }

    private static bool IsMeasured(RoutedHarness routed, DraftSplice splice) =>
        routed.Tree.Way(new(-1, 0), splice.Point).All(s => !routed.Tree.Segments[s].IsUnknown);

    private static HarnessTree Tree(RoutedHarness routed, ImmutableArray<WireRow> rows, ImmutableArray<string> ids, BundleSizer bundles, PlanningOptions options)
    {
        var skeleton = TreeMaker.Skeleton(routed.Tree);
        var inside = skeleton.Segments.Select(_ => new List<int>()).ToArray();
        for (var w = 0; w < rows.Length; w++)
        {
            foreach (var s in rows[w].Way.Distinct())
            {
                inside[s].Add(w);
            }
        }

        // packing takes long: segments are packed side by side
        var bareMm = new double[inside.Length];
        SideBySide.For(inside.Length, s => bareMm[s] = inside[s].Count == 0 ? 0 : bundles.BareMm([.. inside[s].Select(w => (rows[w].SizeNow.OutsideMm, rows[w].Draft.Builds))]));
        var segments = ImmutableArray.CreateBuilder<Segment>();
        for (var s = 0; s < inside.Length; s++)
        {
            var bare = bareMm[s];
            var covering = inside[s].Count == 0 ? null : bundles.CoveringFor(bare, skeleton.Segments[s].Zone);
            var outside = Math.Round(bare + (2 * (covering?.WallMm ?? 0)), 2);
            segments.Add(skeleton.Segments[s] with
            {
                Wires = [.. inside[s].Select(w => ids[w])],
                DiameterMm = outside,
                Covering = covering?.Id,
                MinBendRadiusMm = Math.Round(options.BendFactor * outside, 1),
            });
        }

        return skeleton with { Segments = segments.ToImmutable() };
    }

    private static ImmutableArray<Wire> Wires(
        RoutedHarness routed, ImmutableArray<WireRow> rows, SizingResult sizing, ImmutableArray<string> ids, ImmutableArray<Splice> splices, HarnessTree tree, PlanningOptions options)
    {
        var index = routed.Index;
        var ends = new EndFitter(index, sizing.Terminals);
        var model = new LengthModel(index, options, routed.Tree);
        var reasons = new SizeReasons(sizing, routed.Flow, options);
        var colours = new WireColours(index, rows);
        ImmutableArray<(string, SplicePart?)> spliceParts = [.. splices.Select(s => (s.Id, index.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == s.Part)))];
        var wires = ImmutableArray.CreateBuilder<Wire>(rows.Length);
        for (var w = 0; w < rows.Length; w++)
        {
            var row = rows[w];
            var (from, to) = (ends.Fit(row, true, spliceParts), ends.Fit(row, false, spliceParts));
            var allowances = model.Of(row, from, to, s => tree.Segments[s].DiameterMm);
            var cut = row.Draft.Hand?.CutLengthMm ?? (row.Unknown ? null : model.RoundUp(row.PathMm + allowances.Sum(a => a.LengthMm)));
            row.ConductorMm = cut ?? (row.PathMm + allowances.Sum(a => a.LengthMm));
            var reason = reasons.Of(row);
            wires.Add(new()
            {
                Id = ids[w],
                Circuit = row.Circuit.Id,
                Net = row.Net.Id,
                Cable = row.Circuit.Cable?.Id,
                From = from,
                To = to,
                Colour = colours.Of(row),
                WireType = row.Type.Id,
                AreaMm2 = row.SizeNow.AreaMm2,
                SizeLabel = row.SizeNow.Label,
                Awg = row.SizeNow.Awg,
                OutsideMm = row.SizeNow.OutsideMm,
                PathLengthMm = row.Unknown ? null : Math.Round(row.PathMm, 3),
                Allowances = allowances,
                CutLengthMm = cut,
                Estimated = row.Estimated,
                Segments = row.SegmentIds,
                Builds = row.Draft.Builds,
                Worst = reasons.WorstOf(row),
                BuildCurrents = reasons.BuildCurrentsOf(row),
                AmpacityA = Math.Round(row.DeratedA(row.Size), 2),
                ProtectedBy = row.ProtectedBy,
                SeriesA = row.SeriesA,
                DecidedBy = reason.DecidedBy,
                NeededMm2 = row.Given ? row.OwnAreaMm2 : null,
                RunnerUp = reason.RunnerUp,
                Margin = reason.Margin,
                ByHand = row.Draft.Hand is not null,
            });
        }

        return wires.ToImmutable();
    }

    private static void Report(HarnessIndex index, SizingResult sizing, ImmutableArray<WireRow> rows, ImmutableArray<string> ids, PlanningFindings findings)
    {
        var unfitting = new List<(WireRow Wire, string Id, string? Fuse, double? RatingA)>();
        for (var w = 0; w < rows.Length; w++)
        {
            if (sizing.Sizer.TooSmall.Contains(rows[w]))
            {
                findings.AddTooSmall(rows[w], ids[w], sizing.Sizer.FuseOver(rows[w]), sizing.Sizer.RatingOver(rows[w]));
            }

            // where a way is as hot as its wire may get, no size is meant
            if (!rows[w].Given && rows[w].AmbientC < rows[w].Type.MaxC && !sizing.Sizer.HasTerminal(rows[w], rows[w].Size))
            {
                unfitting.Add((rows[w], ids[w], sizing.Sizer.FuseOver(rows[w]), sizing.Sizer.RatingOver(rows[w])));
            }

            foreach (var seeker in sizing.WithoutCavity.Where(s => s.Wire == rows[w]))
            {
                CavitySeeker[] all = [.. sizing.WithoutCavity.Where(s => s.Pin.Thing == seeker.Pin.Thing)];
                findings.AddNoCavity(rows[w], ids[w], index.Thing(seeker.Pin.Thing)!, all.Length, Larger(index, all));
            }
        }

        findings.AddNoTerminals(unfitting);
    }

    // by count alone, half by half: sizes of contacts are looked at when it is planned with
    private static ConnectorPart? Larger(HarnessIndex index, CavitySeeker[] without)
    {
        var catalogue = index.Harness.Catalogue.Connectors;
        return catalogue.FirstOrDefault(c => c.Id == index.Thing(without[0].Pin.Thing)!.ConnectorPart) is not { } own ? null
            : catalogue.Where(c => c.IsBulkhead == own.IsBulkhead && c.Cavities.Length > own.Cavities.Length && without.GroupBy(s => s.Half).All(h => Of(c, h.Key) >= Of(own, h.Key) + h.Count()))
                .OrderBy(c => c.Cavities.Length).ThenBy(c => c.Id, StringComparer.Ordinal).FirstOrDefault();

        static int Of(ConnectorPart part, string? half) => part.Cavities.Count(c => half is null || c.Half == half);
    }

    private static string Objective(RoutedHarness routed, ImmutableArray<Wire> wires, HarnessTree tree, PlanningOptions options)
    {
        // mm2 times mm is mm3; told as cm3 of copper
        var length = routed.Tree.Segments.Sum(s => s.LengthMm);
        var areaMm2 = wires.DistinctBy(w => w.Id, StringComparer.Ordinal).ToDictionary(w => w.Id, w => w.AreaMm2, StringComparer.Ordinal);
        var copper = tree.Segments.Sum(s => routed.Tree.Segments[int.Parse(s.Id[1..], CultureInfo.InvariantCulture) - 1].LengthMm * s.Wires.Sum(id => areaMm2[id]));
        return string.Create(CultureInfo.InvariantCulture,
            $"least of copper in the segments, with what the heat on a wire's way adds, plus covering at {options.CoveringAsCopperMm2:0.#} mm2 of copper a length: {copper / 1000:0.0} + {length * options.CoveringAsCopperMm2 / 1000:0.0} cm3, {tree.Segments.Length} segments, {length:0} mm (best found by exchange, not proven least)");
    }
}
