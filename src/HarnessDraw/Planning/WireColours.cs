using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning;

/// <summary>
/// Colours for circuits that name none: returns black, a circuit from a kept pin the colour it has in the cabin, live feeds red, the rest
/// dealt out in circuit order from a list of our own. Nets of one such circuit that meet in a connector (a pair, a way twice through the firewall) differ,
/// so that they can be told apart when they are pinned. A built harness keeps its colours: no new load changes those of wires that lie in the vehicle. IEC 60757 letters.
/// </summary>
internal sealed class WireColours
{
    private static readonly string[] Bases = ["YE", "GN", "BU", "WH", "GY", "PK"];
    private static readonly string[] Tracers = ["", "/BK", "/RD", "/WH", "/YE", "/BU", "/GN"];

    // green and yellow together is protective earth and nothing else (IEC 60445)
    private static readonly string[] Reserved = ["GN/YE", "YE/GN"];
    private readonly Dictionary<string, string> colourOf = new(StringComparer.Ordinal); // by net

    public WireColours(HarnessIndex index, IEnumerable<WireRow> rows)
    {
        var harness = index.Harness;
        var kept = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            foreach (var (pin, cavity) in ((PinRef?, string?)[])[(row.Draft.From.Pin, row.FromCavity), (row.Draft.To.Pin, row.ToCavity)])
            {
                if (pin is not null && harness.Kept.FirstOrDefault(k => k.Connector == pin.Thing && k.Cavity == cavity)?.Colour is { } colour)
                {
                    kept.TryAdd(row.Circuit.Id, colour);
                }
            }
        }

        var built = (harness.Built?.Wires ?? []).GroupBy(w => w.Net, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Colour, StringComparer.Ordinal);
        var open = harness.Circuits.Where(c => c.Colour is null && !kept.ContainsKey(c.Id)).Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        var used = harness.Circuits.Select(c => c.Colour ?? kept.GetValueOrDefault(c.Id))
            .Concat(harness.Nets.Where(n => open.Contains(n.Circuit)).Select(n => built.GetValueOrDefault(n.Id))).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var free = Tracers.SelectMany(t => Bases.Select(b => b + t)).Where(c => c[..2] != c[^2..] || c.Length == 2).Except(Reserved).ToArray();
        var next = 0;
        var connectors = ConnectorsOf(index, rows);
        var netsOf = harness.Nets.ToLookup(n => n.Circuit, StringComparer.Ordinal);
        foreach (var circuit in harness.Circuits)
        {
            var was = netsOf[circuit.Id].Select(n => built.GetValueOrDefault(n.Id)).FirstOrDefault(c => c is not null);
            var usual = circuit.Colour ?? kept.GetValueOrDefault(circuit.Id) ?? was ?? (circuit.IsReturn ? "BK" : circuit.LiveWith == KeyPosition.Off && circuit.UnfusedBecause is not null ? "RD" : Deal());
            var isOurs = circuit.Colour is null && !circuit.IsReturn && !kept.ContainsKey(circuit.Id);
            var met = new HashSet<string>(StringComparer.Ordinal);
            foreach (var net in netsOf[circuit.Id])
            {
                colourOf[net.Id] = open.Contains(circuit.Id) && built.TryGetValue(net.Id, out var its) ? its
                    : isOurs && net.Colour is null && connectors[net.Id].Any(met.Contains) ? Deal() : usual;
                met.UnionWith(connectors[net.Id]);
            }
        }

        string Deal()
        {
            for (var i = 0; i < free.Length; i++)
            {
                var colour = free[next++ % free.Length];
                // RD/BU beside BU/RD is one colour to a tired eye
                if (!used.Contains(colour) && !used.Contains(Swapped(colour)))
                {
                    used.Add(colour);
                    return colour;
                }
            }

            return free[next++ % free.Length];
        }
    }

    // connectors in which a net has a cavity
    private static ILookup<string, string> ConnectorsOf(HarnessIndex index, IEnumerable<WireRow> rows) =>
        rows.SelectMany(r => new[] { r.Draft.From.Pin, r.Draft.To.Pin }.OfType<PinRef>().Select(p => (Net: r.Net.Id, p.Thing)))
            .Where(p => index.Thing(p.Thing)?.ConnectorPart is not null)
            .Distinct()
            .ToLookup(p => p.Net, p => p.Thing, StringComparer.Ordinal);

    private static string Swapped(string colour) => colour.Length == 2 ? colour : $"{colour[3..]}/{colour[..2]}";

    public string Of(WireRow row) => row.Draft.Hand?.Colour ?? row.Net.Colour ?? colourOf[row.Net.Id];
}
