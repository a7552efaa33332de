using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Layout;

/// <summary>A bundle drawn as one: the lanes in it, the boxes that together are the band, and its round corners to other bands.</summary>
public sealed record ChartBand(ImmutableArray<int> Lanes, ImmutableArray<Box> Pieces, ImmutableArray<BandCorner> Corners);

/// <summary>A round corner between two bands: where its two edges would meet, with their radii; the bands go off to the side given of each axis (1 or -1).</summary>
public sealed record BandCorner(LanePoint Outer, LanePoint Inner, int X, int Y);

/// <summary>
/// Finds, from the ways of the lanes, the bands that hide them and what shows of each lane: it ends at the edge of a band and goes on where it leaves it, in the same
/// order, as its place in the band stays its own.
/// </summary>
public sealed class ChartBands
{
    /// <summary>Half a lane, mm: as far as a band reaches beyond the middle of its outermost lanes.</summary>
    private const double HalfLaneMm = 0.5;

    /// <summary>What shows of a wire that is nowhere outside bands: so much beside the splice where it begins, mm.</summary>
    private const double TokenMm = 1.2;
    private readonly ImmutableArray<ImmutableArray<LanePoint>> lanes;
    private readonly SortedDictionary<int, List<Hidden>> hidden = [];
    private readonly SortedDictionary<(int A, int B, int X, int Y), List<LanePoint>> corners = [];

    private ChartBands(ImmutableArray<ImmutableArray<LanePoint>> lanes)
    {
        this.lanes = lanes;
        for (var lane = 0; lane < lanes.Length; lane++)
        {
            Collect(lane, lanes[lane]);
        }
    }

    /// <summary>A straight piece of a lane inside a band: along the band from and to, and where across.</summary>
    private readonly record struct Hidden(int Lane, double From, double To, double Across, bool IsHorizontal);

    /// <summary>The bands by the number of their spine, and for each lane the pieces that show.</summary>
    public static (ImmutableArray<ChartBand> Bands, ImmutableArray<ImmutableArray<ImmutableArray<LanePoint>>> Shown) Of(ImmutableArray<ImmutableArray<LanePoint>> lanes)
    {
        var found = new ChartBands(lanes);
        var boxes = found.hidden.ToDictionary(h => h.Key, h => Boxes(h.Value));
        var bands = found.hidden.Select(h => new ChartBand(
            [.. h.Value.Select(l => l.Lane).Distinct().Order()],
            boxes[h.Key],
            [.. found.corners.Where(c => c.Key.A == h.Key).Select(c => CornerOf(c.Key.X, c.Key.Y, c.Value))]));
        return ([.. bands], [.. lanes.Select(way => found.Shown(way, boxes))]);
    }

    private static int Common(LanePoint a, LanePoint b) =>
        a.Band != 0 && (a.Band == b.Band || a.Band == b.OtherBand) ? a.Band
        : a.OtherBand != 0 && (a.OtherBand == b.Band || a.OtherBand == b.OtherBand) ? a.OtherBand : 0;

    private static bool IsCorner(LanePoint p) => p.Band != 0 && p.OtherBand != 0;

    private void Collect(int lane, ImmutableArray<LanePoint> way)
    {
        for (var i = 1; i < way.Length; i++)
        {
            var (a, b) = (way[i - 1], way[i]);
            if (Common(a, b) is not 0 and var band)
            {
                var (from, to) = (Trimmed(a, b), Trimmed(b, a));
                var isHorizontal = Math.Abs(a.At.X - b.At.X) >= Math.Abs(a.At.Y - b.At.Y);
                var piece = isHorizontal ? new Hidden(lane, Math.Min(from.X, to.X), Math.Max(from.X, to.X), a.At.Y, true) : new(lane, Math.Min(from.Y, to.Y), Math.Max(from.Y, to.Y), a.At.X, false);
                (hidden.TryGetValue(band, out var list) ? list : hidden[band] = []).Add(piece);
            }

            if (i + 1 < way.Length && IsCorner(b))
            {
                var (before, after) = (Toward(b, a), Toward(b, way[i + 1]));
                var key = (Math.Min(b.Band, b.OtherBand), Math.Max(b.Band, b.OtherBand), before.X + after.X, before.Y + after.Y);
                (corners.TryGetValue(key, out var list) ? list : corners[key] = []).Add(b);
            }
        }
    }

    // a corner between bands is drawn on its own: the straight pieces end where it begins
    private static Point Trimmed(LanePoint at, LanePoint other)
    {
        var (x, y) = Toward(at, other);
        var r = IsCorner(at) ? at.RadiusMm : 0;
        return new(at.At.X + (x * r), at.At.Y + (y * r));
    }

    private static (int X, int Y) Toward(LanePoint from, LanePoint to) =>
        (Math.Sign(Math.Round(to.At.X - from.At.X, 3)), Math.Sign(Math.Round(to.At.Y - from.At.Y, 3)));

