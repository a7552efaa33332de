using System.Collections.Immutable;
using System.Numerics;
using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>A thing to be placed in a free corner: its size, and where on the sheet it would rather stand (shares of width and height).</summary>
public sealed record Panel(double WidthMm, double HeightMm, double WantX, double WantY);

/// <summary>Where a panel stood on a chart before: its shape, its upper left corner when room was found, and how far it was then brought into line, mm.</summary>
public readonly record struct KeptPanel(int Shape, double X, double Y, double InLineX, double InLineY);

/// <summary>Finds room for panels beside what is already there, on a grid that knows how far each column is free downwards.</summary>
public sealed class PanelPacking
{
    private const double CellMm = 5;
    private const double LaterShapeCells = 60 / CellMm;
    private readonly Box area;
    private readonly int columns;
    private readonly int rows;
    // by cell: all bits where it is free, none where something stands
    private readonly short[] open;

    // free cells from a cell on down its column; those beside the changed columns and below the last changed row still hold
    private readonly short[] free;
    private (int First, int Last, int Row) changed;

    public PanelPacking(Box area)
    {
        this.area = area;
        columns = Math.Max(1, (int)(area.Width / CellMm));
        rows = Math.Clamp((int)(area.Height / CellMm), 1, short.MaxValue);
        open = new short[columns * rows];
        free = new short[columns * rows];
        Clear();
    }

    /// <summary>All room is free again.</summary>
    public void Clear()
    {
        Array.Fill(open, (short)~0);
        changed = (0, columns - 1, rows - 1);
    }

    /// <summary>Marks a box as occupied; parts outside the area are ignored.</summary>
    public void Take(Box box)
    {
        var c0 = Math.Max(0, (int)Math.Floor((box.X - area.X) / CellMm));
        var c1 = Math.Min(columns - 1, (int)Math.Floor((box.Right - area.X) / CellMm));
        var r0 = Math.Max(0, (int)Math.Floor((box.Y - area.Y) / CellMm));
        var r1 = Math.Min(rows - 1, (int)Math.Floor((box.Bottom - area.Y) / CellMm));
        for (var r = r0; r <= r1 && c0 <= c1; r++)
        {
            Array.Clear(open, (r * columns) + c0, c1 - c0 + 1);
        }

        changed = (Math.Min(changed.First, c0), Math.Max(changed.Last, c1), Math.Max(changed.Row, r1));
    }

    /// <summary>
    /// Places for all panels in their order, each in the shape that comes nearest to where it would stand (a later shape must gain something): the box and the
    /// number of the shape; null when one does not fit. Panels that have a kept place stand there first, as far as it is free.
    /// </summary>
    /// <param name="panels">By panel: its shapes.</param>
    /// <param name="kept">By panel: where it stood on a chart before.</param>
    /// <param name="last">Places that were found beside something like it: where one is still free nothing further away is looked at, which changes no place.</param>
    public (Box Box, int Shape)[]? Place(IReadOnlyList<IReadOnlyList<Panel>> panels, ImmutableArray<KeptPanel?> kept = default, IReadOnlyList<(Box Box, int Shape)>? last = null)
    {
        ArgumentNullException.ThrowIfNull(panels);
        var places = new (Box, int)[panels.Count];
        var isPlaced = new bool[panels.Count];
        var toBeInLine = new List<Box>();
        for (var i = 0; !kept.IsDefault && i < kept.Length; i++)
        {
            if (kept[i] is { } was && Kept(panels[i], new(was.X, was.Y), was.Shape) is { } place)
            {
                (places[i], isPlaced[i]) = (place, true);
                Take(place.Box.Grow(2));
                toBeInLine.Add(place.Box.Move(was.InLineX, was.InLineY));
            }
        }

        foreach (var box in toBeInLine)
        {
            Take(box.Grow(2));
        }

        for (var i = 0; i < panels.Count; i++)
        {
            if (isPlaced[i])
            {
                continue;
            }

            CountFree();
            (Box Box, int Shape, double Off)? best = null;
            var known = last is not null && i < last.Count && last[i].Shape < panels[i].Count ? OffAt(panels[i][last[i].Shape], last[i].Box) + (last[i].Shape * LaterShapeCells) + Hair : null;
            for (var shape = 0; shape < panels[i].Count; shape++)
            {
                // a later shape is sought only where it would win
                if (Find(panels[i][shape], (best?.Off ?? known ?? double.MaxValue) - (shape * LaterShapeCells)) is { } found)
                {
                    best = (found.Box, shape, found.Off + (shape * LaterShapeCells));
                }
            }

            if (best is not { } place)
            {
                return null;
            }

            places[i] = (place.Box, place.Shape);
            Take(place.Box.Grow(2));
        }

        return places;
    }

