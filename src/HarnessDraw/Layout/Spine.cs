using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>A straight chain of the drawn tree with what hangs on it. Frame: t along its heading, u across to the side of its right vector.</summary>
internal sealed class Spine
{
    public required int Index { get; init; }
    public required Spine? Parent { get; init; }
    public SpineItem? ParentItem { get; set; }
    public int Depth => Parent is null ? 0 : Parent.Depth + 1;

    /// <summary>Heading and right-hand direction on paper (units, y down).</summary>
    public required int Dx { get; init; }
    public required int Dy { get; init; }
    public required int Rx { get; init; }
    public required int Ry { get; init; }
    public bool IsHorizontal => Dx != 0;

    public List<Station> Stations { get; } = [];

    /// <summary>Cards stacked at the far end, in order of rising u.</summary>
    public List<int> EndCards { get; } = [];
    public int EndEvent { get; set; }

    /// <summary>Lanes that run on it, by key.</summary>
    public List<LaneRun> Runs { get; } = [];
    public int SlotCount { get; set; }

    /// <summary>Distance of its lanes, mm, and whether they are drawn as one band.</summary>
    public double PitchMm { get; set; }
    public bool IsBand { get; set; }

    /// <summary>Where a lane lies across the spine, mm.</summary>
    public double U(int slot) => slot * PitchMm;

    /// <summary>Extra length of the stem, mm.</summary>
    public double LiftMm { get; set; }

    /// <summary>Tracks before the pin table: they depend on the order and on the share of the table above the trunk.</summary>
    public double TableShare { get; set; }
    public (int[] Tracks, int Count, int Close)? TableChannel { get; set; }
    public (int[] Tracks, int Count, int Close)? TableChannel2 { get; set; }
    public (int[] Tracks, int Count, int Close)? TableFan { get; set; }

    /// <summary>The outermost live slot from each event on, left and right (u), and the stack of cards at the end: they rest on the lanes' order alone.</summary>
    public (double[] From, double[] To)? Edges { get; set; }
    public (FrameBox Box, double ChannelMm, double GapMm)? EndStack { get; set; }

    /// <summary>Where each of those cards begins (u); track, from a mm behind the stack's begin, and row of each lane end in it.</summary>
    public double[] EndCardU { get; set; } = [];
    public Dictionary<(int Lane, int End), (double T, double U)> EndTracks { get; } = [];

    /// <summary>True for a rib whose first cards are those of the place where it leaves.</summary>
    public bool HasOwnFirst => Parent is not null && Stations.Count > 1 && !Stations[0].HasEdge;

    /// <summary>How many of the packed boxes are those first cards: the first of the left side, and of the right side, which begins after so many.</summary>
    public int OwnLeft { get; set; }
    public int OwnRight { get; set; }
    public int LeftCount { get; set; }

    // results of packing
    public double OriginX { get; set; }
    public double OriginY { get; set; }
    public double StartT { get; set; }
    public double EndT { get; set; }
    public double EndCardT { get; set; }
    public List<SpineMark> Marks { get; } = [];
    public List<FrameBox> Packed { get; } = [];
    public bool IsPacked { get; set; }

    /// <summary>The packed boxes as they lie beside the parent's edge, while that is not NaN: it is packed again, or tried otherwise.</summary>
    public List<FrameBox> Turned { get; } = [];
    public double TurnedEdge { get; set; } = double.NaN;

    /// <summary>True once the radii of its lanes' corners at the parent are known.</summary>
    public bool HasCorners { get; set; }

    public Spine Turn(int index, bool left) => new()
    {
        Index = index,
        Parent = this,
        Dx = left ? -Rx : Rx,
        Dy = left ? -Ry : Ry,
        Rx = left ? Dx : -Dx,
        Ry = left ? Dy : -Dy,
    };

    /// <summary>True place of a node across the spine, mm on the vehicle, and that of the straight line that the spine is drawn as: the middle one of its places.</summary>
    public double Across(ChartNode node) => (node.X * Rx) + (node.Y * Ry);
    public double LineAcross { get; set; }

    public (double X, double Y) At(double t, double u) => (OriginX + (t * Dx) + (u * Rx), OriginY + (t * Dy) + (u * Ry));

    /// <summary>Number of the place of its parent where it leaves.</summary>
    public int ParentStation { get; set; }

