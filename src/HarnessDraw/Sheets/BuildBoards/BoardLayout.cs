using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// Lays the tree of a harness on a board: every segment as long as it is, no two nearer than a hand needs, folded back where the board ends. Segments are placed one by
/// one, the longest chain first; each tries its shapes in a fixed order, and where none fits the one before it tries its next.
/// </summary>
internal sealed class BoardLayout
{
    private const double ClearMm = 30;
    private const double SampleMm = 15;
    private const double MostFolds = 1.6;
    private const int MostTries = 1_500;
    private readonly BoardGrid grid;
    private readonly Box board;
    private readonly List<Segment> order = [];
    private readonly Dictionary<string, BoardRun> placed = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Segment>> below;
    private readonly string root;
    private int tries;

    private BoardLayout(HarnessTree tree, BoardGrid grid)
    {
        (this.grid, board, root) = (grid, grid.Whole, tree.Root);
        below = tree.Segments.Where(s => !s.Wires.IsEmpty).GroupBy(s => s.From, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        Chain(root);
    }

    /// <summary>The runs by segment, or null where the board is too small. Segments of unknown length are laid with <paramref name="unknownMm"/>.</summary>
    /// <param name="tree">The harness.</param>
    /// <param name="grid">The board, or several that meet at match lines.</param>
    /// <param name="unknownMm">Length drawn for a segment whose length is not known.</param>
    public static ImmutableArray<BoardRun>? Place(HarnessTree tree, BoardGrid grid, double unknownMm = 200)
    {
        // a chain that would go to and fro more than once leaves no room for its branches
        var known = tree with { Segments = [.. tree.Segments.Select(s => s.LengthMm is > 0 ? s : s with { LengthMm = unknownMm })] };
        foreach (var height in (ReadOnlySpan<double>)[0.5, 0.35, 0.65, 0.8])
        {
            var layout = new BoardLayout(known, grid);
            if (layout.order.Where(s => s.From == tree.Root).Max(layout.Reach) > MostFolds * grid.Whole.Width)
            {
                return null;
            }

            if (layout.Try(0, new(grid.Whole.X + 60, grid.Whole.Y + (grid.Whole.Height * height))))
            {
                return [.. layout.order.Select(s => layout.placed[s.Id])];
            }
        }

        return null;
    }

    // the longest way on first, then what leaves it, nearest the root first
    private void Chain(string place)
    {
        var chain = new List<string>();
        for (var at = place; below.TryGetValue(at, out var next);)
        {
            var longest = next.OrderByDescending(Reach).ThenBy(s => s.Id, StringComparer.Ordinal).First(s => true);
            order.Add(longest);
            chain.Add(at);
            at = longest.To;
        }

        foreach (var at in chain)
        {
            foreach (var segment in below[at].Where(s => !order.Contains(s)).OrderByDescending(Reach).ThenBy(s => s.Id, StringComparer.Ordinal).ToList())
            {
                if (!order.Contains(segment))
                {
                    order.Add(segment);
                    Chain(segment.To);
                }
            }
        }
    }

    private double Reach(Segment segment) => segment.LengthMm!.Value + (below.TryGetValue(segment.To, out var next) ? next.Max(Reach) : 0);

    private bool Try(int index, Point start)
    {
        if (index == order.Count)
        {
            return true;
        }

        var segment = order[index];
        var above = placed.Values.FirstOrDefault(r => r.Segment.To == segment.From);
        var at = above?.End ?? start;
        foreach (var run in Shapes(segment, at, above?.Heading ?? new(1, 0)))
        {
            if (++tries > MostTries)
            {
                return false;
            }

            if (Fits(run))
            {
                placed[segment.Id] = run;
                if (Try(index + 1, start))
                {
                    return true;
                }

                placed.Remove(segment.Id);
            }
        }

        return false;
    }

    // straight on, to either side, slanting; then with one bend; then to and fro
    private IEnumerable<BoardRun> Shapes(Segment segment, Point at, Point heading)
    {
        var mm = segment.LengthMm!.Value;
        var bend = Math.Clamp(segment.MinBendRadiusMm, 20, 120);
        var left = new Point(heading.Y, -heading.X);
        var right = new Point(-heading.Y, heading.X);
        // towards the nearer edge last: the middle of the board is left free for what comes
        ImmutableArray<Point> sides = at.Y > board.Centre.Y == left.Y > 0 ? [left, right] : [right, left];
        ImmutableArray<Point> directions = [heading, .. sides];
        foreach (var direction in directions)
        {
            yield return BoardRun.Of(segment, at, bend, (direction, mm))!;
        }

        foreach (var side in sides)
        {
            yield return BoardRun.Of(segment, at, bend, (BoardRun.Unit(new(heading.X + side.X, heading.Y + side.Y)), mm))!;
            yield return BoardRun.Of(segment, at, bend, (BoardRun.Unit(new(side.X - heading.X, side.Y - heading.Y)), mm))!;
        }

        foreach (var first in directions)
        {
            foreach (var second in new[] { new Point(first.Y, -first.X), new Point(-first.Y, first.X) })
            {
                foreach (var part in (ImmutableArray<double>)[70, 130, 200, mm / 2, 290, 380, mm - 70])
                {
                    if (part < mm - 20 && BoardRun.Of(segment, at, bend, (first, part), (second, mm - part)) is { } run)
                    {
                        yield return run;
                    }
                }
            }
        }

        foreach (var first in directions)
        {
            foreach (var across in new[] { new Point(first.Y, -first.X), new Point(-first.Y, first.X) })
            {
                foreach (var step in (ImmutableArray<double>)[(2 * bend) + 60, (2 * bend) + 140])
                {
                    if (Folded(segment, at, first, across, step, bend, mm) is { } run)
                    {
                        yield return run;
                    }
                }
            }
        }
    }

    // along until the board ends, a step aside, back, and so on
    private BoardRun? Folded(Segment segment, Point at, Point first, Point across, double step, double bend, double mm)
    {
        var legs = new List<(Point, double)>();
        var (point, direction, rest) = (at, first, mm);
        while (rest > 0 && legs.Count < 25)
        {
            var room = Math.Floor(Room(point, direction) - ClearMm - 10);
            if (room < (2 * bend) + 40)
            {
                return null;
            }

            if (rest <= room || rest - room < step + bend)
            {
                var last = Math.Min(rest, room);
                if (rest > room)
                {
                    return null;
                }

                legs.Add((direction, last));
                break;
            }

            legs.Add((direction, room));
            legs.Add((across, step));
            point = new(point.X + (direction.X * room) + (across.X * step), point.Y + (direction.Y * room) + (across.Y * step));
            direction = new(-direction.X, -direction.Y);
            rest -= room + step;
        }

        return legs.Count is > 1 and < 25 ? BoardRun.Of(segment, at, bend, [.. legs]) : null;
    }

    private double Room(Point at, Point d) =>
        Math.Abs(d.X) > Math.Abs(d.Y) ? (d.X > 0 ? board.Right - at.X : at.X - board.X) : d.Y > 0 ? board.Bottom - at.Y : at.Y - board.Y;

    // near its own breakout a run may be near its neighbours, by as much as it has gone
    private bool Fits(BoardRun run)
    {
        if (run.Corners.Any(c => c.X < board.X + ClearMm || c.X > board.Right - ClearMm || c.Y < board.Y + ClearMm || c.Y > board.Bottom - ClearMm))
        {
            return false;
        }

        if (grid.Hinders(run))
        {
            return false;
        }

        var gone = 0.0;
        for (var i = 0; i < run.Flat.Length - 1; i++)
        {
            var (a, b) = (run.Flat[i], run.Flat[i + 1]);
            var length = BoardRun.Length(b - a);
            for (var s = 0.0; s <= length; s += SampleMm)
            {
                var p = new Point(a.X + ((b.X - a.X) * s / length), a.Y + ((b.Y - a.Y) * s / length));
                foreach (var other in placed.Values)
                {
                    var need = ((run.Segment.DiameterMm + other.Segment.DiameterMm) / 2) + ClearMm;
                    var touches = other.Segment.To == run.Segment.From || other.Segment.From == run.Segment.From;
                    if (Distance(other, p) < (touches ? Math.Min(need, 0.65 * (gone + s)) : need))
                    {
                        return false;
                    }
                }
            }

            gone += length;
        }

        return true;
    }

    private static double Distance(BoardRun run, Point p)
    {
        var least = double.MaxValue;
        for (var i = 0; i < run.Flat.Length - 1; i++)
        {
            var (a, d) = (run.Flat[i], run.Flat[i + 1] - run.Flat[i]);
            var square = (d.X * d.X) + (d.Y * d.Y);
            var t = square < 1e-12 ? 0 : Math.Clamp((((p.X - a.X) * d.X) + ((p.Y - a.Y) * d.Y)) / square, 0, 1);
            least = Math.Min(least, BoardRun.Length(new(p.X - a.X - (t * d.X), p.Y - a.Y - (t * d.Y))));
        }

        return least;
    }
}
