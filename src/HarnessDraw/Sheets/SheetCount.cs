using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Counts the sheets of a set: 'sheet 3 of 12' in every title block, over all kinds, each ink for itself.</summary>
public static class SheetCount
{
    /// <summary>The same sheets in the same order with the field filled in.</summary>
    public static ImmutableArray<Sheet> Fill(ImmutableArray<Sheet> sheets)
    {
        var filled = sheets.ToBuilder();
        foreach (var black in new[] { false, true })
        {
            var places = Enumerable.Range(0, sheets.Length).Where(i => sheets[i].BlackInk == black).ToList();
            for (var i = 0; i < places.Count; i++)
            {
                var sheet = sheets[places[i]];
                filled[places[i]] = sheet with { Items = Filled(sheet.Items, Words(i + 1, places.Count)) };
            }
        }

        return filled.ToImmutable();
    }

    // the field holds '99 of 99'
    internal static string Words(int sheet, int sheets) =>
        $"{sheet.ToString(CultureInfo.InvariantCulture)}{(sheets > 99 ? "/" : " of ")}{sheets.ToString(CultureInfo.InvariantCulture)}";

    private static ImmutableArray<Item> Filled(ImmutableArray<Item> items, string words) => ImmutableArray.CreateRange(items, Filled, words);

    // the field stands in the frame's group; nothing else is copied
    private static Item Filled(Item item, string words) => item switch
    {
        GroupItem { Name: "frame" } frame => frame with { Items = Filled(frame.Items, words) },
        TextItem { IsSheetCount: true } text => text with { Text = words },
        _ => item,
    };
}
