using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Widths of the columns of one load card, and of the card, mm: pin, wire, swatch, colour, size, cut length, option.</summary>
internal sealed record CardColumns
{
    private const double WidestPinMm = 48;
    private const double SwatchMm = 5.6;

    public double PinMm { get; private init; } = 6.6;
    public double IdMm { get; private init; } = 7;
    public double CodeMm { get; private init; } = 5;
    public double SizeMm { get; private init; } = 5;
    public double CutMm { get; private init; } = 7;

    /// <summary>0 when no wire of the card belongs to an option.</summary>
    public double OptionMm { get; private init; }
    public double CardMm { get; private init; }

    /// <summary>The columns that hold all rows, in a card that is at least as wide as asked; behind an id may stand a mark.</summary>
    public static CardColumns Of(IEnumerable<ChartRow> rows, double leastCardMm, Func<Wire, double>? markMm = null)
    {
        var columns = new CardColumns();
        foreach (var row in rows)
        {
            columns = new()
            {
                PinMm = Math.Max(columns.PinMm, Math.Min(WidestPinMm, WallChartStyle.Width(row.Pin, WallChartStyle.TextMm, FaceWeight.Bold) + 2.4)),
                IdMm = Math.Max(columns.IdMm, WallChartStyle.Width(row.Wire.Id, WallChartStyle.TextMm, FaceWeight.Bold) + (markMm?.Invoke(row.Wire) ?? 0)),
                CodeMm = Math.Max(columns.CodeMm, WallChartStyle.Width(row.Wire.Colour)),
                SizeMm = Math.Max(columns.SizeMm, WallChartStyle.Width(row.Wire.SizeLabel)),
                CutMm = Math.Max(columns.CutMm, WallChartStyle.Width(WallChartStyle.CutText(row.Wire))),
                OptionMm = row.Wire.Builds.IsAlways ? columns.OptionMm : 8,
            };
        }

        var needed = columns.PinMm + 1.4 + columns.IdMm + 1.6 + SwatchMm + 1.4 + columns.CodeMm + 2 + columns.SizeMm + 2 + columns.CutMm + 1.4 + columns.OptionMm;
        return columns with { CardMm = Math.Ceiling(Math.Max(needed, leastCardMm) * 2) / 2 };
    }
}
