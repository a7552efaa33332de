using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Comparing;
using HarnessDraw.Reading;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Findings;

namespace HarnessDraw.Cli.Commands;

/// <summary>'try': what a change would do to the plan and the findings; the file stays as it is.</summary>
internal static class TryCommand
{
    private static readonly ImmutableArray<string> Formats = ["text", "json"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var sets = new Option<string[]>("--set") { Description = "A change: circuit.NAME.KEY=VALUE, thing.NAME.KEY=VALUE, fuse.NAME.KEY=VALUE, path.A to B.KEY=VALUE; may be given again", HelpName = "CHANGE", Required = true };
        var format = ListedOption.One("--format", "Form of the answer", Formats, "text");
        var rules = CommonArguments.Rules();
        var output = CommonArguments.Out("usual: the answer goes to standard output");
        var command = new ExampledCommand(
            "try",
            "What if: what a size, load, fuse or length would change in the plan and the findings, without touching the file",
            "harnessdraw try examples/brackmere-six.yaml --set 'circuit.dipped left.size=2 mm2'",
            "harnessdraw try examples/brackmere-six.yaml --set 'fuse.K19.rating=20 A' --format json")
        {
            file, sets, format, rules, output,
        };
        command.SetAction(parsed =>
        {
            var settings = RuleFiles.Read(terminal, parsed.GetValue(rules));
            var name = parsed.GetRequiredValue(file);
            var before = settings is null ? null : PlannedFile.Read(terminal, name, settings);
            if (before is null)
            {
                return ExitCode.Problems;
            }

            ImmutableArray<string> tried = [.. parsed.GetRequiredValue(sets)];
            var files = new DiskFiles();
            var edited = HarnessCompiler.Edit(name, files, tried);
            if (edited.Problem is { } problem)
            {
                throw new WrongUsageException(problem);
            }

            var after = HarnessCompiler.Plan(name, edited.Files!, settings!);
            if (after.Failed)
            {
                DiagnosticText.Say(terminal, after.Diagnostics, edited.Files!);
                terminal.Say("the change cannot be planned; the file is as it was");
                return ExitCode.Problems;
            }

            var json = parsed.GetValue(format) == "json";
            var found = json ? HarnessCompiler.Cure(name, edited.Files!, settings!, after.Value!).Findings : after.Value!.Findings;
            var difference = PlanDifference.Of(before.Plan, before.Findings, after.Value!.Plan, found);
            var (ending, content) = json
                ? ("json", DifferenceWriter.Json(tried, difference))
                : ("txt", Encoding.UTF8.GetBytes(DifferenceWriter.Text(tried, difference)));
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(before.Plan.Harness.Id)}.tried.{ending}", content);
            return after.Value.NotForBuild ? ExitCode.Problems : ExitCode.Done;
        });
        return command;
    }
}
