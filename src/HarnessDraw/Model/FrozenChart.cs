using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>To which side of its bundle something leaves, as one looks away from the root of the chart.</summary>
public enum ChartTurn
{
    Left,
    Straight,
    Right,
}

/// <summary>How a load's table stands on the chart: beside its bundle, stacked at the bundle's end, or at the end of a path of its own.</summary>
public enum CardStand
{
    Beside,
    End,
    Lead,
}

/// <summary>How the wall chart of a built state was laid out, so that a chart drawn after a small change keeps its places.</summary>
public sealed record FrozenChart(string Paper, ImmutableArray<FrozenChartSheet> Sheets);

/// <summary>One sheet of it. Lengths are mm on paper; branches and tables in the order in which they follow each other where they leave.</summary>
public sealed record FrozenChartSheet
{
    /// <summary>What is drawn on it.</summary>
    public required ImmutableArray<string> Circuits { get; init; }

    /// <summary>Cap height of names, and how tables are put in columns.</summary>
    public required double NameMm { get; init; }
    public required double ColumnMm { get; init; }
    public required double OneSideMm { get; init; }
    public required bool StacksAtEnds { get; init; }

    /// <summary>Share of the pin table above the trunk, the room free below it, and mm on paper a mm of vehicle along and across.</summary>
    public required double TableShare { get; init; }
    public required double CornerWidthMm { get; init; }
    public required double CornerHeightMm { get; init; }
    public required double StretchX { get; init; }
    public required double StretchY { get; init; }

    /// <summary>Where on the paper the chart's root lies, and whether all panels are shown or some left to other sheets.</summary>
    public required double X { get; init; }
    public required double Y { get; init; }
    public required bool ShowsAll { get; init; }
    public required ImmutableArray<FrozenBranch> Branches { get; init; }
    public required ImmutableArray<FrozenCard> Cards { get; init; }
    public required ImmutableArray<FrozenPanel> Panels { get; init; }
}

/// <summary>The bundle that comes to a place: from where, how it leaves there, and by how much its stem and the stretch before the place are lengthened.</summary>
public sealed record FrozenBranch(string Place, string From, ChartTurn Turn, double StemMm, double HoldMm);

/// <summary>A load's table, and where its wires end.</summary>
public sealed record FrozenCard(string Card, CardStand Stand, ChartTurn Side, double X, double Y)
{
    /// <summary>The place whose bundle it stands on, when that leaves where the load is.</summary>
    public string? On { get; init; }

    /// <summary>The bundle of tables alone that it stands on, counted from 0 at its place, and how that leaves; null: none.</summary>
    public int? Rib { get; init; }
    public ChartTurn RibTurn { get; init; }
    public double StemMm { get; init; }
}

/// <summary>A block beside the chart: its upper left corner and which of its shapes it has.</summary>
public sealed record FrozenPanel(string Panel, int Shape, double X, double Y)
{
    /// <summary>How far it was then brought into line with others.</summary>
    public double InLineX { get; init; }
    public double InLineY { get; init; }
}
