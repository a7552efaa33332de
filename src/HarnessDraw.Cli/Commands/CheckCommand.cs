using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Findings;

namespace HarnessDraw.Cli.Commands;

/// <summary>'check': what is wrong or doubtful in a harness and on its sheets.</summary>
internal static class CheckCommand
{
    private static readonly ImmutableArray<string> Formats = ["text", "json", "sarif"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var format = ListedOption.One("--format", "Form of the findings", Formats, "text");
        var strict = new Option<bool>("--strict") { Description = "Warnings count as errors for the exit code" };
        var faults = new Option<bool>("--faults") { Description = "Try single faults too, in every state of the usual build: dead shorts, fuses and ground points opened, the key turned off while the engine runs, switches in pairs (text only)" };
        var advice = new Option<bool>("--advice") { Description = "Plan and solve cures of advice too, not of errors and warnings alone" };
        var rules = CommonArguments.Rules();
        var output = CommonArguments.Out("usual: the findings go to standard output");
        var command = new ExampledCommand(
            "check",
            "Hold the harness and its sheets against the design rules; waivers are honoured",
            "harnessdraw check examples/brackmere-six.yaml",
            "harnessdraw check examples/brackmere-six.yaml --faults",
            "harnessdraw check examples/brackmere-six.yaml --format sarif --out findings")
        {
            file, format, strict, faults, advice, rules, output,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(faults) && parsed.GetValue(format) != "text")
            {
                throw new WrongUsageException("--faults is told as text only");
            }

            var settings = RuleFiles.Read(terminal, parsed.GetValue(rules));
            var planned = settings is null ? null : PlannedFile.Read(terminal, parsed.GetRequiredValue(file), settings);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            // sheets show no cures: they are laid out while the rules still look
            var set = HarnessCompiler.LayOut(planned, new DrawOrder());
            planned = HarnessCompiler.Cure(parsed.GetRequiredValue(file), new DiskFiles(), settings!, planned, parsed.GetValue(advice));
            ImmutableArray<Finding> findings = [.. planned.Findings, .. set.SheetFindings];
            var margins = HarnessChecker.Margins(planned, settings!);
            var text = parsed.GetValue(format) switch
            {
                "json" => FindingsWriter.Json(findings, margins, settings!),
                "sarif" => FindingsWriter.Sarif(findings, ProgramVersion.Text),
                _ => Encoding.UTF8.GetBytes(FindingsWriter.Text(findings, margins, settings!) + (parsed.GetValue(faults) ? FaultText.Of(FaultFinder.Find(planned.Plan)) : "")),
            };
            var ending = parsed.GetValue(format) switch { "json" => "json", "sarif" => "sarif", _ => "txt" };
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(planned.Plan.Harness.Id)}.findings.{ending}", text);
            var least = parsed.GetValue(strict) ? Severity.Warning : Severity.Error;
            return findings.Any(f => f.Severity >= least && f.WaivedBy is null) ? ExitCode.Problems : ExitCode.Done;
        });
        return command;
    }
}
