using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.SetChecks;

/// <summary>
/// A sheet whose set is all wires must name every wire of the plan, each as often as it should, and none that is not in it.
/// </summary>
internal static class WireCoverage
{
    /// <summary>How often a sheet names each wire in bold; kinds that show a part of the wires are not here.</summary>
    private static readonly ImmutableSortedDictionary<string, int> Times = ImmutableSortedDictionary<string, int>.Empty
        .Add(SheetKinds.CutList, 1).Add(SheetKinds.Labels, 2).Add(SheetKinds.LayOrder, 1).Add(SheetKinds.BenchTest, 1).Add(SheetKinds.FoundWires, 1);

    /// <summary>The kinds among the sheets of one ink that fail, with the reason; empty when all hold.</summary>
    /// <param name="plan">The plan as it is shown, filtered to its build.</param>
    /// <param name="sheets">Sheets of one ink.</param>
    public static ImmutableArray<(string Kind, string Because)> Check(Plan plan, IEnumerable<Sheet> sheets)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var wires = plan.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        return [.. sheets.GroupBy(s => s.Name).Where(g => Times.ContainsKey(g.Key)).SelectMany(g => Of(g.Key, wires, ShownItems.Texts(g)))];
    }

    // an id too long for its column is broken into lines: then its lines carry the wire's tag without being the id
    private static IEnumerable<(string Kind, string Because)> Of(string kind, HashSet<string> wires, List<TextItem> texts)
    {
        var named = texts.FindAll(t => t.Tag?.For is not null).ToLookup(t => t.Tag!.For!, StringComparer.Ordinal);
        var missing = wires.Where(w => !named.Contains(w)).Order(StringComparer.Ordinal).ToList();
        var foreign = named.Select(g => g.Key).Where(w => !wires.Contains(w)).Order(StringComparer.Ordinal).ToList();
        var often = named.Where(g => g.Count(t => t.Weight == FaceWeight.Bold && t.Text == g.Key) > Times[kind]).Select(g => g.Key).Order(StringComparer.Ordinal).ToList();
        foreach (var (words, list) in new[] { ("does not show", missing), ("shows what is not in the plan,", foreign), ("shows too often", often) })
        {
            if (list.Count > 0)
            {
                yield return (kind, $"it {words} {string.Join(", ", list.Take(5))}{(list.Count > 5 ? $" and {list.Count - 5} more" : "")}");
            }
        }
    }
}
