using System.CommandLine;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.Suspects;

namespace HarnessDraw.Cli.Commands;

/// <summary>'procedure': how to hunt a short behind a fuse, or a fault of a load that comes and goes, step by step.</summary>
internal static class ProcedureCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var shorted = new Option<string?>("--short") { Description = "The fuse that opens: lamp in its place, what to unplug in which order", HelpName = "FUSE" };
        var intermittent = new Option<string?>("--comes-and-goes") { Description = "The load that works and works not: point to watch, what to move, warm and wet in which order", HelpName = "LOAD" };
        var build = CommonArguments.Build();
        var command = new ExampledCommand(
            "procedure",
            "Step by step: hunt a short behind a fuse, or a fault that comes and goes; ends with the limits of what may be lost",
            "harnessdraw procedure examples/brackmere-six.yaml --short K19",
            "harnessdraw procedure examples/brackmere-six.yaml --comes-and-goes fan")
        {
            file, shorted, intermittent, build,
        };
        command.SetAction(parsed =>
        {
            var (fuse, load) = (parsed.GetValue(shorted), parsed.GetValue(intermittent));
            if (fuse is null && load is null)
            {
                throw new WrongUsageException("say what for: --short FUSE or --comes-and-goes LOAD");
            }

            return CommonArguments.Tell(terminal, parsed, file, build, (plan, choice) => Told(new(plan, choice), fuse, load));
        });
        return command;
    }

    private static string Told(FaultBench bench, string? fuse, string? load)
    {
        var told = new StringBuilder();
        if (fuse is not null)
        {
            told.Append(ProcedureText.Of(ShortHunt.Of(bench, fuse) ?? throw NoSuch("fuse", fuse, bench.Plan.Fuses.Select(f => f.Id)))).Append('\n');
        }

        if (load is not null)
        {
            var meant = bench.Loads.Where(l => l.Name == load || l.Thing == load || l.Circuit == load).ToList();
            if (meant.Count == 0)
            {
                throw NoSuch("load", load, bench.Loads.SelectMany(l => new[] { l.Name, l.Thing }).Distinct(StringComparer.Ordinal));
            }

            var orders = meant.Select(l => WiggleOrder.Of(bench, l)).OfType<WiggleOrder>().ToList();
            if (orders.Count == 0)
            {
                throw new WrongUsageException($"'{load}' works in no state of the description");
            }

            told.Append(string.Join('\n', orders.Select(ProcedureText.Of))).Append('\n');
        }

        return told.Append(ProcedureText.Limits()).ToString();
    }

    private static WrongUsageException NoSuch(string what, string name, IEnumerable<string> names) =>
        new($"there is no {what} '{DiagnosticText.Plain(name)}' in this build; {NearestName.Hint(name, names) ?? $"there are {string.Join(", ", names)}"}");
}
