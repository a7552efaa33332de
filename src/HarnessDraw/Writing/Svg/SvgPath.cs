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
        var relative = HasSeveralRuns(outline);
        var (at, start) = ((X: 0L, Y: 0L), (X: 0L, Y: 0L));
        foreach (var step in outline.Steps)
        {
            var from = relative ? at : (X: 0, Y: 0);
            var d = new StepText(xml.Room(MostBytesOfStep));
            switch (step)
            {
                case PathStep.LineTo(var to):
                    at = Line(ref d, to, at, from, relative);
                    break;
                case PathStep.MoveTo(var to):
                    start = Pair(ref d, relative ? 'm' : 'M', to, from);
                    at = start;
                    break;
                case PathStep.ArcTo(var to, var radius, var clockwise):
                    var thousandths = SvgNumber.Thousandths(radius);
                    d.Add(relative ? 'a' : 'A', thousandths);
                    d.Add(' ', thousandths);
                    d.Add(' ', 0);
                    d.Add(' ', 0);
                    d.Add(' ', clockwise ? 1000 : 0);
                    at = Pair(ref d, ' ', to, from);
                    break;
                case PathStep.CurveTo(var one, var two, var to):
                    Pair(ref d, relative ? 'c' : 'C', one, from);
                    Pair(ref d, ' ', two, from);
                    at = Pair(ref d, ' ', to, from);
                    break;
                default:
                    d.Add(relative ? 'z' : 'Z');
                    at = start;
                    break;
            }

            xml.Took(d.Length);
        }
    }

    private static bool HasSeveralRuns(Outline outline)
    {
        var runs = 0;
        foreach (var step in outline.Steps)
        {
            runs += step is PathStep.MoveTo ? 1 : 0;
        }

        return runs > 1;
    }

    // places in thousandths
    private static (long X, long Y) Line(ref StepText d, Point to, (long X, long Y) at, (long X, long Y) from, bool relative)
    {
        var (x, y) = (SvgNumber.Thousandths(to.X), SvgNumber.Thousandths(to.Y));
        if (y == at.Y)
        {
            d.Add(relative ? 'h' : 'H', x - from.X);
        }
        else if (x == at.X)
        {
            d.Add(relative ? 'v' : 'V', y - from.Y);
        }
        else
        {
            d.Add(relative ? 'l' : 'L', x - from.X);
            d.Add(' ', y - from.Y);
        }

        return (x, y);
    }

    private static (long X, long Y) Pair(ref StepText d, char command, Point p, (long X, long Y) from)
    {
        var (x, y) = (SvgNumber.Thousandths(p.X), SvgNumber.Thousandths(p.Y));
        d.Add(command, x - from.X);
        d.Add(' ', y - from.Y);
        return (x, y);
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
