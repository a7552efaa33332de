using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>What is printed round the picture of a tile: cut marks, code, neighbours, map, check bars, how to print.</summary>
internal static class TileMarks
{
    private const double InchBarMm = 4 * 25.4;

    // two lines on the narrowest page
    private const string HowToPrint = "Print at 100 % (actual size): if a bar does not measure true, do not use the print. Cut at the marks, neighbours overlap 12 mm.";

    public static ImmutableArray<Item> Paint(Sheet sheet, TileGrid grid, int row, int column)
    {
        var items = ImmutableArray.CreateBuilder<Item>();
        var window = grid.Window;
        AddCutMarks(items, window, column + 1 < grid.Columns, row + 1 < grid.Rows);
        AddBars(items, window);
        var x = window.X + InchBarMm + 20;
        Text(items, grid.Code(row, column), x, window.Bottom + 11.5, 7, FaceWeight.Bold);
        AddNeighbours(items, grid, row, column, x + 21, window.Bottom + 7.6);
        AddMap(items, grid, row, column, window.X, window.Bottom);
        var room = window.Width - 32;
        var y = window.Bottom + 18.2;
        foreach (var line in TextFit.Wrap(HowToPrint, room, 2.5).Prepend(TextFit.Ellipsis($"Tile {grid.Code(row, column)} of {grid.Code(grid.Rows - 1, grid.Columns - 1)}, {sheet.Title}", room, 2.5)))
        {
            Text(items, line, window.X + 32, y, 2.5, FaceWeight.Medium);
            y += 3.9;
        }

        return [new GroupItem(items.ToImmutable()) { Name = "tile-marks" }];
    }

    // corner marks outside the picture; a second pair 12 mm in, where the neighbour's edge will lie
    private static void AddCutMarks(ImmutableArray<Item>.Builder items, Box w, bool right, bool below)
    {
        const double Gap = 0.6;
        const double Long = 2.8;
        foreach (var x in right ? [w.X, w.Right, w.Right - Tiler.OverlapMm] : (double[])[w.X, w.Right])
        {
            Line(items, x, w.Y - Gap - Long, x, w.Y - Gap);
            Line(items, x, w.Bottom + Gap, x, w.Bottom + Gap + Long);
        }

        foreach (var y in below ? [w.Y, w.Bottom, w.Bottom - Tiler.OverlapMm] : (double[])[w.Y, w.Bottom])
        {
            Line(items, w.X - Gap - Long, y, w.X - Gap, y);
            Line(items, w.Right + Gap, y, w.Right + Gap + Long, y);
        }
    }

    private static void AddBars(ImmutableArray<Item>.Builder items, Box w)
    {
        var left = w.X + 1;
        AddBar(items, left, w.Bottom + 6, 100, "100 mm", false);
        AddBar(items, left, w.Bottom + 11, InchBarMm, "4 in", false);

        // upright ones: one above the other on a page that stands, beside each other on one that lies
        var stacked = w.Height > 100 + InchBarMm + 26;
        AddBar(items, stacked ? w.X - 5.5 : w.X - 8.6, w.Bottom - 1, 100, "100 mm", true);
        AddBar(items, stacked ? w.X - 5.5 : w.X - 5.2, stacked ? w.Bottom - 119 : w.Bottom - 1, InchBarMm, "4 in", true);
    }

    private static void AddBar(ImmutableArray<Item>.Builder items, double x, double y, double length, string name, bool upright)
    {
        var (dx, dy) = upright ? (0.0, -1.0) : (1.0, 0.0);
        items.Add(new PathItem(Outline.Line(x, y, x + (dx * length), y + (dy * length))) { Stroke = new(Ink.Black, 0.35), Tag = new() { Title = $"check bar {name}, {(upright ? "upright" : "level")}" } });
        foreach (var at in (ReadOnlySpan<double>)[0, length / 4, length / 2, length * 3 / 4, length])
        {
            var half = at == 0 || at == length ? 1.1 : 0.6;
            Line(items, x + (dx * at) - (dy * half), y + (dy * at) - (dx * half), x + (dx * at) + (dy * half), y + (dy * at) + (dx * half), 0.25);
        }

        items.Add(new TextItem(name, new(x + (dx * (length + 2)) + (upright ? 1.25 : 0), y + (dy * (length + 2)) + (upright ? 0 : 1.25)), 2.5)
        {
            Role = ItemRole.Lettering,
            TurnDegrees = upright ? -90 : 0,
        });
    }

    private static void AddNeighbours(ImmutableArray<Item>.Builder items, TileGrid grid, int row, int column, double x, double y)
    {
        ImmutableArray<(string Arrow, int Row, int Column)> beside = [("←", row, column - 1), ("→", row, column + 1), ("↑", row - 1, column), ("↓", row + 1, column)];
        var shown = beside.Where(b => b.Row >= 0 && b.Row < grid.Rows && b.Column >= 0 && b.Column < grid.Columns).Select(b => $"{b.Arrow} {grid.Code(b.Row, b.Column)}").ToImmutableArray();
        for (var i = 0; i < shown.Length; i++)
        {
            Text(items, shown[i], x + (15 * (i % 2)), y + (6 * (i / 2)), 3.5, FaceWeight.Medium);
        }
    }

    // the sheet as a grid with this tile filled; no taller than the sentence beside it
    private static void AddMap(ImmutableArray<Item>.Builder items, TileGrid grid, int row, int column, double left, double windowBottom)
    {
        var size = Math.Min(26.0 / grid.Columns, 9.5 / grid.Rows);
        var top = windowBottom + 15.8;
        for (var r = 0; r < grid.Rows; r++)
        {
            for (var c = 0; c < grid.Columns; c++)
            {
                var cell = new Box(left + 1 + (c * size), top + (r * size), size, size);
                items.Add(new PathItem(Outline.Rectangle(cell)) { Stroke = new(Ink.Black, 0.18), Fill = r == row && c == column ? Ink.Black : null });
            }
        }
    }

    private static void Line(ImmutableArray<Item>.Builder items, double x1, double y1, double x2, double y2, double width = 0.25) =>
        items.Add(new PathItem(Outline.Line(x1, y1, x2, y2)) { Stroke = new(Ink.Black, width) });

    private static void Text(ImmutableArray<Item>.Builder items, string text, double x, double y, double cap, FaceWeight weight) =>
        items.Add(new TextItem(text, new(x, y), cap) { Role = ItemRole.Lettering, Weight = weight });
}
