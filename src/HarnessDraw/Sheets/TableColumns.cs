using System.Collections.Immutable;

namespace HarnessDraw.Sheets;

/// <summary>Shares a table's width among its columns.</summary>
internal static class TableColumns
{
    /// <summary>
    /// Left edges of columns that need <paramref name="needsMm"/>. What is over goes between them; what is missing is taken from the widest that may give
    /// (down to <paramref name="leastMm"/>), so that one endless name does not starve the others.
    /// </summary>
    public static ImmutableArray<TableColumn> Place(double left, double widthMm, ImmutableArray<double> needsMm, ImmutableArray<double> leastMm, double gapMm)
    {
        var room = widthMm - (gapMm * (needsMm.Length - 1));
        var widths = needsMm.Sum() <= room ? needsMm : Shortened(needsMm, leastMm, room);
        var over = Math.Max(0, room - widths.Sum());
        var extra = needsMm.Length > 1 ? Math.Min(over / (needsMm.Length - 1), MostExtraMm) : 0;
        var columns = ImmutableArray.CreateBuilder<TableColumn>(needsMm.Length);
        foreach (var width in widths)
        {
            columns.Add(new(left, width));
            left += width + gapMm + extra;
        }

        return columns.ToImmutable();
    }

    /// <summary>Widths between two that add up to <paramref name="roomMm"/>: each goes the same part of its way.</summary>
    public static ImmutableArray<double> Between(ImmutableArray<double> leastMm, ImmutableArray<double> mostMm, double roomMm)
    {
        var way = mostMm.Sum() - leastMm.Sum();
        var part = way > 0 ? Math.Clamp((roomMm - leastMm.Sum()) / way, 0, 1) : 0;
        return [.. leastMm.Zip(mostMm, (least, most) => least + (part * (most - least)))];
    }

    // the one length that no giving column exceeds, found by halving: 40 steps are far below a hundredth of a millimetre
    private static ImmutableArray<double> Shortened(ImmutableArray<double> needsMm, ImmutableArray<double> leastMm, double roomMm)
    {
        var (low, high) = (0.0, needsMm.Max());
        for (var step = 0; step < 40; step++)
        {
            var middle = (low + high) / 2;
            (low, high) = Capped(needsMm, leastMm, middle).Sum() <= roomMm ? (middle, high) : (low, middle);
        }

        return Capped(needsMm, leastMm, low);
    }

    private static ImmutableArray<double> Capped(ImmutableArray<double> needsMm, ImmutableArray<double> leastMm, double capMm) =>
        [.. needsMm.Zip(leastMm, (need, least) => Math.Min(need, Math.Max(least, capMm)))];

    private const double MostExtraMm = 12;
}

/// <summary>Where a column stands on paper, mm.</summary>
internal readonly record struct TableColumn(double Left, double Width)
{
    public double Right => Left + Width;
    public double Middle => Left + (Width / 2);
}
