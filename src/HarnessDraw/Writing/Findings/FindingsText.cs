using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Findings;

/// <summary>Findings for a terminal: place, severity and rule, then message, builds, cure, source and waiver.</summary>
internal static class FindingsText
{
    public static string Write(ImmutableArray<Finding> findings, ImmutableArray<Margin> closest, RuleSettings settings)
    {
        var text = new StringBuilder();
        foreach (var finding in findings)
        {
            Append(text, finding);
        }

        if (!closest.IsEmpty)
        {
            text.Append("Closest to the limit:\n");
            foreach (var margin in closest)
            {
                text.Append($"  {margin.Rule}: {OneLine(margin.ToString())}\n");
            }

            text.Append('\n');
        }

        if (settings.File is { } file)
        {
            text.Append($"Rules changed by {OneLine(file)}: {(settings.Changes.IsEmpty ? "none" : string.Join("; ", settings.Changes))}\n");
        }

        return text.Append(Summary(findings)).Append('\n').ToString();
    }

    /// <summary>'2 errors, 5 warnings, 3 pieces of advice, 1 waived'.</summary>
    public static string Summary(ImmutableArray<Finding> findings)
    {
        var open = findings.Where(f => f.WaivedBy is null).ToList();
        int Of(Severity severity) => open.Count(f => f.Severity == severity);
        var waived = findings.Length - open.Count;
        var text = findings.IsEmpty
            ? "No findings"
            : $"{Many(Of(Severity.Error), "error", "errors")}, {Many(Of(Severity.Warning), "warning", "warnings")}, {Many(Of(Severity.Advice), "piece of advice", "pieces of advice")}";
        return $"{text}{(waived > 0 ? $", {waived} waived" : "")}.";
    }

    private static void Append(StringBuilder text, Finding finding)
    {
        var at = finding.At is { } span ? $"{OneLine(span.File)}:{span.Line}:{span.Column}: " : "";
        var builds = finding.Builds.IsAlways ? "" : $"only with {OneLine(finding.Builds.ToString())}: ";
        text.Append($"{at}{SeverityWord(finding.Severity)} {finding.Rule}: {builds}{OneLine(finding.Message)}\n");
        if (finding.Cure is { } cure)
        {
            text.Append($"  cure: {OneLine(cure)}\n");
        }

        if (finding.Source is { } source)
        {
            text.Append($"  source: {OneLine(source)}\n");
        }

        if (finding.WaivedBy is { } waiver)
        {
            text.Append($"  waived: {OneLine(waiver.Because)} ({OneLine(waiver.By)}, {OneLine(waiver.On)})\n");
        }

        text.Append('\n');
    }

    internal static string SeverityWord(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "advice",
    };

    // names come from the description: no control character may move a terminal's cursor or fake a line
    private static string OneLine(string text) => string.Concat(text.Select(c => char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') ? ' ' : c));

    private static string Many(int count, string one, string many) => $"{count} {(count == 1 ? one : many)}";
}
