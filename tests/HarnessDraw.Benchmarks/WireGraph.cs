using System.Text;
using HarnessDraw.Planning;

namespace HarnessDraw.Benchmarks;

/// <summary>The wires of a plan in the DOT language: things with their pins as fixed ports, splices as points, a label at both ends of a wire.</summary>
internal static class WireGraph
{
    public static string Write(Plan plan)
    {
        var text = new StringBuilder("graph harness {\n  rankdir=LR;\n  node [shape=record];\n");
        var ends = plan.Wires.SelectMany(w => new[] { w.From, w.To }).ToList();
        foreach (var splice in plan.Splices)
        {
            text.Append($"  {Quoted(splice.Id)} [shape=point];\n");
        }

        foreach (var thing in ends.Where(e => !e.IsSplice).GroupBy(e => e.At).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var pins = thing.Select(e => e.Pin ?? "").Distinct().OrderBy(p => p.Length).ThenBy(p => p, StringComparer.Ordinal).Select(p => $"<{Port(p)}> {Escaped(p)}");
            text.Append($"  {Quoted(thing.Key)} [label=\"{Escaped(thing.Key)}|{{{string.Join('|', pins)}}}\"];\n");
        }

        foreach (var wire in plan.Wires)
        {
            var label = Quoted($"{wire.Id} {wire.Colour} {wire.SizeLabel}");
            text.Append($"  {Node(wire.From)} -- {Node(wire.To)} [taillabel={label}, headlabel={label}];\n");
        }

        return text.Append("}\n").ToString();
    }

    private static string Node(WireEnd end) => end.IsSplice ? Quoted(end.At) : $"{Quoted(end.At)}:{Port(end.Pin ?? "")}";

    private static string Quoted(string text) => $"\"{text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static string Port(string pin) => "p" + string.Concat(pin.Select(c => char.IsAsciiLetterOrDigit(c) ? c.ToString() : $"_{(int)c}_"));

    private static string Escaped(string text) => string.Concat(text.Select(c => "\\\"{}|<> ".Contains(c, StringComparison.Ordinal) ? $"\\{c}" : c.ToString()));
}