    // the lane that turns outside all others, and the one inside
    private static BandCorner CornerOf(int x, int y, List<LanePoint> points)
    {
        var outer = points.MinBy(p => (p.At.X * x) + (p.At.Y * y));
        var inner = points.MaxBy(p => (p.At.X * x) + (p.At.Y * y));
        return new(Moved(outer, -HalfLaneMm), Moved(inner, HalfLaneMm), x, y);

        LanePoint Moved(LanePoint p, double by) => new(new(p.At.X + (x * by), p.At.Y + (y * by)), Math.Max(0.1, p.RadiusMm - by));
    }

    // from one place where a lane begins or ends to the next the band reaches from the outermost lane to the other
    private static ImmutableArray<Box> Boxes(List<Hidden> pieces)
    {
        var ends = pieces.SelectMany(p => (double[])[p.From, p.To]).Distinct().Order().ToArray();
        var boxes = ImmutableArray.CreateBuilder<Box>();
        for (var i = 1; i < ends.Length; i++)
        {
            double low = double.MaxValue, high = double.MinValue;
            foreach (var p in pieces)
            {
                if (p.From <= ends[i - 1] && p.To >= ends[i])
                {
                    (low, high) = (Math.Min(low, p.Across), Math.Max(high, p.Across));
                }
            }

            if (low > high)
            {
                continue;
            }

            (low, high) = (low - HalfLaneMm, high + HalfLaneMm);
            var box = pieces[0].IsHorizontal ? Box.FromEdges(ends[i - 1], low, ends[i], high) : Box.FromEdges(low, ends[i - 1], high, ends[i]);
            if (boxes.Count > 0 && Continues(boxes[^1], box, pieces[0].IsHorizontal))
            {
                boxes[^1] = boxes[^1].Union(box);
            }
            else
            {
                boxes.Add(box);
            }
        }

        return boxes.ToImmutable();
    }

    private static bool Continues(Box a, Box b, bool isHorizontal) => isHorizontal
        ? a.Y == b.Y && a.Bottom == b.Bottom && Math.Abs(a.Right - b.X) < 1e-6
        : a.X == b.X && a.Right == b.Right && Math.Abs(a.Bottom - b.Y) < 1e-6;

    private ImmutableArray<ImmutableArray<LanePoint>> Shown(ImmutableArray<LanePoint> way, Dictionary<int, ImmutableArray<Box>> boxes)
    {
        var pieces = ImmutableArray.CreateBuilder<ImmutableArray<LanePoint>>();
        var piece = new List<LanePoint>();
        for (var i = 1; i < way.Length; i++)
        {
            if (Common(way[i - 1], way[i]) != 0)
            {
                End();
                continue;
            }

            if (piece.Count == 0)
            {
                // it comes out of a band, or begins here
                piece.Add(new(Edge(way[i], way[i - 1], boxes), 0));
            }

            piece.Add(i + 1 < way.Length && Common(way[i], way[i + 1]) != 0 ? new(Edge(way[i - 1], way[i], boxes), 0) : way[i]);
        }

        End();
        if (pieces.Count == 0 && way.Length > 1)
        {
            var (x, y) = Toward(way[0], way[1]);
            pieces.Add([way[0], new(new(way[0].At.X + (x * TokenMm), way[0].At.Y + (y * TokenMm)), 0)]);
        }

        return pieces.ToImmutable();

        void End()
        {
            if (piece.Count > 1 && (piece.Count > 2 || Math.Abs(piece[0].At.X - piece[1].At.X) + Math.Abs(piece[0].At.Y - piece[1].At.Y) > HalfLaneMm))
            {
                pieces.Add([.. piece]);
            }

            piece.Clear();
        }
    }

    // where the way from outside to a place in a band meets the edge of the band; the place itself when it is not in a band or all of the way is
    private static Point Edge(LanePoint outside, LanePoint inside, Dictionary<int, ImmutableArray<Box>> boxes)
    {
        if (inside.Band == 0 && inside.OtherBand == 0)
        {
            return inside.At;
        }

        var (x, y) = Toward(outside, inside);
        var length = Math.Abs(inside.At.X - outside.At.X) + Math.Abs(inside.At.Y - outside.At.Y);
        var free = length;
        foreach (var band in (ReadOnlySpan<int>)[inside.Band, inside.OtherBand])
        {
            foreach (var b in band == 0 || !boxes.TryGetValue(band, out var all) ? [] : all)
            {
                var isBeside = x != 0 ? outside.At.Y > b.Y - 1e-6 && outside.At.Y < b.Bottom + 1e-6 : outside.At.X > b.X - 1e-6 && outside.At.X < b.Right + 1e-6;
                var near = x > 0 ? b.X - outside.At.X : x < 0 ? outside.At.X - b.Right : y > 0 ? b.Y - outside.At.Y : outside.At.Y - b.Bottom;
                if (isBeside && near > 0 && near < free)
                {
                    free = near;
                }
            }
        }

        return new(outside.At.X + (x * free), outside.At.Y + (y * free));
    }
}
