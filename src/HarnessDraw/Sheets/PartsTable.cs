using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>What the short names in the cut list stand for, with how many are needed: terminals, splices, seals.</summary>
internal sealed class PartsTable
{
    private const double RowMm = 5;
    private readonly ImmutableArray<PartLine> lines;

    public PartsTable(Plan plan, TerminalKeys keys)
    {
        var catalogue = plan.Harness.Catalogue;
        ImmutableArray<WireEnd> ends = [.. plan.Wires.SelectMany(w => new[] { w.From, w.To })];
        var terminals = keys.Used(ends).Select(id => new PartLine(keys.KeyOf(id), id, TerminalWords(catalogue.Terminals.FirstOrDefault(t => t.Id == id)), ends.Count(e => e.Terminal == id)));
        var splices = plan.Splices.GroupBy(s => s.Part ?? "–", StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new PartLine("splice", g.Key, catalogue.Splices.FirstOrDefault(s => s.Id == g.Key)?.Title ?? "", g.Count()));
        var seals = ends.Where(e => e.Seal is not null).GroupBy(e => e.Seal!, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new PartLine("seal", g.Key, catalogue.Seals.FirstOrDefault(s => s.Id == g.Key)?.Title ?? "", g.Count()));
        lines = [.. terminals, .. splices, .. seals];
    }

    public bool IsEmpty => lines.IsEmpty;

    /// <summary>How many lines fit into a height, in two columns.</summary>
    public static int Capacity(double heightMm) => Math.Max(0, (int)Math.Floor((heightMm - 14) / RowMm)) * 2;

    public int Count => lines.Length;

    /// <summary>Paints lines <paramref name="from"/> on, at most <paramref name="most"/>, in two columns.</summary>
    public void Paint(Pen pen, Box box, int from, int most)
    {
        pen.Text("TERMINALS, SPLICES AND SEALS", box.X + 4, box.Y + 7, box.Width - 8, TextStyle.Bold.At(3.5));
        var shown = lines.Skip(from).Take(most).ToList();
        var perColumn = (shown.Count + 1) / 2;
        var width = (box.Width - 14) / 2;
        for (var i = 0; i < shown.Count; i++)
        {
            var left = box.X + 4 + (i < perColumn ? 0 : width + 6);
            Line(pen, shown[i], left, box.Y + 14 + (i % Math.Max(1, perColumn) * RowMm), width);
        }
    }

    private static void Line(Pen pen, PartLine line, double left, double y, double width)
    {
        pen.Text(line.Key, left, y, 12, TextStyle.Bold);
        pen.Text($"{line.Count.ToString(CultureInfo.InvariantCulture)} ×", left + 20, y, 9, TextStyle.Plain.Right);
        pen.Text(line.Id, left + 22, y, 30);
        pen.Text(line.Words, left + 54, y, width - 54);
    }

    private static string TerminalWords(Model.TerminalPart? part)
    {
        if (part is null)
        {
            return "not in the catalogue";
        }

        var range = $"{Figure(part.MinAreaMm2)} to {Figure(part.MaxAreaMm2)} mm², strip {Figure(part.StripMm)} mm";
        return part.Title.Contains("mm", StringComparison.Ordinal) ? part.Title : $"{part.Title}, {range}";
    }

    private static string Figure(double value) => Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    private sealed record PartLine(string Key, string Id, string Words, int Count);
}
