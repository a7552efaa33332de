using System.CommandLine;
using System.Globalization;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
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

    public FabricationOrder OrderOf(ParseResult parsed, Plan plan) => new(plan, [.. (parsed.GetValue(Builds) ?? []).Select(t => QuantityOf(t, plan))]);

    /// <summary>What wire is cut from, or null when the stock file has mistakes (all of them have been said).</summary>
    public ReelStock? StockOf(ParseResult parsed, Terminal terminal)
    {
        var stock = new ReelStock { NewReelMm = ReelMm(parsed.GetValue(Reel)!) };
        if (parsed.GetValue(Stock) is not { } file)
        {
            return stock;
        }

        if (!File.Exists(file))
        {
            throw new IOException($"there is no file '{file}'{NearFiles.Hint(file)}");
        }

        var files = new DiskFiles();
        var read = StockReader.Read(file, files);
        DiagnosticText.Say(terminal, read.Diagnostics, files);
        return read.Failed ? null : stock with { OnHand = [.. read.Value!.Pieces.Select(p => new StockPiece(p.Id, p.WireType, p.SizeLabel, p.Colour, p.LengthMm, p.Pieces))] };
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
