using System.CommandLine;
using System.Globalization;
using HarnessDraw.Checking;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Planning;
using HarnessDraw.Reading.Import;
using HarnessDraw.Units;

namespace HarnessDraw.Cli.Commands;

/// <summary>The arguments of commands that make lists for the bench: which builds how often, and what wire is at hand.</summary>
internal sealed class OrderArguments
{
    public Option<string[]> Builds { get; } = new("--build")
    {
        Description = "A build: option=choice, more with a comma between; '3 x ...' makes three. May be given several times",
        HelpName = "CHOICES",
    };

    public Option<string?> Stock { get; } = new("--stock") { Description = "Wire at hand, as CSV with id, length_mm and, where it matters, wire_type, size, colour, pieces", HelpName = "FILE" };

    public Option<string> Reel { get; } = new("--reel") { Description = "Length of a new reel", HelpName = "LENGTH", DefaultValueFactory = _ => "30 m" };

    public void AddTo(Command command)
    {
        command.Add(Builds);
        command.Add(Stock);
        command.Add(Reel);
    }

    /// <summary>The plan, what is made of it and what it is cut from; null when a file has mistakes (all of them have been said). Wires that cannot be cut are said too.</summary>
    public OrderRun? Read(ParseResult parsed, Terminal terminal, string file, PackingEffort? effort = null)
    {
        if (PlannedFile.Read(terminal, file, RuleSettings.BuiltIn) is not { } planned || StockOf(parsed, terminal) is not { } stock)
        {
            return null;
        }

        FabricationOrder order = new(planned.Plan, [.. (parsed.GetValue(Builds) ?? []).Select(t => QuantityOf(t, planned.Plan))]);
        var reels = ReelPlanner.Plan(order, stock, effort);
        foreach (var problem in reels.Problems)
        {
            terminal.SayError(DiagnosticText.Plain(problem.Message));
        }

        return new(order, stock, reels);
    }

    private ReelStock? StockOf(ParseResult parsed, Terminal terminal)
    {
        var stock = new ReelStock { NewReelMm = ReelMm(parsed.GetValue(Reel)!) };
        return ListFiles.Read(parsed.GetValue(Stock), terminal, new Shelf([]), StockReader.Read) is { } shelf
            ? stock with { OnHand = [.. shelf.Pieces.Select(p => new StockPiece(p.Id, p.WireType, p.SizeLabel, p.Colour, p.LengthMm, p.Pieces))] }
            : null;
    }

    private static BuildQuantity QuantityOf(string text, Plan plan)
    {
        var cross = text.IndexOf(" x ", StringComparison.Ordinal);
        if (cross < 0)
        {
            return new(BuildChoice.Read(text, plan.Harness), 1);
        }

        return int.TryParse(text[..cross].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var quantity) && quantity is > 0 and <= 10_000
            ? new(BuildChoice.Read(text[(cross + 3)..], plan.Harness), quantity)
            : throw new WrongUsageException($"--build: '{text[..cross]}' is no number of harnesses from 1 to 10000");
    }

    private static double ReelMm(string text) =>
        Quantity.TryParse(text, QuantityKind.Length, out var length, out _) && length.Value is >= 1000 and <= 10_000_000
            ? length.Value
            : throw new WrongUsageException($"--reel: '{DiagnosticText.Plain(text)}' is no length from 1 m to 10 km, such as '30 m' or '100 ft'");
}

/// <summary>What is made, what wire is at hand, and what is cut from what.</summary>
internal sealed record OrderRun(FabricationOrder Order, ReelStock Stock, ReelPlan Reels);
