using System.Collections.Immutable;
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
    private const double StepMm = 4;

    // words of the last station
    private const double BelowMm = 10;

    public static void Add(PageMaker maker, Plan plan, TraceWay way, TraceWords words, UnitsShown units)
    {
        var rows = TraceRow.Of(plan, way, units);
        var (headline, aside) = Headline(way);
        var foot = words.Foot().ToList();
        var footMm = TraceFoot.HeightOf(foot, words.First, maker.Area.Width) + rows[^1].LeastMm(0);
        var roomMm = maker.Area.Height - HeadMm - TopMm - BelowMm;
        var parts = Parts(rows, roomMm, roomMm, footMm);

        // as even as they come: no page is left for one hop
        for (var room = roomMm - StepMm; parts.Count > 1 && room > roomMm / 3 && Parts(rows, room, roomMm, footMm) is var even && even.Count == parts.Count; room -= StepMm)
        {
            parts = even;
        }

        foreach (var (from, count) in parts)
        {
            var last = from + count == rows.Length;
            var height = Enumerable.Range(from, count - 1).Sum(i => rows[i].LeastMm(LeastMm));
            var pen = maker.Begin($"Trace, {way.Circuit}{(from > 0 ? ", continued" : "")}", headline, from > 0 ? "continued" : aside);
            var spare = Math.Max(0, roomMm - (last ? footMm : rows[from + count - 1].FurtherMm) - height) / Math.Max(1, count - 1);
            Page(pen, maker, way, words, rows.AsSpan(from, count), Math.Min(MostMm - LeastMm, spare));
            if (last)
            {
                TraceFoot.Paint(pen, foot, words.First, Box.FromEdges(maker.Area.X, maker.Area.Bottom - footMm + rows[^1].LeastMm(0), maker.Area.Right, maker.Area.Bottom));
            }
        }
    }

    // the stations of each page, the last one again first on the next; the foot stands below those of the last page
    private static List<(int From, int Count)> Parts(ImmutableArray<TraceRow> rows, double roomMm, double fullMm, double footMm)
    {
        var parts = new List<(int From, int Count)>();
        for (var from = 0; from < rows.Length - 1;)
        {
            var count = 1;
            var height = 0.0;
            while (from + count < rows.Length && (count == 1 || height + rows[from + count - 1].LeastMm(LeastMm) + rows[from + count].FurtherMm <= roomMm))
            {
                height += rows[from + count++ - 1].LeastMm(LeastMm);
            }

            // the foot needs its room: the last stations go over to the next page
            while (from + count == rows.Length && count > 2 && height + footMm > (count > 3 ? roomMm : fullMm))
            {
                height -= rows[from + --count - 1].LeastMm(LeastMm);
            }

            parts.Add((from, count));
            from += count - 1;
        }

        return parts;
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
