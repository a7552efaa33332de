using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Cli.Commands;

/// <summary>'kit': lists for the bench, one at a time or all into a folder.</summary>
internal static class KitCommand
{
    private static readonly ImmutableArray<string> Lists = ["bags", "crimps", "insertion", "labels", "coverings", "splices", "cables", "builds", "times"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var files = new ListFiles();
        var csv = new CsvArguments();
        var list = ListedOption.Several("--list", "Which lists", Lists, Lists);
        var format = ListedOption.One("--format", "Form of the lists", ListOutput.Formats, "csv");
        var output = CommonArguments.Out("usual: the first list goes to standard output");
        var command = new ExampledCommand(
            "kit",
            "Bags a branch, crimps by die with a pull-test log, insertion lists, labels for a printer, coverings, splices, cables, builds, times",
            "harnessdraw kit examples/brackmere-six.yaml --list labels",
            "harnessdraw kit examples/brackmere-six.yaml --build usual --out bench")
        {
            file, files.Times, list, format, output,
        };
        orders.AddTo(command);
        csv.AddTo(command);
        command.SetAction(parsed =>
        {
            if (files.TimesOf(parsed, terminal) is not { } times || orders.Read(parsed, terminal, parsed.GetRequiredValue(file)) is not { } run)
            {
                return ExitCode.Problems;
            }

            var order = run.Order;
            var shown = order.Shown;
            ImmutableArray<ListTable> tables =
            [
                .. parsed.GetValue(list).Select(l => l switch
                {
                    "bags" => SupplyTables.Bags(order),
                    "crimps" => SupplyTables.Crimps(order),
                    "insertion" => InsertionTables.ByConnector(shown),
                    "labels" => InsertionTables.Labels(order),
                    "cables" => InsertionTables.Cables(order),
                    "builds" => InsertionTables.Builds(order.Plan),
                    "coverings" => SupplyTables.Coverings(shown),
                    "times" => SupplyTables.Times(TimeEstimate.Of(order, times)),
                    _ => InsertionTables.Splices(shown),
                }),
            ];
            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, csv.OptionsOf(parsed), order, "kit", tables);
            return ExitCode.Done;
        });
        return command;
    }
}
