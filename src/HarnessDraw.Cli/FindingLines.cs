using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Cli;

/// <summary>The short word on findings after a run: every open error in one line, and how many of the rest there are.</summary>
internal static class FindingLines
{
    private const int MostErrors = 10;

    public static void SaySummary(Terminal terminal, ImmutableArray<Finding> findings)
    {
        var open = findings.Where(f => f.WaivedBy is null).ToList();
        var errors = open.Where(f => f.Severity == Severity.Error).ToList();
        foreach (var error in errors.Take(MostErrors))
        {
            var place = error.At is { } at ? $"{DiagnosticText.Plain(at.File)}:{at.Line}:{at.Column}: " : "";
            terminal.Say($"{place}{terminal.Paint($"error {error.Rule}:", "1;31")} {DiagnosticText.Plain(error.Message)}");
        }

        if (errors.Count > MostErrors)
        {
            terminal.Say($"... and {errors.Count - MostErrors} more");
        }

        var counts = new[] { Count(errors.Count, "error"), Count(open.Count(f => f.Severity == Severity.Warning), "warning"), Count(findings.Length - open.Count, "waived finding") }.Where(c => c.Length > 0).ToList();
        if (counts.Count > 0)
        {
            terminal.Say($"{string.Join(", ", counts)}: 'harnessdraw check FILE' tells all{(errors.Count > 0 ? "; every sheet is marked NOT FOR BUILD" : "")}");
        }
    }

    private static string Count(int n, string what) => n == 0 ? "" : n == 1 ? $"1 {what}" : $"{n} {what}s";
}
