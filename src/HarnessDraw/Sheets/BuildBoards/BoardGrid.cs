using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>Boards of one size side by side and above each other, row by row, and the match lines at which they meet. Millimetres.</summary>
internal sealed record BoardGrid(Box First, int Columns, int Rows)
{
    private const int Most = 12;

    // a peg needs its room beside a match line, and no run lies along one
    private const double ClearMm = 45;

    /// <summary>One board, then two, and so on; of as many, the longer before the higher.</summary>
    public static IEnumerable<BoardGrid> Of(Box area) =>
        from count in Enumerable.Range(1, Most) from rows in Enumerable.Range(1, count) where count % rows == 0 select new BoardGrid(area, count / rows, rows);

    public int Count => Columns * Rows;

    public Box Whole => First with { Width = First.Width * Columns, Height = First.Height * Rows };

    public Box Cell(int index) => First.Move(index % Columns * First.Width, index / Columns * First.Height);

    /// <summary>The boards on which something lies.</summary>
    public ImmutableArray<int> Used(ImmutableArray<BoardRun> runs) =>
        [.. Enumerable.Range(0, Count).Where(i => runs.Any(r => Enumerable.Range(0, r.Flat.Length - 1).Any(f => BoardLabels.Crosses(r.Flat[f], r.Flat[f + 1], Cell(i)))))];

    /// <summary>Where two boards meet, in reading order.</summary>
    public ImmutableArray<MatchLine> Lines =>
    [
        .. Enumerable.Range(0, Count).Where(i => (i + 1) % Columns != 0).Select(i => new MatchLine(i, i + 1, new(Cell(i).Right, Cell(i).Y), new(Cell(i).Right, Cell(i).Bottom))),
        .. Enumerable.Range(0, Count - Columns).Select(i => new MatchLine(i, i + Columns, new(Cell(i).X, Cell(i).Bottom), new(Cell(i).Right, Cell(i).Bottom))),
    ];

    /// <summary>Where the upright check bars of a board stand: in its lower left corner.</summary>
    public Box Bars(int index) => new(Cell(index).X + 1, Cell(index).Bottom - CheckBars.InchMm - 14, CheckBars.UprightMm, CheckBars.InchMm + 12);

    /// <summary>True where the run ends beside a match line, lies along one, or meets the check bars.</summary>
    public bool Hinders(BoardRun run)
    {
        if (Xs.Any(x => Math.Abs(run.End.X - x) < ClearMm) || Ys.Any(y => Math.Abs(run.End.Y - y) < ClearMm))
        {
            return true;
        }

        for (var i = 0; i < run.Flat.Length - 1; i++)
        {
            var (a, b) = (run.Flat[i], run.Flat[i + 1]);
            if (Enumerable.Range(0, Count).Any(c => BoardLabels.Crosses(a, b, Bars(c).Grow(run.Segment.DiameterMm / 2))))
            {
                return true;
            }

            var (dx, dy) = (Math.Abs(b.X - a.X), Math.Abs(b.Y - a.Y));
            if ((dy > dx + 1 && Xs.Any(x => Math.Abs(a.X - x) < ClearMm)) || (dx > dy + 1 && Ys.Any(y => Math.Abs(a.Y - y) < ClearMm)))
            {
                return true;
            }
        }

        return false;
    }

    private IEnumerable<double> Xs => Enumerable.Range(1, Columns - 1).Select(i => First.X + (i * First.Width));

    private IEnumerable<double> Ys => Enumerable.Range(1, Rows - 1).Select(i => First.Y + (i * First.Height));
}

/// <summary>The line at which two boards meet, counted from nought; from top to bottom or from left to right.</summary>
internal sealed record MatchLine(int One, int Other, Point From, Point To)
{
    public bool IsUpright => Math.Abs(To.X - From.X) < Math.Abs(To.Y - From.Y);

    public Point Middle => new((From.X + To.X) / 2, (From.Y + To.Y) / 2);

    /// <summary>The runs that cross it and how far from their start, from the top or from the left.</summary>
    public IEnumerable<(BoardRun Run, double Mm)> Crossings(ImmutableArray<BoardRun> runs)
    {
        var all = new List<(BoardRun Run, double Mm, double Along)>();
        foreach (var run in runs)
        {
            var gone = 0.0;
            for (var i = 0; i < run.Flat.Length - 1; i++)
            {
                var (a, b) = (run.Flat[i], run.Flat[i + 1]);
                var (fromA, fromB) = IsUpright ? (a.X - From.X, b.X - From.X) : (a.Y - From.Y, b.Y - From.Y);
                if ((fromA < 0) != (fromB < 0))
                {
                    var part = fromA / (fromA - fromB);
                    var along = IsUpright ? a.Y + (part * (b.Y - a.Y)) - From.Y : a.X + (part * (b.X - a.X)) - From.X;
                    if (along >= 0 && along <= (IsUpright ? To.Y - From.Y : To.X - From.X))
                    {
                        all.Add((run, gone + (part * BoardRun.Length(b - a)), along));
                    }
                }

                gone += BoardRun.Length(b - a);
            }
        }

        return all.OrderBy(c => c.Along).Select(c => (c.Run, c.Mm));
    }
}
