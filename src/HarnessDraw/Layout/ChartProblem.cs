using System.Collections.Immutable;

namespace HarnessDraw.Layout;

/// <summary>What a lane ends in.</summary>
public enum ChartEndKind
{
    /// <summary>A row of the pin table at the root.</summary>
    Pin,
    Card,
    Splice,
}

/// <summary>One end of a lane: a pin row, a card or a splice, by its index in the problem.</summary>
public readonly record struct ChartEnd(ChartEndKind Kind, int Index);

/// <summary>
/// A place of the tree. The first node is the root (parent -1); a parent comes before its children. True position in mm as the chart
/// lies: x to the right, y down.
/// </summary>
public sealed record ChartNode(int Parent, double X, double Y)
{
    /// <summary>Width of the lettering of the length of the edge above, mm on paper; 0: no length.</summary>
    public double CaptionMm { get; init; }

    /// <summary>Measured length of the edge above, mm of bundle; 0: unknown.</summary>
    public double LengthMm { get; init; }

    /// <summary>Size of the branch flag, mm; 0: none.</summary>
    public double FlagWidthMm { get; init; }
    public double FlagHeightMm { get; init; }

    /// <summary>True when a numbered disc stands where the branch leaves.</summary>
    public bool Disc { get; init; }

    /// <summary>How it left on a chart whose places are kept; null: as its true place asks.</summary>
    public KeptBranch? Kept { get; init; }
}

/// <summary>A load's table: its size is the head, one row a lane and a stub, and the foot.</summary>
public sealed record ChartCard(int Node, double WidthMm, double HeadMm, int Stubs)
{
    /// <summary>Room that the longest stub (ground sign and name) takes beside the card, mm.</summary>
    public double StubMm { get; init; }

    /// <summary>Where it stood on a chart whose places are kept; null: as its true place asks.</summary>
    public KeptCard? Kept { get; init; }
}

/// <summary>A splice on the edge above <paramref name="Node"/>, <paramref name="Along"/> of the way (0 at the parent, 1 at the node).</summary>
public sealed record ChartSplice(int Node, double Along, double LabelMm);

/// <summary>A wire. Lanes of one net need not be told apart: their meetings are no crossings.</summary>
public sealed record ChartLane(ChartEnd From, ChartEnd To, int Net)
{
    /// <summary>Number of its colour in <see cref="ChartProblem.Likeness"/>.</summary>
    public int Colour { get; init; }
}

/// <summary>The pin table at the root: where each pin's row lies below the table's top, and the size with labels, mm.</summary>
public sealed record ChartTable(ImmutableArray<double> RowsMm, double WidthMm, double HeightMm)
{
    /// <summary>Width of the labels over the lanes at the table's left; the lanes end where they end.</summary>
    public double LabelMm { get; init; }
}

/// <summary>All that the geometry needs to know of a harness.</summary>
public sealed record ChartProblem(
    ImmutableArray<ChartNode> Nodes,
    ImmutableArray<ChartCard> Cards,
    ImmutableArray<ChartSplice> Splices,
    ImmutableArray<ChartLane> Lanes,
    ChartTable? Table)
{
    /// <summary>By two colours: how much nearer they are to an eye than neighbours should be; 0: far enough. Empty: colours do not matter.</summary>
    public ImmutableArray<ImmutableArray<int>> Likeness { get; init; } = [];

    /// <summary>How much two lanes side by side look alike.</summary>
    public int Alike(int lane, int other) => Likeness.IsEmpty ? 0 : Likeness[Lanes[lane].Colour][Lanes[other].Colour];
}

/// <summary>The distances of the drawing, mm on paper. A row is three lane pitches (see <see cref="PinChannel"/>).</summary>
public sealed record ChartMetrics
{
    public double PitchMm { get; init; } = 1.6;
    public double RowMm => 3 * PitchMm;
    public double FootMm { get; init; } = 1.4;

    /// <summary>Height of a card with so many rows of lanes, mm.</summary>
    public double HeightMm(ChartCard card, int rows) => card.HeadMm + FootMm + (RowMm * (rows + card.Stubs));

    /// <summary>Radius of the innermost lane at a breakout.</summary>
    public double CornerMm { get; init; } = 3;

    /// <summary>Radius where a lane turns into a row or leaves a splice.</summary>
    public double TightCornerMm { get; init; } = 1.2;
    public double WidestCombMm { get; init; } = 12;

    /// <summary>Least distance between two printed things.</summary>
    public double GapMm { get; init; } = 2.6;

    /// <summary>Distance from the outermost lane to the cards beside it.</summary>
    public double CardGapMm { get; init; } = 6;
    public double SpliceStepMm { get; init; } = 12.5;
    public double DimensionMm { get; init; } = 6.2;
    public double DiscMm { get; init; } = 6.4;
    public double CutMm { get; init; } = 7;

    /// <summary>Highest column of cards on one side of a rib before a second rib is made.</summary>
    public double ColumnMm { get; init; } = 170;

    /// <summary>Cards of a place that together are no higher than this stand on one side of a rib; higher ones are shared between both.</summary>
    public double OneSideMm { get; init; } = 85;

    /// <summary>A bundle of more lanes than this is drawn as one band; 0: none is.</summary>
    public int BandOver { get; init; }

    /// <summary>Distance of neighbouring lanes on a spine with so many places for lanes: inside a band they lie as close as its width makes them.</summary>
    public double PitchOn(int slots) => IsBand(slots) ? BandMm(slots) / (slots - 1) : PitchMm;

    public bool IsBand(int slots) => BandOver > 0 && slots > BandOver;

    // grows with the root of the count, as a round bundle does (common practice, no source)
    private static double BandMm(int slots) => 0.9 + (0.5 * Math.Sqrt(slots));

    /// <summary>Cards of the last place of a bundle are stacked at its end even where a rib leaves that could carry them: lower, but less true to the vehicle.</summary>
    public bool StacksAtEnds { get; init; }
}
