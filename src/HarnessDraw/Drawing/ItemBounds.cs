namespace HarnessDraw.Drawing;

/// <summary>The box an item surely lies within, in the coordinates it is placed in; line widths and turns included.</summary>
public static class ItemBounds
{
    /// <summary>Null for an item that draws nothing.</summary>
    public static Box? Of(Item item) => item switch
    {
        GroupItem group => Group(group),
        PathItem path => Outline(path.Outline)?.Grow((path.Stroke?.WidthMm ?? 0) / 2 * (path.Stroke?.RoundJoin == false ? 4 : 1)),
        TextItem text => Text(text),
        ImageItem image => image.Box,
        LinkItem link => link.Box,
        _ => null,
    };

    private static Box? Outline(Outline outline)
    {
        var (left, top, right, bottom) = (double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);
        var (start, at) = (default(Point), default(Point));
        foreach (var step in outline.Steps)
        {
            var reach = 0.0;
            switch (step)
            {
                case PathStep.LineTo(var to):
                    at = to;
                    break;
                case PathStep.MoveTo(var to):
                    (start, at) = (to, to);
                    break;
                case PathStep.ArcTo(var to, _, _):
                    // at most a half circle
                    reach = Length(to - at) / 2;
                    Take(at, reach);
                    at = to;
                    break;
                case PathStep.CurveTo(var one, var two, var to):
                    Take(one, 0);
                    Take(two, 0);
                    at = to;
                    break;
                case PathStep.Polygons polygons:
                    foreach (var corner in polygons.Corners)
                    {
                        Take(corner, 0);
                    }

                    (start, at) = (polygons.LastBegin, polygons.LastBegin);
                    break;
                default:
                    at = start;
                    break;
            }

            Take(at, reach);
        }

        return left <= right ? Box.FromEdges(left, top, right, bottom) : null;

        void Take(Point p, double reach)
        {
            left = p.X - reach < left ? p.X - reach : left;
            top = p.Y - reach < top ? p.Y - reach : top;
            right = p.X + reach > right ? p.X + reach : right;
            bottom = p.Y + reach > bottom ? p.Y + reach : bottom;
        }
    }

    private static Box Text(TextItem text)
    {
        var box = TextMeasure.Bounds(text);
        if (text.TurnDegrees == 0)
        {
            return box;
        }

        var turned = Transform(box.Move(-text.At.X, -text.At.Y), 0, 0, text.TurnDegrees, 1);
        return turned.Move(text.At.X, text.At.Y);
    }

    private static Box? Group(GroupItem group)
    {
        Box? all = null;
        foreach (var item in group.Items)
        {
            all = Of(item) is { } box ? all?.Union(box) ?? box : all;
        }

        if (all is { } inside && group.Clip is { } clip)
        {
            all = Box.FromEdges(Math.Max(inside.X, clip.X), Math.Max(inside.Y, clip.Y), Math.Min(inside.Right, clip.Right), Math.Min(inside.Bottom, clip.Bottom));
            all = all.Value.Width < 0 || all.Value.Height < 0 ? null : all;
        }

        return all is { } whole ? Transform(whole, group.MoveXMm, group.MoveYMm, group.TurnDegrees, group.Scale) : null;
    }

    private static Box Transform(Box box, double moveX, double moveY, double turnDegrees, double scale)
    {
        var (sin, cos) = Math.SinCos(turnDegrees * Math.PI / 180);
        Point Map(double x, double y) => new((scale * ((x * cos) - (y * sin))) + moveX, (scale * ((x * sin) + (y * cos))) + moveY);
        return Between(Map(box.X, box.Y), Map(box.Right, box.Bottom)).Union(Between(Map(box.Right, box.Y), Map(box.X, box.Bottom)));
    }

    private static Box Between(Point a, Point b) => Box.FromEdges(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));

    private static double Length(Point p) => Math.Sqrt((p.X * p.X) + (p.Y * p.Y));
}
