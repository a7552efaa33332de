using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Bars of exactly 100 mm and 4 in: who prints a sheet at 1:1 lays a rule on them before trusting it.</summary>
internal static class CheckBars
{
    public const double MetricMm = 100;
    public const double InchMm = 101.6;
    private const double ThickMm = 1.6;

    /// <summary>Room that the level bars and their words need below <c>y</c>, mm.</summary>
    public const double LevelMm = 13;

    /// <summary>Room that the upright bars and their words need right of <c>x</c>, mm.</summary>
    public const double UprightMm = 15;

    public static void Level(Pen pen, double x, double y)
    {
        Bar(pen, new Box(x, y, MetricMm, ThickMm), "check bar 100 mm, level");
        pen.Letters("100 mm", x + MetricMm + 3, y + 2.2, TextStyle.Bold);
        Bar(pen, new Box(x, y + 6, InchMm, ThickMm), "check bar 4 in, level");
        pen.Letters("4 in", x + InchMm + 3, y + 8.2, TextStyle.Bold);
    }

    public static void Upright(Pen pen, double x, double y)
    {
        Bar(pen, new Box(x, y, ThickMm, MetricMm), "check bar 100 mm, upright");
        pen.Letters("100 mm", x - 1, y + InchMm + 4, TextStyle.Bold);
        Bar(pen, new Box(x + 8, y, ThickMm, InchMm), "check bar 4 in, upright");
        pen.Letters("4 in", x + 6, y + InchMm + 8.5, TextStyle.Bold);
    }

    private static void Bar(Pen pen, Box box, string title) =>
        pen.Add(new PathItem(Outline.Rectangle(box)) { Fill = Ink.Black, Tag = new() { Title = title } });
}
