using HarnessDraw.Diagnostics;
using YamlDotNet.Core;

namespace HarnessDraw.Reading;

/// <summary>What a broken file most likely lacks, in words for who wrote it; the parser's own words name its grammar.</summary>
internal static class YamlHints
{
    private const string Usual = "look for a missing bracket, quote or colon";
    private const string Column = "keys of one block start in one column: check the spaces in front of this line and the one above";
    private const string ListAndKeys = "a list ('- ...') and keys ('name: ...') cannot stand in one block";

    /// <summary>A better place than the parser's, where it points far away from the mistake.</summary>
    public static SourceSpan Place(string file, string text, YamlException broken) =>
        TabLine(text, broken) is { } line ? new(file, line.Number, line.Column)
        : KeyWithoutColon(text, broken) is { } column ? new(file, (int)broken.Start.Line, column)
        : new(file, (int)broken.Start.Line, (int)broken.Start.Column);

    public static bool IsTab(string text, YamlException broken) => TabLine(text, broken) is not null;

    /// <summary>Mistakes that every further line of a block gives again: those of one kind, line below line, are one.</summary>
    public static string? Repeats(string text, YamlException broken) => IsTab(text, broken) ? "tab" : Hint(text, broken) is var hint && (hint is Column or ListAndKeys) ? hint : null;

    /// <summary>The parser's words, without its own position in front.</summary>
    public static string Sentence(string text, YamlException broken)
    {
        if (IsTab(text, broken))
        {
            return "this is not well-formed YAML: a tab indents this line";
        }

        var says = broken.Message;
        var position = says.LastIndexOf("): ", StringComparison.Ordinal);
        says = (position >= 0 && says.StartsWith('(') ? says[(position + 3)..] : says).Trim().TrimEnd('.');
        return says.Length == 0 ? "this is not well-formed YAML" : "this is not well-formed YAML: " + char.ToLowerInvariant(says[0]) + says[1..];
    }

    public static string Hint(string text, YamlException broken)
    {
        var says = broken.Message;
        if (IsTab(text, broken))
        {
            return "indent with spaces; YAML takes no tabs there";
        }

        if (KeyWithoutColon(text, broken) is not null)
        {
            return "a key needs a colon and a space after it: 'key: { ... }'";
        }

        var line = Line(text, (int)broken.Start.Line);
        // at the end of a line the parser may stand in the next
        var stopped = line.Trim().Length == 0 ? Line(text, (int)broken.Start.Line - 1) : line;
        var rest = line[Math.Clamp((int)broken.Start.Column - 1, 0, line.Length)..].TrimStart();
        return says switch
        {
            _ when Has("quoted scalar") => "close the quote at the end of the text",
            _ when Has("cannot start any token") => $"text that begins with '{(rest.Length > 0 ? rest[0] : '@')}' needs quotes",
            _ when stopped.Contains(": #", StringComparison.Ordinal) => "a # begins a remark: text that begins with it needs quotes",
            _ when Has("indicator format") => "a '-' or '?' that stands alone needs quotes: \"-\"",
            _ when Has("flow") => "look for a missing comma or bracket; text with ': ' or ', ' in it needs quotes",
            _ when Has("block collection") => ListAndKeys,
            _ when Has("invalid mapping") => "text with ': ' in it needs quotes; a key of its own begins a new line",
            _ when !Has("block mapping") => Usual,
            _ when rest.StartsWith('}') || rest.StartsWith(']') => "a closing bracket too many, or an opening one is missing",
            _ when rest.StartsWith("- ", StringComparison.Ordinal) => ListAndKeys,
            _ when rest.StartsWith(',') => "text with ', ' in it needs quotes; a list needs brackets around all of it",
            _ when line.Contains(": ", StringComparison.Ordinal) || line.TrimEnd().EndsWith(':') => Column,
            _ => "a key needs a colon and a space after it: 'key: value'",
        };

        bool Has(string words) => says.Contains(words, StringComparison.Ordinal);
    }

    // the line at which the parser stopped, or the first of those that it means
    private static (int Number, int Column)? TabLine(string text, YamlException broken)
    {
        var lines = text.Split('\n');
        var stopped = (int)broken.Start.Line - 1;
        var tabs = Enumerable.Range(0, lines.Length).Where(i => TabAt(lines[i]) >= 0 && (i == stopped || broken.Message.Contains("tab", StringComparison.Ordinal)))
            .OrderBy(i => i == stopped ? 0 : 1).Take(1).ToArray();
        return tabs is [var at] ? (at + 1, TabAt(lines[at]) + 1) : null;
    }

    private static int TabAt(string line)
    {
        var indent = line.Length - line.TrimStart(' ', '\t').Length;
        return indent == line.TrimEnd().Length ? -1 : line.AsSpan(0, indent).IndexOf('\t');
    }

    // 'horn left { at: grille }': the parser trips over the first colon in the braces
    private static int? KeyWithoutColon(string text, YamlException broken)
    {
        var line = Line(text, (int)broken.Start.Line);
        var brace = line.IndexOf('{', StringComparison.Ordinal);
        return broken.Message.Contains("invalid mapping", StringComparison.Ordinal) && brace > 0 && line[..brace].TrimEnd() is { Length: > 0 } key && !key.Contains(':', StringComparison.Ordinal) && !key.TrimStart().StartsWith('-')
            ? key.Length + 1 : null;
    }

    private static string Line(string text, int number) => text.Split('\n').ElementAtOrDefault(number - 1) ?? "";
}
