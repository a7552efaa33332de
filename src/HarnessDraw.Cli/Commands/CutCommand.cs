using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Cli.Commands;

/// <summary>'cut': the cut list as CSV, JSON or workbook, for one build, several or everything.</summary>
internal static class CutCommand
{
    private static readonly ImmutableArray<string> Formats = ["csv", "xlsx", "json"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var view = ListedOption.One("--view", "Order of the rows", CutListTables.Views, "reel");
        var format = ListedOption.One("--format", "Form of the list; xlsx holds every view, the purchase list and the kits", Formats, "csv");
        var csv = new CsvArguments();
        var files = new ListFiles();
        var output = CommonArguments.Out("usual: the text goes to standard output");
        var command = new ExampledCommand(
            "cut",
            "The cut list, one row a wire: as CSV or JSON, or as a workbook with every view and list",
            "harnessdraw cut examples/brackmere-six.yaml > cut-list.csv",
            "harnessdraw cut examples/brackmere-six.yaml --format xlsx --build '3 x usual' --out bench",
            "harnessdraw cut examples/brackmere-six.yaml --separator semicolon --decimal comma --mark --out bench")
        {
            file, view, format, files.Prices, files.Times, output,
        };
        orders.AddTo(command);
        csv.AddTo(command);
        command.SetAction(parsed =>
        {
            if (files.PricesOf(parsed, terminal) is not { } prices || files.TimesOf(parsed, terminal) is not { } times || orders.Read(parsed, terminal, parsed.GetRequiredValue(file)) is not { } run)
            {
                return ExitCode.Problems;
            }

            var harness = run.Order.Plan.Harness;
            var name = OutputNames.Safe(harness.Id);
            var shown = parsed.GetValue(view)!;
            var (ending, content) = parsed.GetValue(format) switch
            {
                "xlsx" => ("xlsx", CutListWorkbook.Write(run.Order, run.Stock, prices, times)),
                "json" => ("json", ListJsonWriter.Write(harness, run.Order.Words, [CutListTables.Of(run.Order, shown, run.Reels.CutFrom)])),
                _ => ("csv", ListCsvWriter.Write(CutListTables.Of(run.Order, shown, run.Reels.CutFrom), csv.OptionsOf(parsed))),
            };
            Results.Put(terminal, parsed.GetValue(output), shown == "reel" || ending == "xlsx" ? $"{name}.cut-list.{ending}" : $"{name}.cut-list.by-{shown}.{ending}", content);
            return ExitCode.Done;
        });
        return command;
    }
}
