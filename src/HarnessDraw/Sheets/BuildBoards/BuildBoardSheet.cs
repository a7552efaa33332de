using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// The build board at 1:1: runs at their true length and width, pegs at breakouts, forks at ends, stations of splices, coverings, places of labels. Folded back where the
/// board ends.
/// </summary>
public static class BuildBoardSheet
{
    // a board is 1220 x 2440 mm; larger ones are whole and half boards side by side
    private static readonly ImmutableArray<(double Width, double Length)> BoardsMm = [(1220, 2440), (1220, 3660), (1220, 4880), (1830, 4880), (1220, 7320), (1830, 7320), (1220, 9760), (1830, 9760), (1220, 14640), (1830, 14640)];

    /// <summary>One sheet on the board asked for (--paper 'roll 1220 x 2440'), else on the smallest of whole and half boards that holds it; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        if (shown.Tree.Segments.All(s => s.Wires.IsEmpty))
        {
            return new([]);
        }

        foreach (var paper in options.Paper is { } asked ? [asked] : BoardsMm.Select(b => PaperSizes.Roll(b.Width, b.Length)))
        {
            var maker = new PageMaker(plan, findings, options with { Paper = paper }, Form(paper));
            if (BoardLayout.Place(shown.Tree, maker.Area) is { } runs && Draw(maker, shown, runs))
            {
                return maker.ToResult();
            }
        }

        return new([]) { Refused = options.Paper is { } small ? $"the harness at 1:1 does not lie on {small.Name} without runs too near each other: a longer board, for instance 'roll 1220 x 4880'" : "the harness at 1:1 finds no room on a board of 1830 x 14640 mm" };
    }

    private static PageForm Form(Paper paper) => new(SheetKinds.BuildBoard, "BUILD BOARD", "board 1:1")
    {
        Aside = "this side faces you; lengths are true, angles are free",
        Caution = "Harness off the vehicle, battery disconnected there. Check the print: 100 mm must be 100 mm. Check colour and id. Sleeves, boots and seals on first; right die; no solder before crimping; no tape over labels.",
        Paper = paper,
        Scale = "1:1",
    };

    // false: some words found no room
    private static bool Draw(PageMaker maker, Plan plan, ImmutableArray<BoardRun> runs)
    {
        var pen = new Pen(maker.BlackInk);
        var labels = new BoardLabels(maker.Area, runs);
        var bars = new Box(maker.Frame.X + 6, maker.TitleBox.Y + 4, CheckBars.InchMm + 30, 20);
        CheckBars.Level(pen, bars.X, bars.Y + 4);
        foreach (var run in runs)
        {
            BoardPainter.Run(pen, run);
        }

        var painter = new BoardPainter(plan, runs, labels);
        if (!painter.Places(pen) || !painter.Splices(pen) || !painter.Lengths(pen))
        {
            return false;
        }

        maker.Begin().Add(pen.Items);
        return true;
    }
}
