using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading.Edits;

/// <summary>
/// A change to a description that is tried and not kept: 'circuit.dipped beam.size=1 mm2'. The text is edited in memory; what the value means and whether the
/// key exists is for the reader to say, as it would of the file.
/// </summary>
public static class DescriptionEdit
{
    private static readonly (string Word, string Key)[] Sections =
        [("circuit", "circuits"), ("thing", "things"), ("load", "things"), ("fuse", "protection"), ("state", "states"), ("option", "options")];

    /// <summary>The edited text, or what is wrong with the assignment, with the nearest name.</summary>
    public static (string? Text, string? Problem) Set(string text, string assignment)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(assignment);
        var equals = assignment.IndexOf('=', StringComparison.Ordinal);
        if (equals < 1 || equals == assignment.Length - 1)
        {
            return (null, $"'{assignment}' is no change; expected KEY=VALUE, as in 'circuit.dipped beam.size=1 mm2'");
        }

        var (path, value) = (assignment[..equals].Trim(), assignment[(equals + 1)..].Trim());
        if (YamlPlace.Of(text) is not { IsMap: true } root)
        {
            return (null, "the description cannot be read");
        }

        foreach (var (word, key) in Sections)
        {
            path = path.StartsWith(word + ".", StringComparison.Ordinal) ? key + path[word.Length..] : path;
        }

        return Set(text, root, path, value, "the description");
    }

    /// <summary>Sets the length of a path of a layout: 'path.bus bar to starter.measured=900 mm'.</summary>
    public static (string? Text, string? Problem) SetPath(string layout, string assignment)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(assignment);
        var equals = assignment.IndexOf('=', StringComparison.Ordinal);
        var dot = equals < 0 ? -1 : assignment.LastIndexOf('.', equals);
        if (!IsPath(assignment) || dot <= PathWord.Length || equals == assignment.Length - 1)
        {
            return (null, $"'{assignment}' is no change; expected 'path.A to B.measured=900 mm'");
        }

        var name = assignment[PathWord.Length..dot];
        var key = assignment[(dot + 1)..equals].Trim();
        var paths = YamlPlace.Of(layout)?.Find("paths")?.Items ?? [];
        string Text(YamlPlace? place) => place is null ? "" : layout[place.Start..place.End].Trim('\'', '"');
        var named = paths.Select(p => (Place: p, There: $"{Text(p.Find("from"))} to {Text(p.Find("to"))}", Back: $"{Text(p.Find("to"))} to {Text(p.Find("from"))}")).ToList();
        var found = named.Where(n => n.There == name || n.Back == name).Select(n => n.Place).FirstOrDefault();
        return found is null
            ? (null, $"the layout has no path '{name}'{Hint(name, named.SelectMany(n => (string[])[n.There, n.Back]))}")
            : Set(layout, found, key, assignment[(equals + 1)..].Trim(), $"path '{name}'");
    }

    /// <summary>True for a change to the vehicle layout.</summary>
    public static bool IsPath(string assignment)
    {
        ArgumentNullException.ThrowIfNull(assignment);
        return assignment.StartsWith(PathWord, StringComparison.Ordinal);
    }

    /// <summary>Adds an entry, written as one line of YAML, at the end of a section that the description has: what is there keeps its order.</summary>
    public static string? Add(string text, string section, string key, string value)
    {
        ArgumentNullException.ThrowIfNull(text);
        return YamlPlace.Of(text)?.Find(section) is { IsMap: true } place ? Append(text, place, key, value) : null;
    }

    private static string Append(string text, YamlPlace map, string key, string value)
    {
        if (map.IsFlow || map.Entries.Count == 0)
        {
            return Insert(text, map, key, value);
        }

        var first = map.Entries[0].KeyStart;
        var indent = first - text.LastIndexOf('\n', first) - 1;
        var end = text.IndexOf('\n', map.End);
        return end < 0 ? $"{text}\n{new string(' ', indent)}{key}: {value}\n" : text.Insert(end + 1, $"{new string(' ', indent)}{key}: {value}\n");
    }

    private const string PathWord = "path.";

    private static (string? Text, string? Problem) Set(string text, YamlPlace map, string path, string value, string where)
    {
        var place = map;
        while (true)
        {
            // names may hold dots: the longest key that the rest begins with
            var entry = place.Entries.Where(e => path == e.Key || path.StartsWith(e.Key + ".", StringComparison.Ordinal)).OrderByDescending(e => e.Key.Length).FirstOrDefault();
            if (entry.Key is null)
            {
                return path.Contains('.', StringComparison.Ordinal) || (place == map && where == "the description")
                    ? (null, $"{where} has no '{First(path)}'{Hint(First(path), place.Entries.Select(e => e.Key))}")
                    : place.IsMap ? (Insert(text, place, path, Quoted(value)), null) : (null, $"{where} has no '{path}'");
            }

            if (path == entry.Key)
            {
                return entry.Value is { IsFlow: false }
                    ? (null, $"'{entry.Key}' holds more than one value; name the key inside it")
                    : (string.Concat(text.AsSpan(0, entry.Value.Start), Quoted(value), text.AsSpan(entry.Value.End)), null);
            }

            path = path[(entry.Key.Length + 1)..];
            where = $"'{entry.Key}'";
            place = entry.Value;

            // wires given by hand are a list: each is named by its id
            foreach (var item in place.Items.Where(i => i.Find("wire") is { IsLeaf: true }))
            {
                var id = text[item.Find("wire")!.Start..item.Find("wire")!.End].Trim('\'', '"');
                if (path.StartsWith(id + ".", StringComparison.Ordinal))
                {
                    (path, place) = (path[(id.Length + 1)..], item);
                    break;
                }
            }
        }
    }

    private static string Insert(string text, YamlPlace map, string key, string value)
    {
        if (map.IsFlow)
        {
            return text.Insert(map.Start + 1, map.Entries.Count == 0 ? $" {key}: {value}" : $" {key}: {value},");
        }

        var at = map.Entries[0].KeyStart;
        var line = text.LastIndexOf('\n', Math.Max(0, at - 1)) + 1;
        return text.Insert(at, $"{key}: {value}\n{new string(' ', at - line)}");
    }

    private static string First(string path) => path.Contains('.', StringComparison.Ordinal) ? path[..path.IndexOf('.', StringComparison.Ordinal)] : path;

    private static string Hint(string typed, IEnumerable<string> names) => NearestName.Hint(typed, names) is { } hint ? $"; {hint}" : "";

    private static string Quoted(string value) => value[0] is '[' or '{' ? value : $"'{value.Replace("'", "''", StringComparison.Ordinal)}'";
}
