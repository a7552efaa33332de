using HarnessDraw.Drawing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>The items of a sheet with groups opened; the sheets tested here neither turn nor move their groups.</summary>
internal static class ItemWalk
{
    public static IEnumerable<Item> All(Sheet sheet) => Open(sheet.Items);

    public static IEnumerable<TextItem> Texts(Sheet sheet) => All(sheet).OfType<TextItem>();

    /// <summary>The groups of a sheet and those in them.</summary>
    public static IEnumerable<GroupItem> Groups(Sheet sheet) => Groups(sheet.Items);

    private static IEnumerable<GroupItem> Groups(IEnumerable<Item> items) => items.OfType<GroupItem>().SelectMany(g => Groups(g.Items).Prepend(g));

    public static IEnumerable<Item> Open(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem group ? group.MoveXMm == 0 && group.MoveYMm == 0 && group.TurnDegrees == 0 ? Open(group.Items) : throw new InvalidDataException("a moved group") : [i]);
}
