using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>One way with what it takes on paper, mm: column heads, stations down a line in the colours of its wires, its own words below the last.</summary>
internal sealed class TraceBlock
{
    /// <summary>From one station to the next, at least and at most.</summary>
    public const double LeastMm = 13.2;
    public const double MostMm = 19.6;
    private const double HeadMm = 9;
    private const double TopMm = 6;

    // words of the last station
    private const double BelowMm = 10;
    private readonly TraceWay way;
    private readonly ImmutableArray<TraceRow> rows;
    private readonly ImmutableArray<double> stepsMm;
    private readonly TraceStop? first;
    private readonly ImmutableArray<string> own;
    private readonly double ownMm;

    public TraceBlock(Plan plan, TraceWay way, TraceWords words, UnitsShown units, double widthMm)
    {
        this.way = way;
        rows = TraceRow.Of(plan, way, units);
        stepsMm = [.. rows.Select(r => r.LeastMm(LeastMm))];
        first = words.First;
        own = [.. LineBreaker.Lines(string.Join(' ', words.Own()), widthMm)];
        ownMm = TraceFoot.OwnMm(own, first);
    }

    public string Circuit => way.Circuit;

    public int Stations => rows.Length;

    public string Headline => way.Circuit.ToUpperInvariant();

    // 'dipped left: headlamp left, lamp 'beams 56b', 55 W': the circuit is the headline, the rest follows it
    public string Aside => way.Title.StartsWith($"{way.Circuit}: ", StringComparison.Ordinal) ? way.Title[(way.Circuit.Length + 2)..] : "";

    /// <summary>From a station to the next, with its stations as close as they may stand.</summary>
    public double StepMm(int station) => stepsMm[station];

    /// <summary>Height of some of its stations, as close as they may stand.</summary>
    public double HeightMm(int from, int count)
    {
        var height = HeadMm + TopMm + BelowMm + rows[from + count - 1].FurtherMm + (from + count == rows.Length ? ownMm : 0);
        for (var i = from; i < from + count - 1; i++)
        {
            height += stepsMm[i];
        }

        return height;
    }

    /// <summary>Paints some of its stations from a height downwards; each stands <paramref name="spareMm"/> further from the next than it must. Gives the height below.</summary>
    public double Paint(Pen pen, Box area, double top, int from, int count, double spareMm)
    {
        var columns = new TraceColumns(area with { Y = top });
        columns.PaintHead(pen, way);
        var y = top + HeadMm + TopMm;
        var places = new double[count];
        for (var i = 0; i < count; i++)
        {
            places[i] = y;
            y += i < count - 1 ? stepsMm[from + i] + spareMm : BelowMm + rows[from + i].FurtherMm;
        }

        for (var i = 0; i < count - 1; i++)
        {
            TraceLine.PaintHop(pen, rows[from + i].Hop!, new(columns.LineX, places[i]), new(columns.LineX, places[i + 1]), i);
            rows[from + i].PaintHop(pen, columns, places[i], places[i + 1]);
        }

        for (var i = 0; i < count; i++)
        {
            TraceLine.PaintStation(pen, columns.LineX, places[i]);
            rows[from + i].PaintStop(pen, columns, places[i], rows[from + i].Stop == first);
        }

        return from + count < rows.Length ? y : TraceFoot.PaintOwn(pen, own, first, area with { Y = y });
    }
}
