using System.Collections.Immutable;
using System.Reflection;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Reads parts catalogues: the built-in one that travels in the program (shared/*.yaml of the repository) and the user's own
/// files, whose rows add to it and replace rows of the same id.
/// </summary>
public static class CatalogueReader
{
    private static readonly Lazy<Catalogue> BuiltIn = new(ReadEmbedded);

    /// <summary>The catalogue that travels in the program; read once.</summary>
    public static Catalogue ReadBuiltIn() => BuiltIn.Value;

    /// <summary>Starts reading the built-in catalogue beside what the caller does next (about 4 ms of work); the result is taken by <see cref="ReadBuiltIn"/>.</summary>
    public static void BeginReading() => ThreadPool.UnsafeQueueUserWorkItem(static _ => ReadBuiltInQuietly(), null);

    /// <summary>The built-in catalogue with the given files (name and text) merged over it, in order.</summary>
    public static Outcome<Catalogue> Read(IEnumerable<(string File, string Text)> userFiles)
    {
        ArgumentNullException.ThrowIfNull(userFiles);
        var bag = new DiagnosticBag();
        var catalogue = userFiles.Aggregate(ReadBuiltIn(), (under, file) => Merge(under, file.File, file.Text, bag));
        return new(catalogue, bag.ToSorted());
    }

    /// <summary>Merges one file over a catalogue. Rows with mistakes are reported and left out.</summary>
    public static Catalogue Merge(Catalogue under, string file, string text, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(under);
        ArgumentNullException.ThrowIfNull(bag);
        return Checked(file, text, bag) is { } map ? Merge(under, map, bag) : under;
    }

    private static InputMap? Checked(string file, string text, DiagnosticBag bag)
    {
        if (YamlNodeReader.Read(file, text, bag) is not { } root)
        {
            return null;
        }

        new ShapeChecker(bag).Check(root, CatalogueShapes.File, "the catalogue");
        return root as InputMap;
    }

    private static Catalogue Merge(Catalogue under, InputMap map, DiagnosticBag bag)
    {
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

    // a fault of the catalogue is told to the one who takes it, not to a thread of the pool
    private static void ReadBuiltInQuietly()
    {
        try
        {
            _ = BuiltIn.Value;
        }
        catch (InvalidOperationException)
        {
            // Lazy keeps it and throws it again
        }
    }

    private static Catalogue ReadEmbedded()
    {
        var assembly = typeof(CatalogueReader).Assembly;
        // terminals first, so that the families of the bodies are known
        string[] names = [.. assembly.GetManifestResourceNames().Where(n => n.StartsWith("shared/", StringComparison.Ordinal))
            .OrderByDescending(n => n == "shared/terminals.yaml").ThenBy(n => n, StringComparer.Ordinal)];
        var bags = Array.ConvertAll(names, _ => new DiagnosticBag());
        var maps = new InputMap?[names.Length];
        // parsing takes longest: files are parsed side by side
        Parallel.For(0, names.Length, f => maps[f] = Checked(names[f], TextOf(assembly, names[f]), bags[f]));
        var catalogue = new Catalogue();
        for (var f = 0; f < names.Length; f++)
        {
            catalogue = maps[f] is { } map ? Merge(catalogue, map, bags[f]) : catalogue;
        }

        return Array.Exists(bags, b => b.HasErrors)
            ? throw new InvalidOperationException("the built-in catalogue is broken: " + string.Join("; ", bags.SelectMany(b => b.ToSorted()).Select(d => $"{d.At?.File}:{d.At?.Line}: {d.Message}")))
            : catalogue;
    }

    private static string TextOf(Assembly assembly, string name)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        return reader.ReadToEnd();
    }
}
