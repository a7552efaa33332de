using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>Lays one way over as many pages as it needs: stations down a line in the colours of its wires.</summary>
internal static class TracePages
{
    private const double LeastMm = 13.2;
    private const double MostMm = 19.6;
    private const double HeadMm = 9;
    private const double TopMm = 6;

    // words of the last station
    private const double BelowMm = 10;

    public static void Add(PageMaker maker, Plan plan, TraceWay way, TraceWords words, UnitsShown units)
    {
        var rows = TraceRow.Of(plan, way, units);
        var (headline, aside) = Headline(way);
        var foot = words.Foot().ToList();
        var footMm = TraceFoot.HeightOf(foot, words.First, maker.Area.Width) + rows[^1].LeastMm(0);
        var roomMm = maker.Area.Height - HeadMm - TopMm - BelowMm;
        for (var from = 0; from < rows.Length - 1;)
        {
            var count = 1;
            var height = 0.0;
            while (from + count < rows.Length && height + rows[from + count - 1].LeastMm(LeastMm) + rows[from + count].FurtherMm <= roomMm)
            {
                height += rows[from + count++ - 1].LeastMm(LeastMm);
            }

            var last = from + count == rows.Length;
            if (last && height + footMm > roomMm)
            {
                // the foot needs its room: the last stations go over to the next page
                while (count > 2 && height + footMm > roomMm)
                {
                    height -= rows[from + --count - 1].LeastMm(LeastMm);
                }

                last = false;
            }

            var pen = maker.Begin($"Trace, {way.Circuit}{(from > 0 ? ", continued" : "")}", headline, from > 0 ? "continued" : aside);
            var spare = Math.Max(0, roomMm - (last ? footMm : rows[from + count - 1].FurtherMm) - height) / Math.Max(1, count - 1);
            Page(pen, maker, way, words, rows.AsSpan(from, count), Math.Min(MostMm - LeastMm, spare));
            if (last)
            {
                TraceFoot.Paint(pen, foot, words.First, Box.FromEdges(maker.Area.X, maker.Area.Bottom - footMm + rows[^1].LeastMm(0), maker.Area.Right, maker.Area.Bottom));
                return;
            }

            from += count - 1;
        }
    }

    private static void Page(Pen pen, PageMaker maker, TraceWay way, TraceWords words, ReadOnlySpan<TraceRow> rows, double spareMm)
    {
        var columns = new TraceColumns(maker.Area);
        columns.PaintHead(pen, way);
        var y = maker.Area.Y + HeadMm + TopMm;
        var places = new double[rows.Length];
        for (var i = 0; i < rows.Length; i++)
        {
            places[i] = y;
            y += rows[i].LeastMm(LeastMm) + spareMm;
        }

        for (var i = 0; i < rows.Length - 1; i++)
        {
            TraceLine.PaintHop(pen, rows[i].Hop!, new(columns.LineX, places[i]), new(columns.LineX, places[i + 1]), i);
            rows[i].PaintHop(pen, columns, places[i], places[i + 1]);
        }

        for (var i = 0; i < rows.Length; i++)
        {
            TraceLine.PaintStation(pen, columns.LineX, places[i]);
            rows[i].PaintStop(pen, columns, places[i], rows[i].Stop == words.First);
        }
    }

    // 'dipped left: headlamp left, lamp 'beams 56b', 55 W' becomes a headline and what follows it
    private static (string Headline, string Aside) Headline(TraceWay way)
    {
        var rest = way.Title.StartsWith($"{way.Circuit}: ", StringComparison.Ordinal) ? way.Title[(way.Circuit.Length + 2)..] : "";
        return (way.Circuit.ToUpperInvariant(), rest);
    }
}
