using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>An eye, and the connector as it looks at it: wires towards the eye, or contacts towards it. 20 mm wide, 7 high.</summary>
internal static class FacePictogram
{
    public const double WidthMm = 20;

    public static void Paint(Pen pen, double left, double middleY, bool mating)
    {
        PaintEye(pen, new Point(left + 3.2, middleY));
        var body = new Box(left + 11, middleY - 3.3, 5, 6.6);
        pen.Frame(body, 0.35, 0.6);
        foreach (var y in (ReadOnlySpan<double>)[-1.9, 0, 1.9])
        {
            var wireEnd = mating ? left + WidthMm : left + 7.6;
            pen.Add(Line(mating ? body.Right : body.X, middleY + y, wireEnd, 0.35));
            if (mating)
            {
                pen.Add(Line(body.X, middleY + y, body.X - 1.8, 0.9));
            }
            else
            {
                pen.Add(Line(body.Right, middleY + y, body.Right + 1.8, 0.9));
            }
        }
    }

    private static void PaintEye(Pen pen, Point centre)
    {
        var (left, right) = (new Point(centre.X - 3.2, centre.Y), new Point(centre.X + 3.2, centre.Y));
        pen.Add(new PathItem(new Outline([new PathStep.MoveTo(left), new PathStep.CurveTo(new(centre.X - 1.4, centre.Y - 2.8), new(centre.X + 1.4, centre.Y - 2.8), right), new PathStep.CurveTo(new(centre.X + 1.4, centre.Y + 2.8), new(centre.X - 1.4, centre.Y + 2.8), left), new PathStep.Close()])) { Stroke = new(Ink.Black, 0.35) });
        pen.Add(new PathItem(Outline.Circle(centre, 0.9)) { Fill = Ink.Black });
    }

    private static PathItem Line(double x1, double y, double x2, double widthMm) => new(Outline.Line(x1, y, x2, y)) { Stroke = new(Ink.Black, widthMm) };
}
