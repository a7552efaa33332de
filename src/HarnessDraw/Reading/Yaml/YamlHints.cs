using HarnessDraw.Diagnostics;
using YamlDotNet.Core;

namespace HarnessDraw.Reading;

/// <summary>What a broken file most likely lacks, in words for who wrote it; the parser's own words name its grammar.</summary>
internal static class YamlHints
{
    public const string Usual = "look for a missing bracket, quote or colon";

    /// <summary>A better place than the parser's, where it points far away from the mistake.</summary>
    public static SourceSpan Place(string file, string text, YamlException broken) =>
        TabLine(text, broken) is { } line ? new(file, line.Number, line.Column)
        : KeyWithoutColon(text, broken) is { } column ? new(file, (int)broken.Start.Line, column)
        : new(file, (int)broken.Start.Line, (int)broken.Start.Column);

    /// <summary>True where the mistake is certain to be in that line alone, so that the file can be read on without it: keys of its own below would hang on nothing.</summary>
    public static bool IsOfOneLine(string text, YamlException broken, int line)
    {
        static int Indent(string l) => l.Length - l.TrimStart(' ', '\t').Length;
        if (TabLine(text, broken) is null && KeyWithoutColon(text, broken) is null)
        {
            return false;
        }

        var next = text.Split('\n').Skip(line).FirstOrDefault(l => l.Trim().Length > 0 && !l.TrimStart().StartsWith('#'));
        return next is null || next.Contains('\t', StringComparison.Ordinal) || Indent(next) <= Indent(Line(text, line));
    }

    public static string Hint(string text, YamlException broken)
    {
        var says = broken.Message;
        if (says.Contains("tab", StringComparison.Ordinal) && TabLine(text, broken) is not null)
        {
            return "indent with spaces; YAML takes no tabs there";
        }

        if (KeyWithoutColon(text, broken) is not null)
        {
            return "a key needs a colon and a space after it: 'key: { ... }'";
        }

        if (says.Contains("quoted scalar", StringComparison.Ordinal))
        {
            return "close the quote at the end of the text";
        }

        if (says.Contains("flow", StringComparison.Ordinal))
        {
            return "look for a missing comma or bracket; text with ': ' or ', ' in it needs quotes";
        }

        if (says.Contains("block collection", StringComparison.Ordinal))
        {
            return "a list ('- ...') and keys ('name: ...') cannot stand in one block";
        }

        return !says.Contains("block mapping", StringComparison.Ordinal) ? Usual
            : Line(text, (int)broken.Start.Line).Contains(':', StringComparison.Ordinal) ? "keys of one block start in one column: check the spaces in front of this line and the one above"
            : "a key needs a colon and a space after it: 'key: value'";
    }

    private static (int Number, int Column)? TabLine(string text, YamlException broken)
    {
        if (!broken.Message.Contains("tab", StringComparison.Ordinal))
        {
            return null;
        }

        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var indent = lines[i].Length - lines[i].TrimStart(' ', '\t').Length;
            var tab = lines[i].AsSpan(0, indent).IndexOf('\t');
            if (tab >= 0 && lines[i].Trim().Length > 0)
            {
                return (i + 1, tab + 1);
            }
        }

        return null;
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
