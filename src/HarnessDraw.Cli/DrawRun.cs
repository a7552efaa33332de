using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Sheets;
using HarnessDraw.Tracing;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli;

/// <summary>One run of 'draw': plans, lays out, writes, and says what was written and what stands against building.</summary>
internal sealed class DrawRun(Terminal terminal, DrawOrder order, string? build, string? about, string? ruleFile, string? since, string? folder)
{
    public int Run(string descriptionFile)
    {
        var planned = RuleFiles.Read(terminal, ruleFile) is { } rules ? PlannedFile.Read(terminal, descriptionFile, rules) : null;
        if (planned is null)
        {
            return ExitCode.Problems;
        }

        var asked = HarnessCompiler.Complete(build is null ? order : order with { Build = BuildChoice.Read(build, planned.Plan.Harness) }, planned);
        if (about is not null)
        {
            var shown = asked.Build is { } choice ? planned.Plan.For(choice) : planned.Plan;
            var trace = CircuitTracer.Trace(shown, about);
            DiagnosticText.Say(terminal, trace.Diagnostics, new DiskFiles());
            if (trace.Failed)
            {
                return ExitCode.WrongUsage;
            }

            asked = asked with { About = [.. trace.Value!.Ways.Select(w => w.Circuit).Distinct(StringComparer.Ordinal)] };
        }

        asked = ruleFile is null ? asked : asked with { Rules = Path.GetFileName(ruleFile) };
        if (since is not null)
        {
            if (ChangesSince(since, planned.Plan, asked) is not { } changes)
            {
                return ExitCode.Problems;
            }

            asked = asked with { Changes = changes };
        }

        var set = HarnessCompiler.LayOut(planned, asked);
        var output = folder is null ? OutputFolder.BesideFile(descriptionFile) : new OutputFolder(folder);
        var files = HarnessCompiler.Write(set, asked);
        FileWriting.WriteAll(terminal, output, files);
        return Report(set, output, files);
    }

    private ChangeMarks? ChangesSince(string file, Plan plan, DrawOrder asked)
    {
        if (BuiltState.Read(terminal, file, asked) is not { } built)
        {
            return null;
        }

        var compared = HarnessCompiler.ChangesSince(built, plan);
        DiagnosticText.Say(terminal, compared.Diagnostics, new DiskFiles());
        return compared.Failed ? null : compared.Value;
    }

    private int Report(DrawingSet set, OutputFolder output, ImmutableArray<OutputFile> files)
    {
        terminal.Say($"{files.Length} files written to {DiagnosticText.Plain(output.Path)}");
        if (set.Figures?.ToScale is { } scale)
        {
            terminal.Say($"lengths on the wall chart: {scale}");
        }

        foreach (var refused in set.Refused)
        {
            terminal.SayError($"the {refused.Kind} is not drawn: {DiagnosticText.Plain(refused.Because)}");
        }

        FindingLines.SaySummary(terminal, set.Findings);
        return set.Refused.Length > 0 || set.Findings.Any(f => f.Severity == Severity.Error && f.WaivedBy is null) ? ExitCode.Problems : ExitCode.Done;
    }
}
