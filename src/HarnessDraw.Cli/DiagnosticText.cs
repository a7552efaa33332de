using System.Text;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Cli;

/// <summary>Messages about the input as people read them: place, code, text, the line with a caret, a hint, the other place.</summary>
internal static class DiagnosticText
{
    private const int LongestLine = 160;

    /// <param name="terminal">Where to.</param>
    /// <param name="diagnostics">All of them, in the order to say them.</param>
    /// <param name="lineOf">The text of a line of an input file, or null when it cannot be had.</param>
    public static void Say(Terminal terminal, IEnumerable<Diagnostic> diagnostics, Func<string, int, string?> lineOf)
    {
        foreach (var d in diagnostics)
        {
            Say(terminal, d, lineOf);
        }
    }

    private static void Say(Terminal terminal, Diagnostic d, Func<string, int, string?> lineOf)
    {
        var (word, colour) = d.Severity switch
        {
            Severity.Error => ("error", "1;31"),
            Severity.Warning => ("warning", "1;33"),
            _ => ("advice", "1;36"),
        };
        var place = d.At is { } at ? $"{Plain(at.File)}:{at.Line}:{at.Column}: " : "";
        terminal.Say($"{place}{terminal.Paint($"{word} {d.Code}:", colour)} {Plain(d.Message)}");
        if (d.At is { } where)
        {
            ShowLine(terminal, where, lineOf(where.File, where.Line), colour);
        }

        if (d.Hint is { } hint)
        {
            terminal.Say($"    hint: {Plain(hint)}");
        }

        if (d.Other is { } other)
        {
            terminal.Say($"    see also {Plain(other.File)}:{other.Line}:{other.Column}");
        }
    }

    private static void ShowLine(Terminal terminal, SourceSpan span, string? line, string colour)
    {
        if (line is null || span.Column < 1 || span.Column > line.Length + 1)
        {
            return;
        }

        var start = span.Column - 1;
        var from = start > LongestLine - 40 ? start - 40 : 0;
        var shown = line.Substring(from, Math.Min(LongestLine, line.Length - from));
        var caretAt = start - from;
        var length = Math.Clamp(span.Length, 1, Math.Max(1, shown.Length - caretAt));
        terminal.Say("    " + Plain(shown.Replace('\t', ' ')));
        terminal.Say("    " + new string(' ', caretAt) + terminal.Paint(new string('^', length), colour));
    }

    /// <summary>Control and direction characters of the input cannot act on the terminal.</summary>
    internal static string Plain(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            plain.Append(char.IsControl(c) || IsDirectionMark(c) ? '\uFFFD' : c);
        }

        return plain.ToString();
    }

    private static bool IsDirectionMark(char c) => c is '\u200E' or '\u200F' or '\u061C' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
