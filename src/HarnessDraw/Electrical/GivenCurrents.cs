using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>Currents given for a circuit as a whole, drawn at its far ends: what lies behind a kept panel is known only so.</summary>
internal static class GivenCurrents
{
    public static void AddTo(ElectricalNetwork network, IReadOnlyDictionary<string, double> extraLoadA)
    {
        var index = network.Index;
        var back = network.FindNode("body") ?? 0;
        foreach (var (id, amperes) in extraLoadA.OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            var circuit = index.Circuit(id);
            var last = index.Harness.Nets.Last(n => n.Circuit == id);
            var cabin = circuit.Feeds.Where(f => index.Thing(f.Thing)?.Side == Side.Cabin && network.FindNode(network.NodeName(f, last.Id)) is not null).ToArray();
            var at = cabin.Length > 0 ? cabin : [.. last.Ends];
            foreach (var pin in at)
            {
                var share = amperes / at.Length;
                network.Add(new(network.Node(network.NodeName(pin, last.Id)), back, BranchKind.Load, circuit.NominalV / share)
                {
                    When = last.OnlyWith,
                    NominalV = circuit.NominalV,
                    NominalA = share,
                    GivenFor = id,
                });
            }
        }
    }
}
