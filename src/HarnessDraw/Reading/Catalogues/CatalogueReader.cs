using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Reads parts catalogues: the user's own files, whose rows add to those that the program carries (<see cref="ShippedParts"/>) and replace
/// rows of the same id.
/// </summary>
public static class CatalogueReader
{
    /// <summary>The catalogue that travels in the program.</summary>
    public static Catalogue BuiltIn { get; } = ShippedParts.Catalogue();

    /// <summary>The built-in catalogue with the given files (name and text) merged over it, in order.</summary>
    public static Outcome<Catalogue> Read(IEnumerable<(string File, string Text)> userFiles)
    {
        ArgumentNullException.ThrowIfNull(userFiles);
        var bag = new DiagnosticBag();
        var catalogue = userFiles.Aggregate(BuiltIn, (under, file) => Merge(under, file.File, file.Text, bag));
        return new(catalogue, bag.ToSorted());
    }

    /// <summary>Merges one file over a catalogue. Rows with mistakes are reported and left out.</summary>
    public static Catalogue Merge(Catalogue under, string file, string text, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(under);
        ArgumentNullException.ThrowIfNull(bag);
        if (YamlNodeReader.Read(file, text, bag) is not { } root)
        {
            return under;
        }

        new ShapeChecker(bag).Check(root, CatalogueShapes.File, "the catalogue");
        if (root is not InputMap map)
        {
            return under;
        }

        var rows = new CatalogueRows(bag);
        var merged = under with
        {
            WireTypes = new CatalogueWires(bag).Merge(under.WireTypes, map.Map("wire")),
            Connectors = Over(under.Connectors, Rows(map, "connectors", rows.Connector), c => c.Id),
            Terminals = Over(under.Terminals, Rows(map, "terminals", rows.Terminal), t => t.Id),
            Seals = Over(under.Seals, Rows(map, "seals", rows.Seal), s => s.Id),
            Plugs = Over(under.Plugs, Rows(map, "plugs", rows.Plug), p => p.Id),
            Splices = Over(under.Splices, Rows(map, "splices", rows.Splice), s => s.Id),
            Fuses = Over(under.Fuses, Rows(map, "fuses", rows.Fuse), f => f.Id),
            Coverings = Over(under.Coverings, Rows(map, "coverings", rows.Covering), c => c.Id),
            Grommets = Over(under.Grommets, Rows(map, "grommets", rows.Grommet), g => g.Id),
        };
        CheckFamilies(map, merged, bag);
        return merged;
    }

    private static IEnumerable<T> Rows<T>(InputMap file, string key, Func<string, InputMap, T?> row)
        where T : class
    {
        foreach (var entry in file.Map(key)?.Entries ?? [])
        {
            if (entry.Value is InputMap map && row(entry.Key.Value, map) is { } part)
            {
                yield return part;
            }
        }
    }

    /// <summary>A row of a known id takes the place of the old one; new ids follow in file order.</summary>
    internal static ImmutableArray<T> Over<T>(ImmutableArray<T> under, IEnumerable<T> rows, Func<T, string> id)
    {
        var merged = under.ToBuilder();
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < merged.Count; i++)
        {
            places[id(merged[i])] = i;
        }

        foreach (var row in rows)
        {
            if (places.TryGetValue(id(row), out var place))
            {
                merged[place] = row;
            }
            else
            {
                places[id(row)] = merged.Count;
                merged.Add(row);
            }
        }

        return merged.ToImmutable();
    }

    // terminals may stand in another file, so this looks at the whole and reports at the row of this file
    private static void CheckFamilies(InputMap file, Catalogue merged, DiagnosticBag bag)
    {
        if (file.Map("connectors") is not { } connectors || merged.Terminals.IsEmpty)
        {
            return;
        }

        var families = merged.Terminals.Select(t => t.Family).ToHashSet(StringComparer.Ordinal);
        foreach (var entry in connectors.Entries)
        {
            foreach (var family in (entry.Value as InputMap)?.TextNodes("terminals") ?? [])
            {
                if (!families.Contains(family.Value))
                {
                    bag.Error(DiagnosticCodes.UnknownName, $"connector {entry.Key.Value} takes terminals of the family '{family.Value}', but no terminal belongs to it", family.At, NearestName.Hint(family.Value, families));
                }
            }
        }
    }
}
