using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>Finds room for words beside runs: near their point, clear of runs and of other words, with a leader where they stand off.</summary>
internal sealed class BoardLabels
{
    private const double LeaderStepMm = 4;
    private readonly List<Box> taken = [];
    private readonly List<(Point From, Point To)> leaders = [];
    private readonly Box board;
    private readonly ImmutableArray<BoardRun> runs;

    public BoardLabels(Box board, ImmutableArray<BoardRun> runs) => (this.board, this.runs) = (board, runs);

    public void Take(Box box) => taken.Add(box);

    /// <summary>Paints the lines at the nearest free place; false where there is none within reach. A leader crosses no run where that can be had.</summary>
    public bool Put(Pen pen, Point at, double clearMm, params ImmutableArray<(string Text, TextStyle Style)> lines) =>
        Put(pen, at, clearMm, board, points: true, overRuns: false, lines) || Put(pen, at, clearMm, board, points: true, overRuns: true, lines);

    /// <summary>Paints words that belong to no point, as near as there is room within a part of the board.</summary>
    public bool PutNear(Pen pen, Point at, double clearMm, Box within, ImmutableArray<(string Text, TextStyle Style)> lines) => Put(pen, at, clearMm, within, points: false, overRuns: true, lines);

    private bool Put(Pen pen, Point at, double clearMm, Box within, bool points, bool overRuns, ImmutableArray<(string Text, TextStyle Style)> lines)
    {
        var width = lines.Max(l => Pen.Width(l.Text, l.Style));
        var height = lines.Sum(l => l.Style.CapMm * 1.65);
        for (var off = clearMm; off < 260; off += 9)
        {
            for (var turn = 0; turn < 16; turn++)
            {
                var (sin, cos) = Math.SinCos(((turn * 22.5) - 67.5) * Math.PI / 180);
                // the box's nearest edge lies off the point, its middle along the ray
                var centre = new Point(at.X + (cos * (off + (width / 2 * Math.Abs(cos)))), at.Y + (sin * (off + (height / 2 * Math.Abs(sin)))));
                var box = new Box(centre.X - (width / 2), centre.Y - (height / 2), width, height);
                var leader = points && off > clearMm + 12 ? Leader(at, box) : null;
                if (within.Contains(box) && IsFree(box) && (leader is not { } line || (!taken.Exists(t => Crosses(line.From, line.To, t)) && (overRuns || !CrossesForeign(line.From, at)))))
                {
                    Paint(pen, box, leader, lines);
                    return true;
                }
            }
        }

        return false;
    }

    // a run that does not come by the point itself
    private bool CrossesForeign(Point from, Point at)
    {
        var (length, foreign) = (BoardRun.Length(at - from), runs.Where(r => !Crosses(r, new Box(at.X, at.Y, 0, 0))).ToList());
        return Enumerable.Range(0, (int)(length / LeaderStepMm) + 1).Any(i => foreign.Exists(r => Crosses(r, new Box(from.X + ((at.X - from.X) * i * LeaderStepMm / length), from.Y + ((at.Y - from.Y) * i * LeaderStepMm / length), 0, 0))));
    }

    // from the box to the point; it stops short of the words
    private static (Point From, Point To)? Leader(Point at, Box box)
    {
        var to = new Point(Math.Clamp(at.X, box.X, box.Right), Math.Clamp(at.Y, box.Y, box.Bottom));
        var d = BoardRun.Unit(at - to);
        return (new(to.X + (d.X * 1.6), to.Y + (d.Y * 1.6)), at);
    }

    private void Paint(Pen pen, Box box, (Point From, Point To)? leader, ImmutableArray<(string Text, TextStyle Style)> lines)
    {
        taken.Add(box.Grow(1.5));
        if (leader is { } line)
        {
            leaders.Add(line);
            pen.Add(new PathItem(Outline.Line(line.From.X, line.From.Y, line.To.X, line.To.Y)) { Stroke = new(Ink.Black, 0.25) });
        }

        var y = box.Y;
        foreach (var (text, style) in lines)
        {
            pen.Letters(text, box.X, y + (style.CapMm * 1.25), style);
            y += style.CapMm * 1.65;
        }
    }

    /// <summary>True where nothing lies and nothing is said yet.</summary>
    public bool IsFree(Box box)
    {
        var grown = box.Grow(2.5);
        return board.Contains(grown) && !taken.Exists(grown.Overlaps) && !leaders.Exists(l => Crosses(l.From, l.To, grown)) && !runs.Any(r => Crosses(r, grown));
    }

    private static bool Crosses(BoardRun run, Box box)
    {
        var wide = box.Grow((run.Segment.DiameterMm / 2) + 3.5);
        for (var i = 0; i < run.Flat.Length - 1; i++)
        {
            if (Crosses(run.Flat[i], run.Flat[i + 1], wide))
            {
                return true;
            }
        }

        return false;
    }

    // Liang and Barsky: the part of the line inside the box's two pairs of edges
    internal static bool Crosses(Point a, Point b, Box box)
    {
        var (low, high) = (0.0, 1.0);
        foreach (var (from, d, least, most) in new[] { (a.X, b.X - a.X, box.X, box.Right), (a.Y, b.Y - a.Y, box.Y, box.Bottom) })
        {
            if (Math.Abs(d) < 1e-12)
            {
                if (from < least || from > most)
                {
                    return false;
                }

                continue;
            }

            var (t1, t2) = ((least - from) / d, (most - from) / d);
            low = Math.Max(low, Math.Min(t1, t2));
            high = Math.Min(high, Math.Max(t1, t2));
        }

        return low <= high;
    }
}
