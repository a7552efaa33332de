using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning;

/// <summary>
/// Colours for circuits that name none: returns black, a circuit from a kept pin the colour it has in the cabin, live feeds red, the rest
/// dealt out in circuit order from a list of our own. IEC 60757 letters.
/// </summary>
internal sealed class WireColours
{
    private static readonly string[] Bases = ["YE", "GN", "BU", "WH", "GY", "PK"];
    private static readonly string[] Tracers = ["", "/BK", "/RD", "/WH", "/YE", "/BU", "/GN"];
    private readonly Dictionary<string, string> colourOf = new(StringComparer.Ordinal);

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

        var used = harness.Circuits.Select(c => c.Colour ?? kept.GetValueOrDefault(c.Id)).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var free = Tracers.SelectMany(t => Bases.Select(b => b + t)).Where(c => c[..2] != c[^2..] || c.Length == 2).ToArray();
        var next = 0;
        foreach (var circuit in harness.Circuits)
        {
            colourOf[circuit.Id] = circuit.Colour ?? kept.GetValueOrDefault(circuit.Id) ?? (circuit.IsReturn ? "BK" : circuit.LiveWith == KeyPosition.Off && circuit.UnfusedBecause is not null ? "RD" : Deal());
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

    private static string Swapped(string colour) => colour.Length == 2 ? colour : $"{colour[3..]}/{colour[..2]}";

    public string Of(WireRow row) => row.Draft.Hand?.Colour ?? row.Net.Colour ?? colourOf[row.Circuit.Id];
}
