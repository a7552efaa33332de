using System.Text;

namespace HarnessDraw.Diagnostics;

/// <summary>The text form of messages: 'file:line:column: error code: text', the source line, a caret, the hint.</summary>
public static class DiagnosticPrinter
{
    private const int WidestLine = 110;

    /// <summary>Prints all messages; <paramref name="textOf"/> gives an input file's text, or null when it cannot.</summary>
    public static string Print(IEnumerable<Diagnostic> diagnostics, Func<string, string?> textOf)
    {
        ArgumentNullException.ThrowIfNull(diagnostics);
        ArgumentNullException.ThrowIfNull(textOf);
        var linesOf = new Dictionary<string, string[]>(StringComparer.Ordinal);
        var text = new StringBuilder();
        foreach (var diagnostic in diagnostics)
        {
            Append(text, diagnostic, LineOf);
        }

        return text.ToString();

        string? LineOf(SourceSpan at)
        {
            if (!linesOf.TryGetValue(at.File, out var lines))
            {
                lines = linesOf[at.File] = (textOf(at.File) ?? "").Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n');
            }

            return at.Line >= 1 && at.Line <= lines.Length ? lines[at.Line - 1] : null;
        }
    }

    private static void Append(StringBuilder text, Diagnostic diagnostic, Func<SourceSpan, string?> lineOf)
    {
        var severity = diagnostic.Severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "advice",
        };
        text.Append(Place(diagnostic.At)).Append(severity).Append(' ').Append(diagnostic.Code).Append(": ").Append(Plain(diagnostic.Message)).Append('\n');
        if (diagnostic.At is { } at && lineOf(at) is { } line)
        {
            AppendLine(text, line, at);
        }

        if (diagnostic.Hint is { } hint)
        {
            text.Append("    hint: ").Append(Plain(hint)).Append('\n');
        }

        if (diagnostic.Other is { } other)
        {
            text.Append("    see:  ").Append(Place(other).TrimEnd(' ', ':')).Append('\n');
        }
    }

    private static string Place(SourceSpan? at) => at is null ? "" : $"{Plain(at.File)}:{at.Line}:{at.Column}: ";

    // long lines are cut around the place; the caret line is built from what is shown
    private static void AppendLine(StringBuilder text, string line, SourceSpan at)
    {
        var column = Math.Clamp(at.Column - 1, 0, line.Length);
        var from = column <= WidestLine - 20 ? 0 : column - (WidestLine / 2);
        var shown = Plain(line.Substring(from, Math.Min(WidestLine, line.Length - from)));
        var caretAt = column - from;
        var length = Math.Clamp(at.Length, 1, Math.Max(1, shown.Length - caretAt));
        text.Append("    ").Append(shown.TrimEnd()).Append('\n');
        text.Append("    ").Append(' ', caretAt).Append('^', length).Append('\n');
    }

    // no control characters and no direction marks on a terminal
    private static string Plain(string text) =>
        text.AsSpan().IndexOfAnyInRange('\0', '\u001f') < 0 && !text.Any(IsUnsafe)
            ? text
            : string.Concat(text.Select(c => IsUnsafe(c) ? ' ' : c));

    private static bool IsUnsafe(char c) => char.IsControl(c) || c is >= '\u200e' and <= '\u200f' or >= '\u202a' and <= '\u202e' or >= '\u2066' and <= '\u2069';
}
