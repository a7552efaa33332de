using System.Collections.Immutable;

namespace HarnessDraw.Sheets;

/// <summary>Shares a table's width among its columns.</summary>
internal static class TableColumns
{
    /// <summary>
    /// Left edges of columns that need <paramref name="needsMm"/>; what is over goes between them, what is missing is taken from the columns that
    /// bear it (<paramref name="leastMm"/> below the need), from each by the same part of what it can give. The last edge is the table's end.
    /// </summary>
    public static ImmutableArray<TableColumn> Place(double left, double widthMm, ImmutableArray<double> needsMm, ImmutableArray<double> leastMm, double gapMm)
    {
        var gaps = gapMm * (needsMm.Length - 1);
        var over = widthMm - gaps - needsMm.Sum();
        var give = needsMm.Zip(leastMm, (need, least) => Math.Max(0, need - least)).ToImmutableArray();
        var part = over < 0 && give.Sum() > 0 ? Math.Min(1, -over / give.Sum()) : 0;
        var extra = over > 0 && needsMm.Length > 1 ? Math.Min(over / (needsMm.Length - 1), MostExtraMm) : 0;
        var columns = ImmutableArray.CreateBuilder<TableColumn>(needsMm.Length);
        foreach (var (need, mayGive) in needsMm.Zip(give))
        {
            var width = need - (mayGive * part);
            columns.Add(new(left, width));
            left += width + gapMm + extra;
        }

        return columns.ToImmutable();
    }

    private const double MostExtraMm = 12;
}

/// <summary>Where a column stands on paper, mm.</summary>
internal readonly record struct TableColumn(double Left, double Width)
{
    public double Right => Left + Width;
    public double Middle => Left + (Width / 2);
}