    /// <summary>Takes its origin from where its parent was packed; the parent comes first.</summary>
    public void TakeOrigin()
    {
        if (Parent is { } parent)
        {
            (OriginX, OriginY) = parent.At(ParentItem!.T, ParentItem.EdgeU);
        }
    }

    public Box OnPaper(FrameBox b)
    {
        var (x0, y0) = At(b.T0, b.U0);
        var (x1, y1) = At(b.T1, b.U1);
        return Box.FromEdges(Math.Min(x0, x1), Math.Min(y0, y1), Math.Max(x0, x1), Math.Max(y0, y1));
    }
}

/// <summary>A place on a spine: the splices before it, what leaves to the left and to the right, in the order of leaving.</summary>
internal sealed class Station
{
    public required int Node { get; init; }

    /// <summary>True when the edge above <see cref="Node"/> lies on this spine.</summary>
    public required bool HasEdge { get; init; }
    public List<int> Splices { get; } = [];
    public List<SpineItem> Left { get; } = [];
    public List<SpineItem> Right { get; } = [];
    public int FirstEvent { get; set; }
    public double T { get; set; }

    /// <summary>Where the free stretch before it begins.</summary>
    public double FromT { get; set; }
    public bool HasCut { get; set; }

    /// <summary>Extra length of the free stretch before it, mm.</summary>
    public double HoldMm { get; set; }

    /// <summary>On a chart to scale: how much of the bundle before it lies beyond its dimension line, and whether the line is to scale and tells all of the bundle.</summary>
    public double BeyondMm { get; set; }
    public bool IsToScale { get; set; }
}

/// <summary>A child spine or a card beside its spine.</summary>
internal sealed class SpineItem
{
    public Spine? Child { get; init; }
    public int Card { get; init; } = -1;
    public required bool IsLeft { get; init; }

    /// <summary>Node whose length stands beside the card (a leaf with a single card), or -1.</summary>
    public int LeadNode { get; init; } = -1;
    public int Event { get; set; }

    /// <summary>Drawn length of the card's own path where it is to scale, mm; 0: it is not.</summary>
    public double LeadMm { get; set; }

    /// <summary>Of the child's lane u' = 0, or of the card's near edge.</summary>
    public double T { get; set; }
    public double LastLaneT { get; set; }

    /// <summary>The u of the edge the child leaves from, or of the card's edge where lanes arrive.</summary>
    public double EdgeU { get; set; }
}

/// <summary>A lane on one spine, between two events; -1 stands for the spine's start.</summary>
internal sealed class LaneRun
{
    public required int Lane { get; init; }
    public required double Key { get; init; }
    public required int StartEvent { get; init; }
    public required int EndEvent { get; init; }

    /// <summary>True when the lane, coming down to the parent spine, goes away from the root there.</summary>
    public bool Turns { get; init; }
    public int Slot { get; set; }

    /// <summary>Radius of the corner at the parent spine, mm.</summary>
    public double CornerMm { get; set; }
}

/// <summary>Something printed beside a spine that is neither lane nor card.</summary>
internal enum MarkKind
{
    Length,
    Splice,
    Cut,
    Flag,
    Disc,
}

/// <summary>Where a mark was placed in its spine's frame; <paramref name="At"/> is the place on the spine it belongs to.</summary>
internal sealed record SpineMark(MarkKind Kind, int Index, FrameBox Box, bool IsLeft, double At);

/// <summary>The boxes of one side of a spine in the order in which they were placed, and how far those up to each one reach along it.</summary>
internal sealed class FrameBoxes
{
    private readonly List<double> farthest = [];

    public List<FrameBox> Boxes { get; } = [];
    public int Count => Boxes.Count;

    /// <summary>The largest T1 of the boxes up to the one given.</summary>
    public double FarthestUpTo(int i) => farthest[i];

    public void Add(FrameBox box)
    {
        Boxes.Add(box);
        farthest.Add(farthest.Count == 0 ? box.T1 : Math.Max(farthest[^1], box.T1));
    }

    public void KeepFirst(int count)
    {
        Boxes.RemoveRange(count, Boxes.Count - count);
        farthest.RemoveRange(count, farthest.Count - count);
    }
}

/// <summary>A box in a spine's frame, mm.</summary>
internal readonly record struct FrameBox(double T0, double T1, double U0, double U1)
{
    public FrameBox Move(double t) => new(T0 + t, T1 + t, U0, U1);
}
