using System.CommandLine;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli.Commands;

/// <summary>'plan': everything that was worked out, as JSON.</summary>
internal static class PlanCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var build = CommonArguments.Build("One build only");
        var rules = CommonArguments.Rules();
        var output = CommonArguments.Out("usual: the text goes to standard output");
        var command = new ExampledCommand(
            "plan",
            "Print the plan as JSON: wires, segments, splices, cavities, fuses, volts, findings",
            "harnessdraw plan examples/brackmere-six.yaml > plan.json")
        {
            file, build, rules, output,
        };
        command.SetAction(parsed =>
        {
            var planned = RuleFiles.Read(terminal, parsed.GetValue(rules)) is { } settings ? PlannedFile.Read(terminal, parsed.GetRequiredValue(file), settings) : null;
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var harness = planned.Plan.Harness;
            var choices = parsed.GetValue(build) is { } text ? BuildChoice.Read(text, harness) : null;
            var set = HarnessCompiler.LayOut(planned, new DrawOrder { Sheets = ["wall-chart"], Build = choices });
            var json = HarnessCompiler.Write(set, new DrawOrder { Formats = [] }).Single(f => f.Name.EndsWith(".plan.json", StringComparison.Ordinal));
            Results.Put(terminal, parsed.GetValue(output), json.Name, json.Make());
            return ExitCode.Done;
        });
        return command;
    }
}
