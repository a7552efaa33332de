using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// The build board at 1:1: runs at their true length and width, pegs at breakouts, forks at ends, stations of splices, coverings, places of labels. Folded back where the
/// board ends; on a board of the user's size that is too small, over several boards that meet at match lines.
/// </summary>
public static class BuildBoardSheet
{
    // a board is 1220 x 2440 mm; larger ones are whole and half boards side by side
    private static readonly ImmutableArray<(double Width, double Length)> BoardsMm = [(1220, 2440), (1220, 3660), (1220, 4880), (1830, 4880), (1220, 7320), (1830, 7320), (1220, 9760), (1830, 9760), (1220, 14640), (1830, 14640)];

    /// <summary>On the board asked for (--paper 'roll 1220 x 2440') or several of them, else on the smallest of whole and half boards that holds it; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        if (shown.Tree.Segments.All(s => s.Wires.IsEmpty))
        {
            return new([]);
        }

        PageMaker Maker(Paper paper) => new(plan, findings, options with { Paper = paper }, Form(paper));
        if (options.Paper is { } asked)
        {
            return BoardGrid.Of(Maker(asked).Area).Select(grid => Over(Maker(asked), shown, grid, options.Units)).FirstOrDefault(r => r is not null)
                ?? new([]) { Refused = $"the harness at 1:1 does not lie on {asked.Name}, nor on twelve of them together, without runs too near each other: a longer or wider board, for instance 'roll 1220 x 4880'" };
        }

        return BoardsMm.Select(b => Maker(PaperSizes.Roll(b.Width, b.Length))).Select(m => Over(m, shown, new(m.Area, 1, 1), options.Units)).FirstOrDefault(r => r is not null)
            ?? new([]) { Refused = "the harness at 1:1 finds no room on one board of 1830 x 14640 mm: name a board and it goes over as many as twelve of them that meet at match lines (--paper 'roll 1830 x 4880'), or draw one build (--build); what is built elsewhere may go into a harness of its own" };
    }

    private static PageForm Form(Paper paper) => new(SheetKinds.BuildBoard, "BUILD BOARD", "board 1:1")
    {
        Aside = "this side faces you; lengths are true, angles are free",
        Caution = "Harness off the vehicle, battery disconnected there. Check the print: 100 mm must be 100 mm, both ways. Check colour and id. Sleeves, boots and seals on first; right die; no solder before crimping; no tape over labels.",
        Paper = paper,
        Scale = "1:1",
    };

    // null: runs or some words find no room
    private static SheetResult? Over(PageMaker maker, Plan plan, BoardGrid grid, UnitsShown units)
    {
        if (BoardLayout.Place(plan.Tree, grid) is not { } runs)
        {
            return null;
        }

        var labels = new BoardLabels(grid.Whole, runs);
        var marks = new MatchLines(grid, runs);
        foreach (var kept in marks.Kept().Concat(Enumerable.Range(0, grid.Count).Select(grid.Bars)))
        {
            labels.Take(kept);
        }

        var pen = new Pen(maker.BlackInk);
        foreach (var run in runs)
        {
            BoardPainter.Run(pen, run);
        }

        var painter = new BoardPainter(plan, runs, labels, units);
        painter.LabelPlaces(pen);
        painter.PegsAndForks(pen);
        foreach (var board in grid.Used(runs))
        {
            BoardCrosses.Paint(pen, grid.Cell(board), labels);
        }

        if (!marks.Words(pen, labels) || !painter.Places(pen) || !painter.Splices(pen) || !painter.Lengths(pen))
        {
            return null;
        }

        var used = grid.Used(runs);
        foreach (var board in used)
        {
            Page(maker, pen.Items, marks, grid, board, used.Length > 1 ? $"Build board {used.IndexOf(board) + 1} of {used.Length}" : null);
        }

        return maker.ToResult();
    }

    private static void Page(PageMaker maker, ImmutableArray<Item> items, MatchLines marks, BoardGrid grid, int index, string? title)
    {
        var page = maker.Begin(title);
        if (grid.Count == 1)
        {
            page.Add(items);
        }
        else
        {
            var cut = grid.Cell(index);
            page.Add(new GroupItem([.. items.Where(i => ItemBounds.Of(i)?.Overlaps(cut) == true)]) { Name = "board", Clip = cut, MoveXMm = grid.First.X - cut.X, MoveYMm = grid.First.Y - cut.Y });
            marks.Paint(page, index);
        }

        CheckBars.Upright(page, grid.Bars(0).X + 2, grid.Bars(0).Y + 1);
        var level = new Point(maker.Frame.X + 6, maker.TitleBox.Y + 8);
        CheckBars.Level(page, level.X, level.Y);
        Legend(page, Box.FromEdges(level.X + CheckBars.InchMm + 34, maker.TitleBox.Y + 2, maker.TitleBox.X - 8, maker.Frame.Bottom - 2));
    }

    private static void Legend(Pen pen, Box room)
    {
        var y = room.Y + 6;
        foreach (var line in room.Width < 120 ? [] : LineBreaker.Lines("Circle: peg Ø 6 mm. Bracket: fork at an end. Black dot: splice at its station. White box across a leg: label. Dashed: centre line, as long as the route. E: estimated. The lay order says which wire goes on first and over which pegs. Breakouts ±5 mm, ends +10 −0 mm (common practice, no source).", room.Width, TextStyle.Plain.At(3.5)))
        {
            if (y <= room.Bottom)
            {
                pen.Letters(line, room.X, y, TextStyle.Plain.At(3.5));
            }

            y += 6;
        }
    }
}
