using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning;

/// <summary>
/// Ids of wires: a letter for the half (first letter of its name), P for sources and bars, W without a mate, and a number in circuit order.
/// Ids given by hand, and those of wires that are built, stay and are stepped over; so are the names of fuses and things: F12 on a sheet is one thing only.
/// </summary>
internal sealed class WireNames(HarnessIndex index, ImmutableArray<string> spliceIds)
{
    private readonly BuiltWiring built = new(index.Harness.Built);

    public ImmutableArray<string> Of(ImmutableArray<WireRow> rows)
    {
        var halves = HalvesOfThings(rows);
        var taken = rows.Select(FixedId).OfType<string>().Concat(built.WireIds)
            .Concat(index.Harness.Protections.Select(p => p.Id)).Concat(index.Harness.Things.Select(t => t.Id)).ToHashSet(StringComparer.Ordinal);
        var next = new Dictionary<string, int>(StringComparer.Ordinal);
        var ids = ImmutableArray.CreateBuilder<string>(rows.Length);
        foreach (var row in rows)
        {
            if (FixedId(row) is { } given)
            {
                ids.Add(given);
                continue;
            }

            var letter = LetterOf(row, halves);
            string id;
            do
            {
                next[letter] = next.GetValueOrDefault(letter) + 1;
                id = letter + next[letter].ToString("00", CultureInfo.InvariantCulture);
            }
            while (taken.Contains(id));
            ids.Add(id);
        }

        return ids.ToImmutable();
    }

    private string? FixedId(WireRow row) => row.Draft.Hand?.Id ?? (row.Net.Ends.Length == 1 ? row.Net.FixedWireId : null) ?? built.IdOf(row.Net, EndOf(row.Draft.From), EndOf(row.Draft.To));

    private (PinRef? Pin, string? Splice) EndOf(DraftEnd end) => (end.Pin, end.Splice >= 0 ? spliceIds[end.Splice] : null);

    private string LetterOf(WireRow row, Dictionary<string, string> halves)
    {
        if (MateLetter(row) is { } letter)
        {
            return letter;
        }

        if (row.Net.Ends.Append(row.Net.Root).Any(IsSourceOrBar))
        {
            return "P";
        }

        return row.Net.Ends.Append(row.Net.Root).Where(p => index.Thing(p.Thing)?.Kind != ThingKind.GroundPoint)
            .Select(p => halves.GetValueOrDefault(p.Thing)).FirstOrDefault(l => l is not null) ?? "W";
    }

    /// <summary>The half of the circuit, or that of the cavity the net got.</summary>
    private string? MateLetter(WireRow row)
    {
        foreach (var (pin, cavity) in ((PinRef?, string?)[])[(row.Draft.From.Pin, row.FromCavity), (row.Draft.To.Pin, row.ToCavity)])
        {
            if (pin is not null && index.Thing(pin.Thing) is { Kind: ThingKind.Mate } mate)
            {
                var half = index.Connector(mate.ConnectorPart)?.Cavities.FirstOrDefault(c => c.Name == cavity)?.Half ?? row.Circuit.Half;
                return FirstLetter(mate.Halves.FirstOrDefault(h => h.Letter == half || h.Name == half)?.Name ?? half);
            }
        }

        var entered = row.Circuit.EntersBy is { } by ? index.Thing(by) : null;
        return entered is null || row.Circuit.Half is not { } name ? null : FirstLetter(entered.Halves.FirstOrDefault(h => h.Letter == name || h.Name == name)?.Name ?? name);
    }

    private Dictionary<string, string> HalvesOfThings(ImmutableArray<WireRow> rows)
    {
        var halves = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            if (MateLetter(row) is { } letter)
            {
                foreach (var pin in PinsOf(row).FindAll(p => !index.IsMate(p)))
                {
                    halves.TryAdd(pin.Thing, letter);
                }
            }
        }

        for (var round = 0; round < 3; round++)
        {
            foreach (var row in rows.Where(r => !r.Circuit.IsReturn))
            {
                var pins = PinsOf(row).FindAll(p => !index.IsStud(p));
                if (pins.Find(p => halves.ContainsKey(p.Thing)) is { } known && halves[known.Thing] is var letter)
                {
                    foreach (var pin in pins)
                    {
                        halves.TryAdd(pin.Thing, letter);
                    }
                }
            }
        }

        return halves;
    }

    private static List<PinRef> PinsOf(WireRow row) => [.. row.Net.Ends, row.Net.Root];

    private bool IsSourceOrBar(PinRef pin) => index.Thing(pin.Thing) is { } thing
        && (thing.Kind is ThingKind.BusBar or ThingKind.Stud || thing.Elements.Any(e => e.Kind == ElementKind.Source && (e.PinA == pin.Pin || e.PinB == pin.Pin)));

    private static string? FirstLetter(string? name) => string.IsNullOrEmpty(name) ? null : char.ToUpperInvariant(name[0]) is >= 'A' and <= 'Z' and var letter ? letter.ToString() : "W";
}
