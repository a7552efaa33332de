using System.CommandLine;
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
        var csv = new CsvArguments();
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
        csv.AddTo(command);
        command.SetAction(parsed =>
        {
            if (orders.Read(parsed, terminal, parsed.GetRequiredValue(file), new PackingEffort { PatternSteps = 100_000_000 }) is not { } run)
            {
                return ExitCode.Problems;
            }

            ListOutput.Put(terminal, parsed.GetValue(output), parsed.GetValue(format)!, csv.OptionsOf(parsed), run.Order, "reels", [SupplyTables.ReelNeeds(run.Reels), SupplyTables.Reels(run.Reels)]);
            return run.Reels.Problems.IsEmpty ? ExitCode.Done : ExitCode.Problems;
        });
        return command;
    }
}
