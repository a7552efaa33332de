using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Writing;
using HarnessDraw.Writing.CutList;
using HarnessDraw.Writing.Lists;
using HarnessDraw.Writing.Workbook;

namespace HarnessDraw.Cli.Commands;

/// <summary>'cut': the cut list as CSV, JSON or workbook, for one build, several or everything.</summary>
internal static class CutCommand
{
    private static readonly ImmutableArray<string> Formats = ["csv", "xlsx", "json"];
    private static readonly ImmutableArray<string> Separators = ["comma", "semicolon", "tab"];
    private static readonly ImmutableArray<string> DecimalMarks = ["point", "comma"];

    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var view = ListedOption.One("--view", "Order of the rows", CutListTables.Views, "reel");
        var format = ListedOption.One("--format", "Form of the list; xlsx holds every view, the purchase list and the kits", Formats, "csv");
        var separator = ListedOption.One("--separator", "What parts the cells", Separators, "comma");
        var mark = ListedOption.One("--decimal", "Decimal mark", DecimalMarks, "point");
        var bom = new Option<bool>("--mark") { Description = "Begin with a UTF-8 mark, for spreadsheets that need one" };
        var output = CommonArguments.Out("usual: the text goes to standard output");
        var command = new ExampledCommand(
            "cut",
            "The cut list, one row a wire: as CSV or JSON, or as a workbook with every view and list",
            "harnessdraw cut examples/brackmere-six.yaml > cut-list.csv",
            "harnessdraw cut examples/brackmere-six.yaml --format xlsx --build '3 x usual' --out bench",
            "harnessdraw cut examples/brackmere-six.yaml --separator semicolon --decimal comma --mark --out bench")
        {
            file, view, format, separator, mark, bom, output,
        };
        orders.AddTo(command);
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            if (orders.StockOf(parsed, terminal) is not { } stock)
            {
                return ExitCode.Problems;
            }

            var order = orders.OrderOf(parsed, planned.Plan);
            var reels = ReelPlanner.Plan(order, stock);
            ListOutput.SayProblems(terminal, reels);
            var name = OutputNames.Safe(planned.Plan.Harness.Id);
            var options = new CsvOptions
            {
                Separator = parsed.GetValue(separator) switch { "semicolon" => ';', "tab" => '\t', _ => ',' },
                DecimalMark = parsed.GetValue(mark) == "comma" ? ',' : '.',
                ByteOrderMark = parsed.GetValue(bom),
            };
            var shown = parsed.GetValue(view)!;
            var (ending, content) = parsed.GetValue(format) switch
            {
                "xlsx" => ("xlsx", CutListWorkbook.Write(order, stock)),
                "json" => ("json", ListJsonWriter.Write(planned.Plan.Harness, order.Words, [CutListTables.Of(order, shown, reels.CutFrom)])),
                _ => ("csv", ListCsvWriter.Write(CutListTables.Of(order, shown, reels.CutFrom), options)),
            };
            Results.Put(terminal, parsed.GetValue(output), shown == "reel" || ending == "xlsx" ? $"{name}.cut-list.{ending}" : $"{name}.cut-list.by-{shown}.{ending}", content);
            return ExitCode.Done;
        });
        return command;
    }
}
