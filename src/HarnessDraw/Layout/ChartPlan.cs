using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>A corner of a lane and the radius it is rounded with, mm.</summary>
public readonly record struct LanePoint(Point At, double RadiusMm)
{
    /// <summary>The bands on which it lies: at a corner two; 0: none, else the number of the spine and 1.</summary>
    public int Band { get; init; }
    public int OtherBand { get; init; }
}

/// <summary>Where a card stands: its box, on which side its lanes arrive, and its rows from the top: lanes, then or before them the stubs.</summary>
public sealed record PlacedCard(int Card, Box Box, bool LanesOnLeft, ImmutableArray<(int Lane, int End, double Y)> Rows, double FirstStubY)
{
    /// <summary>Where the lead's length stands, for a card at the end of its own path.</summary>
    public int LeadNode { get; init; } = -1;
    public double LeadY { get; init; }

    /// <summary>Drawn length of the lead where it is to scale, mm; 0: it is not.</summary>
    public double LeadMm { get; init; }
}

/// <summary>A length on its dimension line, a splice's name, a cut, a flag or a disc: the box, the place on the bundle it belongs to.</summary>
public sealed record PlacedMark(int Index, Box Box, Point At, Point Other)
{
    /// <summary>Of a length: true when its dimension line is drawn to the chart's scale.</summary>
    public bool IsToScale { get; init; }
}

/// <summary>A splice on paper: where its lanes meet the bar; the first is the feed's dot.</summary>
public sealed record PlacedSplice(int Splice, ImmutableArray<Point> Dots, PlacedMark? Label);

/// <summary>A bundle between two places on paper, for its band: the outermost lanes at either end.</summary>
public sealed record PlacedStretch(int Node, Box Box)
{
    /// <summary>How many lanes are drawn as one band there; 0: each is drawn.</summary>
    public int BandLanes { get; init; }
    public bool IsHorizontal { get; init; }
}

/// <summary>A cut through a bundle: letter place and the lanes in the order they are met from the letter's far side.</summary>
public sealed record PlacedCut(Box Letter, Point From, Point To, ImmutableArray<int> Lanes, bool IsHorizontalBundle);

/// <summary>The room that a packed chart takes, mm in its own coordinates: the boxes of all that is printed, and the box round them.</summary>
public sealed record ChartRoom(Box Bounds, ImmutableArray<Box> Occupied)
{
    internal static ChartRoom Of(Spine root)
    {
        var occupied = new Box[root.Packed.Count];
        var bounds = default(Box);
        for (var i = 0; i < occupied.Length; i++)
        {
            occupied[i] = root.OnPaper(root.Packed[i]);
            bounds = (i == 0 ? occupied[0] : bounds).Union(occupied[i]);
        }

        return new(bounds, ImmutableCollectionsMarshal.AsImmutableArray(occupied));
    }
}

/// <summary>What is asked of a chart that is only tried: its room, and what the panels beside it speak of.</summary>
public sealed record ChartOutline(ChartRoom Room, ImmutableArray<PlacedCut> Cuts)
{
    /// <summary>True when some length is drawn, when some bundle is drawn as one band, and when lanes cross.</summary>
    public bool HasLengths { get; init; }
    public bool HasBands { get; init; }
    public bool HasCrossings { get; init; }
}

/// <summary>The finished chart in its own coordinates (mm, y down), before it is moved onto paper.</summary>
public sealed record ChartPlan
{
    public required Box Bounds { get; init; }

    /// <summary>The way of each lane from where it comes from to where it goes; none for a chart that is only tried.</summary>
    public required ImmutableArray<ImmutableArray<LanePoint>> Lanes { get; init; }
    public required ImmutableArray<PlacedCard> Cards { get; init; }
    public required ImmutableArray<PlacedMark> Lengths { get; init; }
    public required ImmutableArray<PlacedSplice> Splices { get; init; }
    public required ImmutableArray<PlacedMark> Flags { get; init; }
    public required ImmutableArray<PlacedMark> Discs { get; init; }
    public required ImmutableArray<PlacedCut> Cuts { get; init; }
    public required ImmutableArray<PlacedStretch> Stretches { get; init; }

    /// <summary>Where each node lies on paper, or null when it is only the end of a card's own path.</summary>
    public required ImmutableArray<Point?> Nodes { get; init; }

    /// <summary>Top left corner of the pin table block; its lanes leave to the left.</summary>
    public Point? Table { get; init; }

    /// <summary>Everything that is occupied.</summary>
    public required ImmutableArray<Box> Occupied { get; init; }

    /// <summary>Counted when first asked for: they rest on the lanes' order alone.</summary>
    public LaneCrossings Crossings => Counted.Value;
    internal Lazy<LaneCrossings> Counted { get; init; } = null!;
}
