using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Bundles;
using HarnessDraw.Planning.Routing;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning;

/// <summary>Works out a plan from a harness: currents, tree, wires and splices, sizes and fuses, cavities, lengths, bundles, volts.</summary>
public static class HarnessPlanner
{
    /// <summary>The plan over all options at once. Problems are findings of the plan, never exceptions.</summary>
    public static Plan Plan(Harness harness, PlanningOptions options)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(options);
        options = options.With(harness.Allowances);
        var (builds, buildCount) = BuildLister.List(harness, options.MostBuilds);
        if (builds.IsEmpty)
        {
            builds = [harness.Options.ToImmutableSortedDictionary(o => o.Id, o => o.Usual, StringComparer.Ordinal)];
        }

        var findings = new PlanningFindings();
        var routed = Route(harness, options, builds, findings);
        var bundles = new BundleSizer(routed.Index, options, builds);
        var rows = SizeWires(routed, options, bundles, findings, out var sizing);
        return PlanAssembler.Assemble(routed, rows, sizing, options, bundles, builds, buildCount, findings);
    }

    /// <summary>Chooses ground points and the tree together: the nearest ground along the tree may differ from the nearest by path.</summary>
    private static RoutedHarness Route(Harness harness, PlanningOptions options, ImmutableArray<ImmutableSortedDictionary<string, string>> builds, PlanningFindings findings)
    {
        var first = new HarnessIndex(harness);
        var places = new PlaceGraph(first, options, [.. harness.Things.Where(t => t.Side == Side.Bay).Select(t => t.Place)]);
        var ways = new Dictionary<string, double[]>(StringComparer.Ordinal);
        double ByPath(string a, string b)
        {
            if (places.Find(a) is not { } from || places.Find(b) is not { } to)
            {
                return double.PositiveInfinity;
            }

            if (!ways.TryGetValue(a, out var row))
            {
                ways.Add(a, row = places.Graph.ShortestFrom([from]).Distance);
            }

            return row[to];
        }

        var distance = ByPath;
        RoutedHarness? routed = null;
        for (var round = 0; round < 3; round++)
        {
            var complete = ReturnWirer.WithReturns(harness, distance);
            if (routed is not null && complete.Nets.SequenceEqual(routed.Index.Harness.Nets, NetsAlike.Instance))
            {
                break;
            }

            routed = RouteOnce(complete, places, options, builds);
            var tree = routed.Tree;
            distance = (a, b) => places.Find(a) is { } from && places.Find(b) is { } to
                ? tree.InTree.Contains(from) && tree.InTree.Contains(to) ? tree.Between(from, to) : 1e6 + ByPath(a, b)
                : double.PositiveInfinity;
        }

        findings.AddMissingPaths(routed!);
        findings.AddMissingGrounds(routed!.Index.Harness);
        return routed;
    }

    private static RoutedHarness RouteOnce(Harness harness, PlaceGraph places, PlanningOptions options, ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
    {
        var usable = harness with { Nets = [.. harness.Nets.Where(n => !n.Root.IsNearestGround)] };
        var index = new HarnessIndex(usable);
        var switching = new CircuitSwitching(index);
        var root = places.Find(usable.Layout.Root) ?? 0;
        int[][] ends = [.. usable.Nets.Select(net => ElectricalNetwork.Members(net).Select(m => places.Find(index.PlaceOf(m)) ?? root).ToArray())];
        var forced = HandRoutes.EdgesOf(index, places);
        // trees that join all ends are sought while the currents are worked out
        List<int>[] starts = [];
        var seek = SideBySide.Begin(1, () => _ => starts = BranchRouter.Starts(places, ends, root, forced));
        var flow = new LoadFlow(index, switching, options, BuildLister.Covering(builds));
        var fuses = new FuseChooser(index, options).Rated(flow.Fuses.GetValueOrDefault);
        var demands = usable.Nets.Select((net, n) => new NetDemand(ends[n], flow.LargestA(n))
        {
            GivenMm2 = index.Circuit(net.Circuit).AreaMm2,
            Type = index.WireTypeOf(index.Circuit(net.Circuit)),
            FuseA = ProtectionFinder.Of(index, index.Circuit(net.Circuit)) is [var nearest, ..] ? fuses[nearest].RatingA ?? 0 : 0,
        }).ToList();
        seek.Finish();
        var edges = BranchRouter.Route(starts, places, demands, root, options, forced);
        return new(index, switching, flow, places, new RoutedTree(places, edges, root));
    }

    private static ImmutableArray<WireRow> SizeWires(RoutedHarness routed, PlanningOptions options, BundleSizer bundles, PlanningFindings findings, out SizingResult result)
    {
        var sizing = new SizingStage(routed, options, bundles);
        var wirer = new NetWirer(routed.Index, options, routed.Tree, routed.Places);
        var guessed = wirer.Wire((n, m) => NetDemand.GuessMm2(routed.Flow.LargestA(n, m)), (n, ms) => NetDemand.GuessMm2(ms.Sum(m => routed.Flow.LargestA(n, m))));
        var rows = sizing.Begin(guessed);
        sizing.Improve();

        // splices once more, now with the copper that currents and drops ask for
        var areas = RowMaker.Areas(rows);
        wirer = new NetWirer(routed.Index, options, routed.Tree, routed.Places);
        var settled = wirer.Wire(
            (n, m) => areas.TryGetValue((n, m), out var a) ? a : NetDemand.GuessMm2(routed.Flow.LargestA(n, m)),
            (n, ms) => ms.Select(m => areas.GetValueOrDefault((n, m), 0.5)).Append(NetDemand.GuessMm2(ms.Sum(m => routed.Flow.LargestA(n, m)))).Max());
        rows = settled.Splices.SequenceEqual(guessed.Splices) ? rows : sizing.Begin(settled);
        findings.AddSplicesWithoutPlace(routed.Index.Harness, wirer.Unplaced);
        result = sizing.Finish(findings);
        return rows;
    }
}

/// <summary>What the routing stage hands on.</summary>
internal sealed record RoutedHarness(HarnessIndex Index, CircuitSwitching Switching, LoadFlow Flow, PlaceGraph Places, RoutedTree Tree);

/// <summary>Nets are alike when they join the same pins.</summary>
internal sealed class NetsAlike : IEqualityComparer<Net>
{
    public static readonly NetsAlike Instance = new();

    public bool Equals(Net? x, Net? y) => x is not null && y is not null && x.Id == y.Id && x.Root == y.Root && x.Ends.SequenceEqual(y.Ends);

    public int GetHashCode(Net obj) => StringComparer.Ordinal.GetHashCode(obj.Id);
}
