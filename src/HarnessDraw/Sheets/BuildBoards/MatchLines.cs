using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// What is drawn where boards meet: a chain line on both, and in words which runs cross it and how far from their last peg, so that the boards can be set to each other also
/// where the prints were trimmed.
/// </summary>
internal sealed class MatchLines(BoardGrid grid, ImmutableArray<BoardRun> runs)
{
    private const double StripMm = 8;
    private const double WordsMm = 240;
    private readonly ImmutableArray<MatchLine> lines = [.. grid.Lines.Where(l => l.Crossings(runs).Any())];
    private readonly ImmutableArray<int> used = grid.Used(runs);

    /// <summary>What words keep clear of.</summary>
    public IEnumerable<Box> Kept() => grid.Lines.Select(l => Box.FromEdges(l.From.X, l.From.Y, l.To.X, l.To.Y).Grow(StripMm / 2));

    /// <summary>The words of each line on both its boards; false where they find no room.</summary>
    public bool Words(Pen pen, BoardLabels labels)
    {
        var ok = true;
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            var style = TextStyle.Plain.At(3.5);
            var words = Says(line);
            ImmutableArray<(string, TextStyle)> all =
            [
                ($"MATCH LINE {i + 1}", TextStyle.Bold.At(5)),
                .. LineBreaker.Lines(words, Math.Min(WordsMm, grid.First.Width / 3), style).Select(l => (l, style)),
            ];
            foreach (var side in new[] { -1, 1 })
            {
                ok &= labels.PutNear(pen, line.IsUpright ? new(line.Middle.X + (side * 12), line.Middle.Y) : new(line.Middle.X, line.Middle.Y + (side * 12)), 8, grid.Cell(side < 0 ? line.One : line.Other), all);
            }
        }

        return ok;
    }

    /// <summary>The lines of one board as they lie on its sheet.</summary>
    public void Paint(Pen pen, int board)
    {
        var (dx, dy) = (grid.First.X - grid.Cell(board).X, grid.First.Y - grid.Cell(board).Y);
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].One == board || lines[i].Other == board)
            {
                var outline = Outline.Line(lines[i].From.X + dx, lines[i].From.Y + dy, lines[i].To.X + dx, lines[i].To.Y + dy);
                pen.Add(new PathItem(outline) { Stroke = new(Ink.Black, 0.5) { DashMm = [14, 2, 1, 2] }, Tag = new() { Title = $"match line {i + 1}" } });
            }
        }
    }

    private string Says(MatchLine line)
    {
        var which = string.Join("; ", line.Crossings(runs).Select(c => $"{c.Run.Segment.From} to {c.Run.Segment.To} at {Shown.Number(c.Mm)} mm from {c.Run.Segment.From}"));
        return $"Boards {used.IndexOf(line.One) + 1} and {used.IndexOf(line.Other) + 1} meet here. From the {(line.IsUpright ? "top" : "left")}: {which}.";
    }
}
