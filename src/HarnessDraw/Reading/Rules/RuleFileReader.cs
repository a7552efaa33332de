using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Reads the shape of a rule file: 'rules: { fuse-load-high: { severity: error, limits: { share: 75 % } } }'. Which rules and limits there are is known
/// to the checks, which look the names up.
/// </summary>
public static class RuleFileReader
{
    public static Outcome<RuleFile> Read(string file, IFileSource files)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        var root = new InputFiles(files, bag).ReadYaml(file, new SourceSpan(file, 1, 1));
        if (root is not null and not InputMap)
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"a rule file is a block of keys, not {root.InWords}", root.At, "begin with 'rules:'");
        }

        var entries = root is InputMap map ? Entries(map, bag) : [];
        return new(bag.HasErrors ? null : new RuleFile(file, entries), bag.ToSorted());
    }

    private static ImmutableArray<RuleEntry> Entries(InputMap map, DiagnosticBag bag)
    {
        OnlyKeys(map, ["rules"], "a rule file", bag);
        return [.. Block(map.Find("rules"), "'rules'", "write rules in it, each with 'severity:' or 'limits:'", bag).Select(e => Entry(e, bag)).OfType<RuleEntry>()];
    }

    private static RuleEntry? Entry(InputEntry entry, DiagnosticBag bag)
    {
        if (entry.Value is not InputMap rule)
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"rule '{entry.Key.Value}' is a block of keys, not {entry.Value.InWords}", entry.Value.At, "write 'severity:' or 'limits:' in it");
            return null;
        }

        OnlyKeys(rule, ["severity", "limits"], $"rule '{entry.Key.Value}'", bag);
        var severity = rule.Find("severity") is { } node ? Text(node, "a severity", bag) : null;
        var limits = Block(rule.Find("limits"), "'limits'", "write limits with their values in it", bag)
            .Select(l => Text(l.Value, $"the limit '{l.Key.Value}'", bag) is { } value ? new RuleLimitEntry(new(l.Key.Value, l.Key.At), value) : null).OfType<RuleLimitEntry>();
        return new(new(entry.Key.Value, entry.Key.At), severity, [.. limits]);
    }

    private static PlacedText? Text(InputNode node, string what, DiagnosticBag bag)
    {
        if (node is InputText { IsEmpty: false } text)
        {
            return new(text.Value, text.At);
        }

        bag.Error(DiagnosticCodes.ShapeMismatch, $"{what} is one value, not {node.InWords}", node.At);
        return null;
    }

    private static ImmutableArray<InputEntry> Block(InputNode? node, string name, string hint, DiagnosticBag bag)
    {
        if (node is not (null or InputMap or InputText { IsEmpty: true }))
        {
            bag.Error(DiagnosticCodes.ShapeMismatch, $"{name} is a block of keys, not {node.InWords}", node.At, hint);
        }

        return node is InputMap map ? map.Entries : [];
    }

    private static void OnlyKeys(InputMap map, ImmutableArray<string> known, string what, DiagnosticBag bag)
    {
        foreach (var entry in map.Entries.Where(e => !known.Contains(e.Key.Value)))
        {
            bag.Error(DiagnosticCodes.UnknownKey, $"'{entry.Key.Value}' is not a key of {what}", entry.Key.At, NearestName.Hint(entry.Key.Value, known) ?? $"known: {string.Join(", ", known)}");
        }
    }
}
