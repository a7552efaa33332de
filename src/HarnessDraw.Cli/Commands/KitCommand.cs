using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Cli.Commands;

/// <summary>'kit': lists for the bench, one at a time or all into a folder.</summary>
internal static class KitCommand
{
    private static readonly ImmutableArray<string> Lists = ["bags", "crimps", "insertion", "labels", "coverings", "splices", "builds"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var list = ListedOption.Several("--list", "Which lists", Lists, Lists);
        var format = ListedOption.One("--format", "Form of the lists", ListOutput.Formats, "csv");
        var output = CommonArguments.Out("usual: the first list goes to standard output");
        var command = new ExampledCommand(
            "kit",
            "Bags a branch, crimps by die with a pull-test log, insertion lists, labels for a printer, coverings, splices",
            "harnessdraw kit examples/brackmere-six.yaml --list labels",
            "harnessdraw kit examples/brackmere-six.yaml --build usual --out bench")
        {
            file, list, format, output,
        };
        orders.AddTo(command);
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var order = orders.OrderOf(parsed, planned.Plan);
            var shown = order.Shown;
            ImmutableArray<ListTable> tables =
            [
                .. parsed.GetValue(list).Select(l => l switch
                {
                    "bags" => SupplyTables.Bags(order),
                    "crimps" => SupplyTables.Crimps(order),
                    "insertion" => InsertionTables.ByConnector(shown),
                    "labels" => InsertionTables.Labels(shown),
                    "builds" => InsertionTables.Builds(planned.Plan),
                    "coverings" => SupplyTables.Coverings(shown),
                    _ => InsertionTables.Splices(shown),
                }),
            ];
            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, order, "kit", tables);
            return ExitCode.Done;
        });
        return command;
    }
}
