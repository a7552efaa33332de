using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>A thing to be placed in a free corner: its size, and where on the sheet it would rather stand (shares of width and height).</summary>
public sealed record Panel(double WidthMm, double HeightMm, double WantX, double WantY);

/// <summary>Finds room for panels beside what is already there, on a grid with sums so that a try costs four look-ups.</summary>
public sealed class PanelPacking
{
    private const double CellMm = 5;
    private readonly Box area;
    private readonly int columns;
    private readonly int rows;
    private readonly bool[] taken;
    private readonly int[] sums;

    public PanelPacking(Box area)
    {
        this.area = area;
        columns = Math.Max(1, (int)(area.Width / CellMm));
        rows = Math.Max(1, (int)(area.Height / CellMm));
        taken = new bool[columns * rows];
        sums = new int[(columns + 1) * (rows + 1)];
    }

    /// <summary>Marks a box as occupied; parts outside the area are ignored.</summary>
    public void Take(Box box)
    {
        var c0 = Math.Max(0, (int)Math.Floor((box.X - area.X) / CellMm));
        var c1 = Math.Min(columns - 1, (int)Math.Floor((box.Right - area.X) / CellMm));
        var r0 = Math.Max(0, (int)Math.Floor((box.Y - area.Y) / CellMm));
        var r1 = Math.Min(rows - 1, (int)Math.Floor((box.Bottom - area.Y) / CellMm));
        for (var r = r0; r <= r1; r++)
        {
            for (var c = c0; c <= c1; c++)
            {
                taken[(r * columns) + c] = true;
            }
        }
    }

    /// <summary>Places for all panels in their order, or null when one does not fit.</summary>
    public Box[]? Place(IReadOnlyList<Panel> panels)
    {
        ArgumentNullException.ThrowIfNull(panels);
        var boxes = new Box[panels.Count];
        for (var i = 0; i < panels.Count; i++)
        {
            Sum();
            if (Find(panels[i]) is not { } box)
            {
                return null;
            }

            boxes[i] = box;
            Take(box.Grow(2));
        }

        return boxes;
    }

    private void Sum()
    {
        for (var r = 0; r < rows; r++)
        {
            var line = 0;
            for (var c = 0; c < columns; c++)
            {
                line += taken[(r * columns) + c] ? 1 : 0;
                sums[((r + 1) * (columns + 1)) + c + 1] = sums[(r * (columns + 1)) + c + 1] + line;
            }
        }
    }

    private Box? Find(Panel panel)
    {
        var w = (int)Math.Ceiling(panel.WidthMm / CellMm);
        var h = (int)Math.Ceiling(panel.HeightMm / CellMm);
        var best = double.MaxValue;
        Box? found = null;
        for (var r = 0; r + h <= rows; r++)
        {
            for (var c = 0; c + w <= columns; c++)
            {
                var top = r * (columns + 1);
                var bottom = (r + h) * (columns + 1);
                if (sums[bottom + c + w] - sums[bottom + c] - sums[top + c + w] + sums[top + c] != 0)
                {
                    continue;
                }

                var wantC = panel.WantX * (columns - w);
                var wantR = panel.WantY * (rows - h);
                var off = Math.Abs(c - wantC) + Math.Abs(r - wantR);
                if (off < best)
                {
                    best = off;
                    found = new Box(area.X + (c * CellMm), area.Y + (r * CellMm), panel.WidthMm, panel.HeightMm);
                }
            }
        }

        return found;
    }
}