    // in its shape of before, else in another, with its upper left corner where that was
    private (Box Box, int Shape)? Kept(IReadOnlyList<Panel> shapes, Point at, int before)
    {
        for (var k = 0; k < shapes.Count; k++)
        {
            var shape = (Math.Min(before, shapes.Count - 1) + k) % shapes.Count;
            var (c0, r0) = ((int)Math.Round((at.X - area.X) / CellMm), (int)Math.Round((at.Y - area.Y) / CellMm));
            var (c1, r1) = (c0 + (int)Math.Ceiling(shapes[shape].WidthMm / CellMm), r0 + (int)Math.Ceiling(shapes[shape].HeightMm / CellMm));
            if (c0 >= 0 && r0 >= 0 && c1 <= columns && r1 <= rows && IsFree(c0, c1, r0, r1))
            {
                return (new(area.X + (c0 * CellMm), area.Y + (r0 * CellMm), shapes[shape].WidthMm, shapes[shape].HeightMm), shape);
            }
        }

        return null;
    }

    private bool IsFree(int c0, int c1, int r0, int r1)
    {
        for (var r = r0; r < r1; r++)
        {
            if (open.AsSpan((r * columns) + c0, c1 - c0).Contains((short)0))
            {
                return false;
            }
        }

        return true;
    }

    private void CountFree()
    {
        var (first, width) = (changed.First, changed.Last - changed.First + 1);
        for (var r = changed.Row; r >= 0 && width > 0; r--)
        {
            var here = free.AsSpan((r * columns) + first, width);
            var row = open.AsSpan((r * columns) + first, width);
            if (r + 1 == rows)
            {
                for (var k = 0; k < width; k++)
                {
                    here[k] = (short)(row[k] & 1);
                }

                continue;
            }

            var below = free.AsSpan(((r + 1) * columns) + first, width);
            var c = 0;
            for (; c <= width - Vector<short>.Count; c += Vector<short>.Count)
            {
                ((new Vector<short>(below[c..]) + Vector<short>.One) & new Vector<short>(row[c..])).CopyTo(here[c..]);
            }

            for (; c < width; c++)
            {
                here[c] = (short)((below[c] + 1) & row[c]);
            }
        }

        changed = (columns, -1, -1);
    }

    // a known place is found again, and every one that is as near
    private const double Hair = 1e-9;

    private (int W, int H, double WantC, double WantR) Sought(Panel panel)
    {
        var (w, h) = ((int)Math.Ceiling(panel.WidthMm / CellMm), (int)Math.Ceiling(panel.HeightMm / CellMm));
        return (w, h, panel.WantX * (columns - w), panel.WantY * (rows - h));
    }

    // how many cells a place is off, where the panel has room there
    private double? OffAt(Panel panel, Box at)
    {
        var (w, h, wantC, wantR) = Sought(panel);
        var (c, r) = ((int)Math.Round((at.X - area.X) / CellMm), (int)Math.Round((at.Y - area.Y) / CellMm));
        var hasRoom = c >= 0 && r >= 0 && c + w <= columns && r + h <= rows && free.AsSpan((r * columns) + c, w).IndexOfAnyExceptInRange((short)h, short.MaxValue) < 0;
        return hasRoom ? Math.Abs(c - wantC) + Math.Abs(r - wantR) : null;
    }

    // nearer than so many cells to where it would stand
    private (Box Box, double Off)? Find(Panel panel, double within)
    {
        var (w, h, wantC, wantR) = Sought(panel);
        var best = within;
        Box? found = null;
        // rows from the wanted one outwards: nothing further away than the best can win
        var (up, down) = ((int)Math.Floor(wantR), (int)Math.Floor(wantR) + 1);
        while (up >= 0 || down + h <= rows)
        {
            var r = up < 0 || (down + h <= rows && down - wantR < wantR - up) ? down++ : up--;
            var offRow = Math.Abs(r - wantR);
            if (offRow >= best)
            {
                break;
            }

            if (r + h <= rows)
            {
                FindInRow(r, offRow);
            }
        }

        return found is { } box ? (box, best) : null;

        // of each run of columns that are free far enough down, the place nearest to the wanted one
        void FindInRow(int r, double offRow)
        {
            var reach = Math.Min(best - offRow, columns);
            var first = Math.Max(0, (int)Math.Ceiling(wantC - reach));
            var end = Math.Min(columns, (int)Math.Floor(wantC + reach) + w);
            if (end - first < w)
            {
                return;
            }

            var left = free.AsSpan((r * columns) + first, end - first);
            while (left.IndexOfAnyInRange((short)h, short.MaxValue) is var open and >= 0 && left.Length - open >= w)
            {
                left = left[open..];
                var run = left.IndexOfAnyExceptInRange((short)h, short.MaxValue) is var taken and >= 0 ? taken : left.Length;
                if (run >= w)
                {
                    var (from, to) = (end - left.Length, end - left.Length + run - w);
                    var below = Math.Clamp((int)Math.Floor(wantC), from, to);
                    Offer(below, r, offRow);
                    Offer(Math.Min(below + 1, to), r, offRow);
                }

                left = left[run..];
            }
        }

        void Offer(int c, int r, double offRow)
        {
            var off = Math.Abs(c - wantC) + offRow;
            if (off < best)
            {
                best = off;
                found = new Box(area.X + (c * CellMm), area.Y + (r * CellMm), panel.WidthMm, panel.HeightMm);
            }
        }
    }
}
