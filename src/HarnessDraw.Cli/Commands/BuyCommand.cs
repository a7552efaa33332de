using System.CommandLine;
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
        var files = new ListFiles();
        var csv = new CsvArguments();
        var format = ListedOption.One("--format", "Form of the list", ListOutput.Formats, "csv");
        var output = CommonArguments.Out("usual: the list goes to standard output");
        var command = new ExampledCommand(
            "buy",
            "The purchase list: wire, connectors, terminals, seals, plugs, splices, fuses, covering, labels, with scrap and test pieces",
            "harnessdraw buy examples/brackmere-six.yaml",
            "harnessdraw buy examples/brackmere-six.yaml --build '3 x usual' --format json --out bench")
        {
            file, files.Prices, format, output,
        };
        orders.AddTo(command);
        csv.AddTo(command);
        command.SetAction(parsed =>
        {
            if (files.PricesOf(parsed, terminal) is not { } prices || orders.Read(parsed, terminal, parsed.GetRequiredValue(file)) is not { } run)
            {
                return ExitCode.Problems;
            }

            var list = PurchaseList.Of(run.Order, run.Reels, null, prices);
            foreach (var unused in prices.Parts.Where(p => list.Lines.All(l => prices.Of(l.Part) != p)))
            {
                terminal.Say($"the price of '{DiagnosticText.Plain(unused.Part)}' is not used: no line of the list has that part");
            }

            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, csv.OptionsOf(parsed), run.Order, "purchase", [SupplyTables.Purchase(list)]);
            return ExitCode.Done;
        });
        return command;
    }
}
