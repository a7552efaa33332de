using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Cli.Commands;

/// <summary>'buy': everything to be bought for an order.</summary>
internal static class BuyCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var format = ListedOption.One("--format", "Form of the list", ListOutput.Formats, "csv");
        var output = CommonArguments.Out("usual: the list goes to standard output");
        var command = new ExampledCommand(
            "buy",
            "The purchase list: wire, connectors, terminals, seals, plugs, splices, fuses, covering, labels, with scrap and test pieces",
            "harnessdraw buy examples/brackmere-six.yaml",
            "harnessdraw buy examples/brackmere-six.yaml --build '3 x usual' --format json --out bench")
        {
            file, format, output,
        };
        orders.AddTo(command);
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null || orders.StockOf(parsed, terminal) is not { } stock)
            {
                return ExitCode.Problems;
            }

            var order = orders.OrderOf(parsed, planned.Plan);
            var reels = ReelPlanner.Plan(order, stock);
            ListOutput.SayProblems(terminal, reels);
            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, order, "purchase", [SupplyTables.Purchase(PurchaseList.Of(order, reels))]);
            return ExitCode.Done;
        });
        return command;
    }
}
