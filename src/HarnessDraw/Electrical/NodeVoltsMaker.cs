using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Electrical;

/// <summary>Volts of every pin, cavity and splice in every state of one build, with the wires as planned.</summary>
internal static class NodeVoltsMaker
{
    public static ImmutableArray<NodeVolts> Make(
        RoutedHarness routed, ImmutableArray<WireRow> rows, SizingResult sizing, ImmutableArray<Splice> splices, PlanningOptions options, ImmutableSortedDictionary<string, string> build)
    {
        double FuseOhm(string id) => sizing.Fuses.TryGetValue(id, out var fuse) && fuse.RatingA is { } rating ? options.FuseDropV / rating : 0.005;
        var network = new ElectricalNetwork(routed.Index, routed.Switching, options) { FuseOhm = FuseOhm };
        var shown = new SortedDictionary<string, int>(StringComparer.Ordinal);
        for (var w = 0; w < rows.Length; w++)
        {
            var row = rows[w];
            var worst = row.CaseA.DefaultIfEmpty(0).Max();
            var (a, joinA) = EndNode(network, row, row.Draft.From, row.FromCavity, splices, shown);
            var (b, joinB) = EndNode(network, row, row.Draft.To, row.ToCavity, splices, shown);
            network.Add(new(a, b, BranchKind.Conductor, row.OhmAt(row.Size, worst) + joinA + joinB) { When = row.Draft.Builds, Wire = w });
        }

        network.AddCabinLinks();
        GivenCurrents.AddTo(network, routed.Flow.ExtraLoadA);
        foreach (var thing in routed.Index.Harness.Things.Where(t => t.Kind != ThingKind.Mate && t.Kind != ThingKind.Inline))
        {
            foreach (var pin in thing.Pins)
            {
                if (network.FindNode(network.NodeName(new(thing.Id, pin.Name), "")) is { } node)
                {
                    shown.TryAdd($"{thing.Id}.{pin.Name}", node);
                }
            }
        }

        var volts = shown.Keys.ToDictionary(k => k, _ => ImmutableSortedDictionary.CreateBuilder<string, double?>(StringComparer.Ordinal), StringComparer.Ordinal);
        foreach (var state in routed.Index.Harness.States)
        {
            var solution = network.SolveReal(state, build);
            foreach (var (name, node) in shown)
            {
                volts[name][state.Id] = solution.Reached[node] ? Math.Round(solution.Volts[node], 4) + 0.0 : null;
            }
        }

        return [.. shown.Keys.Select(k => new NodeVolts(k, volts[k].ToImmutable()))];
    }

    private static (int Node, double JoinOhm) EndNode(ElectricalNetwork network, WireRow row, DraftEnd end, string? cavity, ImmutableArray<Splice> splices, SortedDictionary<string, int> shown)
    {
        if (end.Pin is not { } pin)
        {
            var splice = network.Node($"splice:{splices[end.Splice].Id}");
            shown.TryAdd(splices[end.Splice].Id, splice);
            return (splice, 0.0002);
        }

        var node = network.Node(network.NodeName(pin, row.Net.Id));
        if (network.Index.IsMate(pin) && cavity is not null)
        {
            shown.TryAdd($"{pin.Thing}.{cavity}", node);
        }

        return (node, network.ContactOhm(pin));
    }
}
