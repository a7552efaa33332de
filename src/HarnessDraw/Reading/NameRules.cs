using HarnessDraw.Diagnostics;

namespace HarnessDraw.Reading;

/// <summary>References by name: known or reported with the nearest, and names that only capitals tell apart.</summary>
public static class NameRules
{
    /// <summary>True when the name is one of <paramref name="known"/>; else reports it with the nearest, or with what there is.</summary>
    public static bool Known(InputText name, IReadOnlyCollection<string> known, string kind, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (known.Contains(name.Value))
        {
            return true;
        }

        Report(name, known, kind, bag);
        return false;
    }

    /// <param name="name">The name as typed.</param>
    /// <param name="known">What there is.</param>
    /// <param name="kind">What it is, in words.</param>
    /// <param name="bag">Takes the message.</param>
    /// <param name="listed">True where all that is known is told even when one is near.</param>
    public static void Report(InputText name, IReadOnlyCollection<string> known, string kind, DiagnosticBag bag, bool listed = false)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(bag);
        bag.Error(DiagnosticCodes.UnknownName, $"there is no {kind} '{name.Value}'", name.At, NearestName.Hint(name.Value, known) is { } near ? listed ? $"{near} There are {string.Join(", ", known)}" : near : Listed(known, kind));
    }

    /// <summary>'there are: a, b, c', at most a dozen of them.</summary>
    public static string Listed(IReadOnlyCollection<string> known, string kind)
    {
        ArgumentNullException.ThrowIfNull(known);
        const int most = 12;
        return known.Count switch
        {
            0 => $"there is no {kind} at all",
            <= most => "there are: " + string.Join(", ", known),
            _ => $"there are: {string.Join(", ", known.Take(most))} and {known.Count - most} more",
        };
    }

    /// <summary>Warns of names in one block that differ by capitals only.</summary>
    public static void ReportCaseOnly(InputMap? block, string kind, DiagnosticBag bag) => ReportCaseOnly(block?.Entries.Select(e => e.Key) ?? [], kind, bag);

    public static void ReportCaseOnly(IEnumerable<InputText> names, string kind, DiagnosticBag bag)
    {
        ArgumentNullException.ThrowIfNull(names);
        ArgumentNullException.ThrowIfNull(bag);
        var seen = new Dictionary<string, InputText>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in names)
        {
            if (!seen.TryAdd(name.Value, name) && seen[name.Value].Value != name.Value)
            {
                bag.Warning(DiagnosticCodes.CaseOnly, $"the {kind} '{name.Value}' differs from '{seen[name.Value].Value}' by capitals only", name.At, "rename one of them", seen[name.Value].At);
            }
        }
    }
}
