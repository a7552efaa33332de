using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.SetChecks;

/// <summary>What stands on a sheet, groups opened.</summary>
internal static class ShownItems
{
    public static List<Item> All(ImmutableArray<Item> items)
    {
        var all = new List<Item>(items.Length);
        Add(items, all);
        return all;
    }

    /// <summary>The groups that stand for a circuit.</summary>
    public static IEnumerable<GroupItem> Circuits(ImmutableArray<Item> items) =>
        items.OfType<GroupItem>().SelectMany(g => g.Tag?.Circuit is not null ? [g] : Circuits(g.Items));

    public static List<TextItem> Texts(ImmutableArray<Item> items)
    {
        var texts = new List<TextItem>();
        Add(items, texts);
        return texts;
    }

    public static List<TextItem> Texts(IEnumerable<Sheet> sheets)
    {
        var texts = new List<TextItem>();
        foreach (var sheet in sheets)
        {
            Add(sheet.Items, texts);
        }

        return texts;
    }

    // sheets have thousands of items: no query within a query for each group
    private static void Add<T>(ImmutableArray<Item> items, List<T> into)
        where T : Item
    {
        foreach (var item in items)
        {
            if (item is GroupItem group)
            {
                Add(group.Items, into);
            }
            else if (item is T wanted)
            {
                into.Add(wanted);
            }
        }
    }
}
