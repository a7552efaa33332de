using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>How a sheet is cut: rows and columns of equal windows that overlap.</summary>
internal sealed record TileGrid(Box Live, Box Window, Paper Sheet, int Rows, int Columns)
{
    public const double LeftBandMm = 10.5;
    public const double FootBandMm = 27;
    private const double EdgeMm = 4;

    public int Count => Rows * Columns;

    private double StepX => Window.Width - Tiler.OverlapMm;

    private double StepY => Window.Height - Tiler.OverlapMm;

    public static TileGrid Of(Paper sheet, Box live)
    {
        var window = Box.FromEdges(live.X + LeftBandMm, live.Y + EdgeMm, live.Right - EdgeMm, live.Bottom - FootBandMm);
        static int Parts(double length, double window) => Math.Max(1, (int)Math.Ceiling((length - Tiler.OverlapMm) / (window - Tiler.OverlapMm) - 1e-9));
        return new(live, window, sheet, Parts(sheet.HeightMm, window.Height), Parts(sheet.WidthMm, window.Width));
    }

    /// <summary>The piece of the sheet that a page shows.</summary>
    public Box Cut(int row, int column) => new(column * StepX, row * StepY, Window.Width, Window.Height);

    public string Code(int row, int column) => GridBorder.Letter(row) + GridBorder.Number(column);
}
