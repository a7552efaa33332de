using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>
/// Two crosses on a board, 1000 mm apart across it: a print glued from tiles that is skewed or stretched shows there, where a bar on one tile does not (common practice, no source).
/// </summary>
internal static class BoardCrosses
{
    public const double ApartMm = 1000;
    private const double ArmMm = 6;
    private const double StepMm = 20;
    private const double ClearMm = 4;
    private const string Words = "1000 ±3 mm to the other cross";
    private static readonly TextStyle Style = TextStyle.Plain.At(3.5);

    // 3-4-5 and 7-24-25 triangles: both ways at once where the board is wide enough, else nearly along it
    private static readonly ImmutableArray<Point> Ways = [new(800, 600), new(800, -600), new(600, 800), new(600, -800), new(960, 280), new(960, -280), new(280, 960), new(280, -960), new(1000, 0), new(0, 1000)];

    /// <summary>Paints them where no run passes, and keeps their room; a board without such room, or shorter, has none.</summary>
    public static void Paint(Pen pen, Box board, BoardLabels labels)
    {
        foreach (var way in Ways)
        {
            for (var y = board.Y; y < board.Bottom; y += StepMm)
            {
                for (var x = board.X; x < board.Right; x += StepMm)
                {
                    Box[] rooms = [Room(new(x, y)), Room(new(x + way.X, y + way.Y))];
                    if (rooms.All(r => board.Contains(r) && labels.IsFree(r)))
                    {
                        Cross(pen, new(x, y));
                        Cross(pen, new(x + way.X, y + way.Y));
                        foreach (var room in rooms)
                        {
                            labels.Take(room);
                        }

                        return;
                    }
                }
            }
        }
    }

    private static Box Room(Point at) => Box.FromEdges(at.X - ArmMm - ClearMm, at.Y - ArmMm - ClearMm, at.X + ArmMm + 3 + Pen.Width(Words, Style) + ClearMm, at.Y + ArmMm + ClearMm);

    private static void Cross(Pen pen, Point at)
    {
        foreach (var line in new[] { Outline.Line(at.X - ArmMm, at.Y, at.X + ArmMm, at.Y), Outline.Line(at.X, at.Y - ArmMm, at.X, at.Y + ArmMm) })
        {
            pen.Add(new PathItem(line) { Stroke = new(Ink.Black, 0.25), Tag = new() { Title = "cross of the board" } });
        }

        pen.Letters(Words, at.X + ArmMm + 3, at.Y + (Style.CapMm / 2), Style);
    }
}
