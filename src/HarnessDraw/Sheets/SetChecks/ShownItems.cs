using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.SetChecks;

/// <summary>What stands on a sheet, groups opened.</summary>
internal static class ShownItems
{
    public static IEnumerable<Item> All(ImmutableArray<Item> items) => items.SelectMany(i => i is GroupItem group ? All(group.Items) : [i]);

    public static IEnumerable<TextItem> Texts(ImmutableArray<Item> items) => All(items).OfType<TextItem>();
}
