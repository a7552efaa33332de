using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// Cuts a sheet into pages for an office printer. The live area of 190 x 259 mm fits A4 and Letter alike, that of 259 x 400 mm A3 and Tabloid; neighbours share 12 mm,
/// so that they can be glued. Every page says which it is, what lies beside it, and carries bars to measure.
/// </summary>
public static class Tiler
{
    public const double OverlapMm = 12;

    /// <summary>The papers a sheet can be cut onto.</summary>
    public static ImmutableArray<Paper> Pages { get; } = [PaperSizes.A4, PaperSizes.A3, PaperSizes.Letter, PaperSizes.Tabloid];

    /// <summary>The pages row by row. The page lies the way that needs fewer of them.</summary>
    public static ImmutableArray<Sheet> Tile(Sheet sheet, Paper page)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(page);
        var (shortSide, longSide) = (Math.Min(page.WidthMm, page.HeightMm), Math.Max(page.WidthMm, page.HeightMm));
        var (liveShort, liveLong) = shortSide >= 259 && longSide >= 400 ? (259.0, 400.0) : (190.0, 259.0);
        ArgumentOutOfRangeException.ThrowIfLessThan(shortSide, liveShort);
        ArgumentOutOfRangeException.ThrowIfLessThan(longSide, liveLong);
        var upright = TileGrid.Of(sheet.Paper, new Box((shortSide - liveShort) / 2, (longSide - liveLong) / 2, liveShort, liveLong));
        var lying = TileGrid.Of(sheet.Paper, new Box((longSide - liveLong) / 2, (shortSide - liveShort) / 2, liveLong, liveShort));
        var name = page.Name.Split(' ')[0];
        return lying.Count < upright.Count
            ? Tiles(sheet, lying, new Paper(name + " landscape", longSide, shortSide))
            : Tiles(sheet, upright, new Paper(name, shortSide, longSide));
    }

    private static ImmutableArray<Sheet> Tiles(Sheet sheet, TileGrid grid, Paper page)
    {
        var bounds = sheet.Items.SelectMany(Loose).Select(i => (Item: i, Box: ItemBounds.Of(i))).Where(i => i.Box is not null).Select(i => (i.Item, Box: i.Box!.Value)).ToImmutableArray();
        var tiles = ImmutableArray.CreateBuilder<Sheet>();
        for (var row = 0; row < grid.Rows; row++)
        {
            for (var column = 0; column < grid.Columns; column++)
            {
                var cut = grid.Cut(row, column);
                var items = bounds.Where(b => b.Box.Overlaps(cut)).Select(b => b.Item).ToImmutableArray();
                var picture = new GroupItem(items) { Name = "tile", Clip = cut, MoveXMm = grid.Window.X - cut.X, MoveYMm = grid.Window.Y - cut.Y };
                tiles.Add(sheet with
                {
                    Name = sheet.Name + "-tiles",
                    Title = $"{sheet.Title}, tile {grid.Code(row, column)}",
                    Paper = page,
                    Number = tiles.Count + 1,
                    Items = [picture, .. TileMarks.Paint(sheet, grid, row, column)],
                });
            }
        }

        return tiles.ToImmutable();
    }

    // a plain group (no turn, clip, move) is opened, so that a tile carries only the items it shows
    private static IEnumerable<Item> Loose(Item item) =>
        item is GroupItem { Clip: null, TurnDegrees: 0, Scale: 1, MoveXMm: 0, MoveYMm: 0, Tag: null } group ? group.Items.SelectMany(Loose) : [item];
}
