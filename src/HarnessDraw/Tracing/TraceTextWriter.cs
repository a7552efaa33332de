using System.Globalization;
using System.Text;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>A trace as text for a terminal of 96 columns, one stop or hop a line.</summary>
public static class TraceTextWriter
{
    private const int Columns = 96;
    private const int ShortestRepeat = 3;
    private const string Unknown = "–";
    private static readonly string Margin = new(' ', 36);
    private const int MostShared = 4;

    /// <summary>The whole text, lines ended by LF.</summary>
    public static string Write(Trace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        var text = new StringBuilder();
        for (var i = 0; i < trace.Ways.Length; i++)
        {
            WriteWay(text, trace.Ways[i], i == 0 ? 0 : SameStops(trace.Ways[i - 1], trace.Ways[i]));
        }

        if (!trace.Read.IsEmpty)
        {
            Line(text, "READ LAST ON THE BUILT HARNESS");
            foreach (var read in trace.Read)
            {
                Line(text, $"  {PointWords.OfNode(read.Pin)}, {read.State}: {Volts(read.Volts, "0.00")} V");
            }

            text.Append('\n');
        }

        if (!trace.NotKnown.IsEmpty)
        {
            Line(text, "NOT KNOWN");
            foreach (var note in trace.NotKnown)
            {
                Line(text, $"  - {note}");
            }

            text.Append('\n');
        }

        Line(text, "good: with the circuit on, up to 20 milliohm and 0.1 V a contact, 0.3 V a switch (a service manual quoting SAE) and 5 % of a wire's copper (the others: common practice, no source); the meter's own error comes on top.");
        Line(text, "Volts: to the grounded pole of the source, everything mated and loaded.");
        Line(text, "CAUTION: disconnect the battery before you part a connector. Do not pierce insulation.");
        return text.ToString();
    }

    // how many stops from the source on are those of the way before
    private static int SameStops(TraceWay before, TraceWay way)
    {
        var same = before.OnState == way.OnState ? before.Stops.Zip(way.Stops).TakeWhile(p => p.First == p.Second).Count() : 0;
        return same > ShortestRepeat ? same - 1 : 0;
    }

    private static void WriteWay(StringBuilder text, TraceWay way, int first)
    {
        Line(text, way.Title);
        Line(text, $"off: {way.OffState ?? Unknown}   on: {way.OnState ?? Unknown}   crank: {way.CrankState ?? Unknown}   running: {way.RunState ?? Unknown}");
        text.Append('\n');
        Line(text, $"{"off",5} {"on",5} {"crank",5} {"runs",5} {"good",6} {"lost",5}");
        if (first > 0)
        {
            Line(text, $"{Margin} as above up to {way.Stops[first].Name}");
        }

        for (var i = first; i < way.Stops.Length; i++)
        {
            WriteStop(text, way.Stops[i]);
            if (i < way.Hops.Length)
            {
                Line(text, $"{Margin} |   {HopWords(way.Hops[i])}");
            }
        }

        text.Append('\n');
    }

    private static void WriteStop(StringBuilder text, TraceStop stop)
    {
        var figures = $"{Volts(stop.OffV, "0.0"),5} {Volts(stop.OnV, "0.0"),5} {Volts(stop.CrankV, "0.0"),5} {Volts(stop.RunV, "0.0"),5} {Good(stop),6} {Volts(stop.LostV, "0.00"),5}";
        var minutes = stop.Minutes is { } m ? $"{m.ToString("0.#", CultureInfo.InvariantCulture)} min" : "";
        Line(text, $"{figures} o {string.Join("   ", new[] { stop.Name, stop.Where, stop.Probe, minutes }.Where(p => p.Length > 0))}");
    }

    // on the feed no less than, on the return no more than
    private static string Good(TraceStop stop) => stop.LimitV is not { } limit ? Unknown : stop.LimitIsLeast && Math.Abs(limit) < 0.05 ? "~0" : $"{(stop.LimitIsLeast ? ">=" : "<=")}{Volts(limit, "0.0")}";

    private static string HopWords(TraceHop hop)
    {
        var shared = hop.Shared.IsEmpty || hop.Kind == HopKind.Load ? null : $"also {string.Join(", ", hop.Shared.Take(MostShared))}{(hop.Shared.Length > MostShared ? $" and {hop.Shared.Length - MostShared} more" : "")}";
        var drop = hop.DropV is { } volts ? $"{(hop.Kind == HopKind.Load ? "across" : "drop")} {Volts(volts, "0.00")} V" : null;
        if (hop.Wire is null)
        {
            return string.Join("   ", new[] { hop.Words, drop, shared }.Where(p => !string.IsNullOrEmpty(p)));
        }

        var length = hop.CutLengthMm is { } mm ? $"{mm.ToString("0", CultureInfo.InvariantCulture)} mm{(hop.Estimated ? " E" : "")}" : "length unknown";
        return string.Join("   ", new[] { $"{hop.Wire} {hop.Colour} {hop.Size}", length, drop, hop.Words, shared }.Where(p => !string.IsNullOrEmpty(p)));
    }

    // adding zero turns a rounded negative zero into zero
    private static string Volts(double? value, string format) =>
        value is { } volts ? (Math.Round(volts, format.Length - 2, MidpointRounding.AwayFromZero) + 0.0).ToString(format, CultureInfo.InvariantCulture) : Unknown;

    private static void Line(StringBuilder text, string line)
    {
        var safe = Printable(line).TrimEnd();
        var indent = Continuation(safe);
        while (safe.Length > Columns)
        {
            var cut = safe.LastIndexOf(' ', Columns - 1, Columns - indent.Length - 8);
            cut = cut > indent.Length ? cut : Columns;
            text.Append(safe.AsSpan(0, cut).TrimEnd()).Append('\n');
            safe = indent + safe[cut..].TrimStart();
        }

        text.Append(safe).Append('\n');
    }

    // what overflows stands under the words it belongs to
    private static string Continuation(string line)
    {
        var mark = line.AsSpan().IndexOf("| ");
        if (mark >= 0)
        {
            return Margin + " |     ";
        }

        return line.Length > 38 && line.AsSpan(0, 38).EndsWith(" o") ? Margin + " |   " : "    ";
    }

    // names come from users: nothing in them may steer the terminal or turn the line around
    private static string Printable(string text)
    {
        var shown = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            var unseen = char.IsControl(c) || char.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
            shown.Append(unseen ? '?' : c);
        }

        return shown.ToString();
    }
}
