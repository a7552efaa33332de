using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Cli.Commands;

/// <summary>'reels': what is cut from which reel or offcut, how many reels it takes and why no fewer.</summary>
internal static class ReelsCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var orders = new OrderArguments();
        var format = ListedOption.One("--format", "Form of the lists", ListOutput.Formats, "csv");
        var output = CommonArguments.Out("usual: the reels needed go to standard output; with it, the cuts too");
        var command = new ExampledCommand(
            "reels",
            "How many reels an order takes and why no fewer, offcuts first; with --out also every cut in order",
            "harnessdraw reels examples/brackmere-six.yaml",
            "harnessdraw reels examples/brackmere-six.yaml --build '10 x usual' --reel '100 m' --out bench")
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
            var reels = ReelPlanner.Plan(order, stock, new PackingEffort { PatternSteps = 100_000_000 });
            ListOutput.SayProblems(terminal, reels);
            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, order, "reels", [SupplyTables.ReelNeeds(reels), SupplyTables.Reels(reels)]);
            return reels.Problems.IsEmpty ? ExitCode.Done : ExitCode.Problems;
        });
        return command;
    }
}
