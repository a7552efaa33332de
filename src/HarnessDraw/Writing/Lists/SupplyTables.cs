using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Planning;

namespace HarnessDraw.Writing.Lists;

/// <summary>Lists of what is bought, cut from reels, bagged, crimped and put round the bundle.</summary>
public static class SupplyTables
{
    public static ListTable Purchase(PurchaseList list)
    {
        ArgumentNullException.ThrowIfNull(list);
        var masses = new[]
        {
            new PurchaseLine("mass", "copper", "Copper in the wires", "kg", list.CopperGram / 1000, 0, "from true copper area, 8.89 g/cm3"),
            new PurchaseLine("mass", "wire", "Wire with insulation, without connectors and covering", "kg", list.WireGram / 1000 ?? double.NaN, 0, list.WireGram is null ? "a mass or a length is unknown" : null),
            new PurchaseLine("mass", "harness", "Wire and the parts whose mass is known", "kg", list.HarnessGram / 1000 ?? double.NaN, 0, list.WithoutMass == 0 ? null : $"at least: {list.WithoutMass} parts have no mass in the price list"),
        };
        var priced = list.Lines.Where(l => l.Price is not null).ToList();
        var total = new PurchaseLine("total", "all", "Price of the lines that have one", list.Currency ?? "", double.NaN, 0, $"{list.Lines.Length - priced.Count} of {list.Lines.Length} lines have no price");
        return new TableShape<PurchaseLine>()
            .Text("group", l => l.Group)
            .Text("part", l => l.Part)
            .Text("title", l => l.Title)
            .Text("unit", l => l.Unit)
            .Number("needed", 3, l => Known(l.Needed))
            .Number("spare", 3, l => l.Spare)
            .Number("order", 3, l => Known(l.Order))
            .Number("price_each", 4, l => l.PriceEach)
            .Number("price", 2, l => l == total ? priced.Sum(p => p.Price) : l.Price)
            .Text("note", l => l.Note)
            .Ticks("tick_in_stock", "tick_ordered")
            .Table("purchase", "Purchase list with scrap and test pieces", [.. list.Lines, .. masses, .. priced.Count > 0 ? new[] { total } : []]);
    }

    /// <summary>Every cut in the order it is made: reel after reel.</summary>
    public static ListTable Reels(ReelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new TableShape<(ReelUse Use, CutPiece Piece, int Step)>()
            .Text("wire_type", x => x.Use.Reel.WireType)
            .Text("size", x => x.Use.Reel.SizeWords)
            .Text("colour", x => x.Use.Reel.Colour)
            .Text("cut_from", x => x.Use.From)
            .Number("reel_mm", 0, x => x.Use.LengthMm)
            .Number("step", 0, x => x.Step)
            .Text("wire", x => x.Piece.Wire)
            .Number("harness", 0, x => x.Piece.Copy)
            .Number("cut_mm", 1, x => x.Piece.LengthMm)
            .Number("left_on_reel_mm", 0, x => x.Use.RestMm)
            .Text("keep_rest", x => x.Use.KeepRest ? "yes" : "no")
            .Ticks("tick_cut")
            .Table("reels", "Cutting by reel and offcut", plan.Uses.SelectMany(u => u.Pieces.Select((p, i) => (u, p, i + 1))));
    }

    public static ListTable ReelNeeds(ReelPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return new TableShape<ReelNeed>()
            .Text("wire_type", n => n.Reel.WireType)
            .Text("size", n => n.Reel.SizeWords)
            .Text("colour", n => n.Reel.Colour)
            .Number("pieces", 0, n => n.Pieces)
            .Number("used_m", 3, n => n.UsedMm / 1000)
            .Number("new_reel_m", 2, n => n.NewReelMm / 1000)
            .Number("new_reels", 0, n => n.NewReels)
            .Number("least_new_reels", 0, n => n.LeastNewReels)
            .Text("proven_least", n => n.Proven ? "yes" : "no")
            .Text("why", n => n.Why)
            .Table("reel needs", "Reels needed, and why no fewer", plan.Needs);
    }

