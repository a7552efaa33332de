using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Writing;
using HarnessDraw.Writing.CutList;

namespace HarnessDraw.Cli.Commands;

/// <summary>'cut': the cut list as CSV.</summary>
internal static class CutCommand
{
    private static readonly ImmutableArray<string> Separators = ["comma", "semicolon", "tab"];
    private static readonly ImmutableArray<string> DecimalMarks = ["point", "comma"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var build = new Option<string?>("--build") { Description = "One build only: option=choice, more with a comma between", HelpName = "CHOICES" };
        var separator = ListedOption.One("--separator", "What parts the cells", Separators, "comma");
        var mark = ListedOption.One("--decimal", "Decimal mark", DecimalMarks, "point");
        var bom = new Option<bool>("--mark") { Description = "Begin with a UTF-8 mark, for spreadsheets that need one" };
        var output = CommonArguments.Out("usual: the text goes to standard output");
        var command = new ExampledCommand(
            "cut",
            "Print the cut list as CSV, one row a wire",
            "harnessdraw cut examples/brackmere-six.yaml > cut-list.csv",
            "harnessdraw cut examples/brackmere-six.yaml --separator semicolon --decimal comma --mark --out bench")
        {
            file, build, separator, mark, bom, output,
        };
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var options = new CsvOptions
            {
                Separator = parsed.GetValue(separator) switch { "semicolon" => ';', "tab" => '\t', _ => ',' },
                DecimalMark = parsed.GetValue(mark) == "comma" ? ',' : '.',
                ByteOrderMark = parsed.GetValue(bom),
            };
            var plan = parsed.GetValue(build) is { } text ? planned.Plan.For(BuildChoice.Read(text, planned.Plan.Harness)) : planned.Plan;
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(plan.Harness.Id)}.cut-list.csv", CutListCsvWriter.Write(plan, options));
            return ExitCode.Done;
        });
        return command;
    }
}
