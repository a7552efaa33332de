using System.Collections.Immutable;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Model;

namespace HarnessDraw.Fabrication.Supplies;

/// <summary>A line to buy: <paramref name="Needed"/> is what the harnesses hold, <paramref name="Spare"/> scrap and test pieces, both in <paramref name="Unit"/>.</summary>
public sealed record PurchaseLine(string Group, string Part, string Title, string Unit, double Needed, double Spare, string? Note)
{
    public double Order => Needed + Spare;

    /// <summary>Price of a unit, as the owner's list says.</summary>
    public double? PriceEach { get; init; }

    /// <summary>Mass of what the harnesses hold of it, grams; null: not known.</summary>
    public double? Gram { get; init; }

    public double? Price => PriceEach * Order;
}

/// <summary>How much more is bought than is built in. All common practice, no source.</summary>
public sealed record SpareRules
{
    /// <summary>Wire spoiled as a share of what is used: 0.03 to 0.05 skilled, 0.10 for a first-timer.</summary>
    public double WireScrap { get; init; } = 0.05;

    /// <summary>Terminals and seals spoiled, as a share and at least this many.</summary>
    public double PartScrap { get; init; } = 0.10;
    public int LeastSpareParts { get; init; } = 2;

    /// <summary>Length of a pull-test piece, mm; one a wire size and terminal.</summary>
    public double TestPieceMm { get; init; } = 150;
}

/// <summary>Everything that is bought for an order, with copper and harness mass; prices and masses of parts as the owner's list has them.</summary>
public sealed record PurchaseList(ImmutableArray<PurchaseLine> Lines, double CopperGram, double? WireGram)
{
    public string? Currency { get; init; }

    /// <summary>Parts whose mass is known, the wire with them, grams.</summary>
    public double? HarnessGram => WireGram + Lines.Where(l => l.Group != "wire").Sum(l => l.Gram ?? 0);

    /// <summary>Lines other than wire without a mass: the harness weighs more than <see cref="HarnessGram"/>.</summary>
    public int WithoutMass => Lines.Count(l => l.Group != "wire" && l.Needed > 0 && l.Gram is null);

    // share of a reel below which nobody buys one for this harness alone: common practice, no source
    private const double ByTheMetre = 0.25;

    public static PurchaseList Of(FabricationOrder order, ReelPlan reels, SpareRules? spares = null, PriceList? prices = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(reels);
        var rules = spares ?? new();
        var parts = new PartsCounter(order);
        var lines = WireLines(order, reels, rules)
            .Concat(parts.Connectors().Select(p => new PurchaseLine("connector", p.Key, parts.Title(p.Key), "pcs", p.Value, 0, null)))
            .Concat(Spared("terminal", parts.Terminals(), parts, rules))
            .Concat(Spared("seal", parts.Seals(), parts, rules))
            .Concat(Spared("plug", parts.Plugs(), parts, rules))
            .Concat(Spared("splice", parts.Splices(), parts, rules))
            .Concat(parts.Boots().Select(p => new PurchaseLine("boot", p.Key, p.Key, "pcs", p.Value, 0, null)))
            .Concat(parts.Fuses().Select(p => new PurchaseLine("fuse", p.Key, p.Key, "pcs", p.Value, 1, "one spare a rating")))
            .Concat(Consumables.Lines(order));
        var wires = order.Wires.SelectMany(w => Enumerable.Repeat(w, order.QuantityOf(w.Builds))).ToArray();
        var list = prices ?? PriceList.None;
        return new([.. lines.Select(l => list.Of(l.Part) is { } price ? l with { PriceEach = price.Each, Gram = price.MassGram * l.Needed } : l)], wires.Sum(w => WireMass.CopperGrams(w.AreaMm2, w.CutLengthMm ?? 0)), WireMass.GramsOf(order.Plan, wires)) { Currency = list.Currency };
    }

    private static IEnumerable<PurchaseLine> WireLines(FabricationOrder order, ReelPlan reels, SpareRules rules)
    {
        foreach (var reel in order.Wires.GroupBy(w => new Reel(w.WireType, w.AreaMm2, w.SizeLabel, w.Colour))
            .OrderBy(g => g.Key.WireType, StringComparer.Ordinal).ThenByDescending(g => g.Key.AreaMm2).ThenBy(g => g.Key.Colour, StringComparer.Ordinal))
        {
            var usedMm = reel.Sum(w => (w.CutLengthMm ?? 0) * order.QuantityOf(w.Builds));
            var tests = reel.SelectMany(w => (string?[])[w.From.Terminal, w.To.Terminal]).OfType<string>().Distinct(StringComparer.Ordinal).Count();
            var spareMm = (usedMm * rules.WireScrap) + (tests * rules.TestPieceMm);
            var need = reels.Needs.FirstOrDefault(n => n.Reel == reel.Key);
            var note = need is null ? null : need.NewReels == 0 ? need.Why : need.NewReels == 1 && usedMm + spareMm < ByTheMetre * need.NewReelMm ? $"by the metre, or 1 x {need.NewReelMm / 1000:0.##} m" : $"{need.NewReels} x {need.NewReelMm / 1000:0.##} m; {need.Why}";
            var unknown = reel.Count(w => w.CutLengthMm is null);
            yield return new("wire", reel.Key.ToString(), $"{reel.Key.SizeWords} {reel.Key.Colour}", "m", usedMm / 1000, spareMm / 1000, unknown > 0 ? $"{unknown} of unknown length not counted; {note}" : note);
        }
    }

    private static IEnumerable<PurchaseLine> Spared(string group, IEnumerable<KeyValuePair<string, int>> counted, PartsCounter parts, SpareRules rules) =>
        counted.Select(p => new PurchaseLine(group, p.Key, parts.Title(p.Key), "pcs", p.Value, Math.Max(rules.LeastSpareParts, Math.Ceiling(p.Value * rules.PartScrap)), null));
}