    public static ListTable Bags(FabricationOrder order) => new TableShape<(BranchBag Bag, string What, string Item, double Count)>()
        .Text("bag", x => x.Bag.Branch)
        .Text("what", x => x.What)
        .Text("item", x => x.Item)
        .Number("count", 0, x => x.Count)
        .Number("with_spare", 0, x => x.What == "part" ? x.Count + Math.Max(Spares.LeastSpareParts, Math.Ceiling(x.Count * Spares.PartScrap)) : x.Count)
        .Number("bag_wire_g", 0, x => x.Bag.WireGram)
        .Ticks("tick_packed")
        .Table("bags", "A bag a branch: wires coiled with label A outwards, then the parts", BranchBags.Of(order).SelectMany(b => b.Wires.Select(r => (b, "wire", r.Wire.Id, (double)order.QuantityOf(r.Wire.Builds)))
            .Concat(b.Parts.Select(p => (b, "part", p.Key, (double)p.Value)))
            .Append((b, "labels", "wire label", b.Labels))));

    public static ListTable Crimps(FabricationOrder order) => new TableShape<CrimpGroup>()
        .Text("family", g => g.Family)
        .Text("contact", g => g.ContactSize)
        .Text("terminal", g => g.Terminal)
        .Text("wire_size", g => g.WireSize.Any(char.IsAsciiLetter) ? g.WireSize : $"{g.WireSize} mm2")
        .Number("strip_mm", 1, g => g.StripMm)
        .Number("crimps", 0, g => g.Crimps)
        .Number("least_pull_N", 1, g => g.LeastPullN)
        .Number("in_harness_pull_N", 0, g => PullStrength.InHarnessN(g.AreaMm2))
        .Text("ends", g => string.Join("; ", g.Ends))
        .Ticks("test_pull_1_N", "test_pull_2_N", "test_pull_3_N", "tick_accepted")
        .Table("crimps", "Crimps by die, with a log for the pull test", CrimpGroups.Of(order));

    public static ListTable Coverings(Plan plan) => new TableShape<CoveringCut>()
        .Text("segment", c => c.Segment.Id)
        .Text("from", c => c.Segment.From)
        .Text("to", c => c.Segment.To)
        .Number("length_mm", 0, c => c.Segment.LengthMm)
        .Number("diameter_mm", 1, c => c.Segment.DiameterMm)
        .Number("wires", 0, c => c.Segment.Wires.Length)
        .Text("covering", c => c.Part?.Id)
        .Number("sleeve_mm", 0, c => c.SleeveMm)
        .Text("put_on_before_plugs_of", c => string.Join("; ", c.PutOnBefore))
        .Number("tape_m", 2, c => c.TapeM)
        .Number("splice_sleeves", 0, c => c.SpliceSleeves)
        .Text("grommets", c => string.Join("; ", c.Grommets))
        .Number("ties", 0, c => c.Ties)
        .Number("clips", 0, c => c.Clips)
        .Number("clips_apart_mm", 0, c => c.ClipsApartMm)
        .Number("sag_at_most_mm", 1, c => c.ClipsApartMm is null ? null : SupportSlack.MostSagMm)
        .Ticks("tick_covered")
        .Table("coverings", "Covering and fixings by segment", CoveringCuts.Of(plan));

    /// <summary>What the order takes at the bench, kind of work by kind of work, with the sum.</summary>
    public static ListTable Times(ImmutableArray<TimeLine> lines) => new TableShape<TimeLine>()
        .Text("work", l => l.Work)
        .Text("counted_in", l => l.Unit)
        .Number("count", 1, l => l.Unit.Length == 0 ? null : l.Count)
        .Number("minutes_each", 2, l => l.Unit.Length == 0 ? null : l.MinutesEach)
        .Number("minutes", 1, l => l.Minutes)
        .Ticks("minutes_taken")
        .Table("times", "Time at the bench by stated unit times", lines.Append(new("all", "", 1, lines.Sum(l => l.Minutes))));

    private static SpareRules Spares { get; } = new();

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
