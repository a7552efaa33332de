using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Cli;

/// <summary>Messages about the input on the terminal, with the severity in its colour.</summary>
internal static class DiagnosticText
{
    private const long LargestShown = 4_000_000;

    /// <param name="terminal">Where to.</param>
    /// <param name="diagnostics">All of them, in the order to say them.</param>
    /// <param name="files">Where the input files come from, to show their lines.</param>
    public static void Say(Terminal terminal, IEnumerable<Diagnostic> diagnostics, IFileSource files)
    {
        var known = new Dictionary<string, string?>(StringComparer.Ordinal);
        foreach (var diagnostic in diagnostics)
        {
            terminal.Messages.Write(Painted(terminal, diagnostic, DiagnosticPrinter.Print([diagnostic], TextOf)));
        }

        string? TextOf(string file)
        {
            if (!known.TryGetValue(file, out var text))
            {
                known[file] = text = Read(files, file);
            }

            return text;
        }
    }

    /// <summary>Control and direction characters of the input cannot act on the terminal.</summary>
    public static string Plain(string text) => string.Concat(text.Select(c => char.IsControl(c) || IsDirectionMark(c) ? '\uFFFD' : c));

    private static string Painted(Terminal terminal, Diagnostic diagnostic, string text)
    {
        if (!terminal.Colour)
        {
            return text;
        }

        var (word, colour) = diagnostic.Severity switch
        {
            Severity.Error => ("error", "1;31"),
            Severity.Warning => ("warning", "1;33"),
            _ => ("advice", "1;36"),
        };
        var head = $"{word} {diagnostic.Code}:";
        var at = text.IndexOf(head, StringComparison.Ordinal);
        return at < 0 ? text : text[..at] + terminal.Paint(head, colour) + text[(at + head.Length)..];
    }

    private static string? Read(IFileSource files, string file)
    {
        try
        {
            return files.Exists(file) && files.SizeBytes(file) <= LargestShown ? files.ReadText(file) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static bool IsDirectionMark(char c) => c is '\u200E' or '\u200F' or '\u061C' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069');
}
