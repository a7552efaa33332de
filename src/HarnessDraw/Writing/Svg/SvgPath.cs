using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>
/// An outline as the data of an SVG path, h and v where a line is level or upright: absolute commands for a single run, relative ones (less than half as
/// long) for the many small runs of a tracer. Relative steps are taken between rounded places, so that roundings do not add up.
/// </summary>
internal static class SvgPath
{
    // a curve has three places of two numbers with what stands between them
    private const int MostBytesOfStep = (6 * SvgNumber.MostDigits) + 8;

    public static void Write(Outline outline, SvgXml xml)
    {
        var pen = new Pen(xml, HasSeveralRuns(outline));
        foreach (var step in outline.Steps)
        {
            switch (step)
            {
                case PathStep.MoveTo(var to):
                    pen.Move(to);
                    break;
                case PathStep.LineTo(var to):
                    pen.Line(to);
                    break;
                case PathStep.ArcTo(var to, var radius, var clockwise):
                    pen.Arc(to, radius, clockwise);
                    break;
                case PathStep.CurveTo(var one, var two, var to):
                    pen.Curve(one, two, to);
                    break;
                case PathStep.Polygons polygons:
                    for (var i = 0; i < polygons.Count; i++)
                    {
                        pen.Polygon(polygons[i]);
                    }

                    break;
                default:
                    pen.Close();
                    break;
            }
        }
    }

    private static bool HasSeveralRuns(Outline outline)
    {
        var runs = 0;
        foreach (var step in outline.Steps)
        {
            runs += step is PathStep.MoveTo ? 1 : step is PathStep.Polygons polygons ? polygons.Count : 0;
        }

        return runs > 1;
    }

    // where the pen stands and where its run began, in thousandths
    private ref struct Pen(SvgXml xml, bool relative)
    {
        private (long X, long Y) at;
        private (long X, long Y) start;

        // what places are told from
        private readonly (long X, long Y) From => relative ? at : (0, 0);

        public void Move(Point to)
        {
            var d = Begin();
            start = Pair(ref d, relative ? 'm' : 'M', to);
            at = start;
            xml.Took(d.Length);
        }

        public void Line(Point to)
        {
            var d = Begin();
            var (x, y) = Thousandths(to);
            if (y == at.Y)
            {
                d.Add(relative ? 'h' : 'H', x - From.X);
            }
            else if (x == at.X)
            {
                d.Add(relative ? 'v' : 'V', y - From.Y);
            }
            else
            {
                d.Add(relative ? 'l' : 'L', x - From.X);
                d.Add(' ', y - From.Y);
            }

            at = (x, y);
            xml.Took(d.Length);
        }

        public void Arc(Point to, double radius, bool clockwise)
        {
            var d = Begin();
            var thousandths = SvgNumber.Thousandths(radius);
            d.Add(relative ? 'a' : 'A', thousandths);
            d.Add(' ', thousandths);
            d.Add(' ', 0);
            d.Add(' ', 0);
            d.Add(' ', clockwise ? 1000 : 0);
            at = Pair(ref d, ' ', to);
            xml.Took(d.Length);
        }

        public void Curve(Point one, Point two, Point to)
        {
            var d = Begin();
            Pair(ref d, relative ? 'c' : 'C', one);
            Pair(ref d, ' ', two);
            at = Pair(ref d, ' ', to);
            xml.Took(d.Length);
        }

        public void Close()
        {
            var d = Begin();
            d.Add(relative ? 'z' : 'Z');
            at = start;
            xml.Took(d.Length);
        }

        public void Polygon(ReadOnlySpan<Point> corners)
        {
            Move(corners[0]);
            foreach (var corner in corners[1..])
            {
                Line(corner);
            }

            Close();
        }

        private readonly StepText Begin() => new(xml.Room(MostBytesOfStep));

        private readonly (long X, long Y) Pair(ref StepText d, char command, Point p)
        {
            var (x, y) = Thousandths(p);
            d.Add(command, x - From.X);
            d.Add(' ', y - From.Y);
            return (x, y);
        }

        private static (long X, long Y) Thousandths(Point p) => (SvgNumber.Thousandths(p.X), SvgNumber.Thousandths(p.Y));
    }

    // one step as it is put together
    private ref struct StepText(Span<byte> room)
    {
        private readonly Span<byte> room = room;

        public int Length { get; private set; }

        public void Add(char command) => room[Length++] = (byte)command;

        public void Add(char before, long thousandths)
        {
            Add(before);
            Length += SvgNumber.Format(thousandths, room[Length..]);
        }
    }
}
