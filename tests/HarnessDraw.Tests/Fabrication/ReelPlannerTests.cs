using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;
using HarnessDraw.Tests.Layout;

namespace HarnessDraw.Tests.Fabrication;

public class ReelPlannerTests
{
    [Fact]
    public void Long_pieces_that_pair_with_nothing_are_named_as_the_reason()
    {
        var plan = WithLengths(7200, 7200, 7200, 7200, 3000);
        var need = Assert.Single(ReelPlanner.Plan(FabricationOrder.Everything(plan), new() { NewReelMm = 10_000, EndTrimMm = 0 }).Needs);
        Assert.Equal((5, 5, true), (need.NewReels, need.LeastNewReels, need.Proven));
        Assert.Equal("5 reels, not 4: pieces of 7.2 m pair with nothing", need.Why);
    }

    [Fact]
    public void Wires_longer_than_every_reel_are_told_in_one_line_and_the_rest_is_cut()
    {
        var plan = WithLengths(12_400, 900, 800, 15_000);
        var reels = ReelPlanner.Plan(FabricationOrder.Everything(plan), new() { NewReelMm = 10_000 });
        var problem = Assert.Single(reels.Problems);
        Assert.StartsWith("wires W4, W1: 12.4 m to 15 m of", problem.Message, StringComparison.Ordinal);
        Assert.Contains("longest reel is 10 m", problem.Message, StringComparison.Ordinal);
        Assert.Equal(2, reels.Uses.Sum(u => u.Pieces.Length));
    }

    [Fact]
    public void Offcuts_are_used_before_a_reel_is_opened_and_only_where_they_fit()
    {
        var plan = WithLengths(2000, 1500, 1000);
        var reel = CutRows.ByReel(plan)[0].Reel;
        var stock = new ReelStock
        {
            EndTrimMm = 0,
            OnHand = [new("OFF1", null, null, null, 2600, 1), new("OFF2", reel.WireType, reel.SizeLabel, reel.Colour, 2000, 1), new("OTHER", "another type", null, null, 50_000, 1)],
        };
        var reels = ReelPlanner.Plan(FabricationOrder.Everything(plan), stock);
        Assert.Equal(["OFF2", "OFF1"], reels.Uses.Select(u => u.From));
        Assert.Equal(0, reels.Needs.Single().NewReels);
        Assert.Equal("OFF2", reels.CutFrom[plan.Wires[0].Id]);
        Assert.Equal([0.0, 100.0], reels.Uses.Select(u => u.RestMm));
    }

    [Fact]
    public void Kerf_and_trim_are_taken_from_the_reel()
    {
        var plan = WithLengths(5000, 5000);
        Assert.Equal(1, ReelPlanner.Plan(FabricationOrder.Everything(plan), new() { NewReelMm = 10_000, EndTrimMm = 0 }).Needs[0].NewReels);
        Assert.Equal(2, ReelPlanner.Plan(FabricationOrder.Everything(plan), new() { NewReelMm = 10_000, EndTrimMm = 0, KerfMm = 1 }).Needs[0].NewReels);
        Assert.Equal(2, ReelPlanner.Plan(FabricationOrder.Everything(plan), new() { NewReelMm = 10_000, EndTrimMm = 20 }).Needs[0].NewReels);
    }

    [Fact]
    public void A_batch_cuts_each_wire_as_often_as_its_build_is_made()
    {
        var plan = WithLengths(1000, 900);
        var order = new FabricationOrder(plan, [new(ImmutableSortedDictionary<string, string>.Empty, 7)]);
        var reels = ReelPlanner.Plan(order, new());
        Assert.Equal(14, reels.Uses.Sum(u => u.Pieces.Length));
        Assert.Equal(Enumerable.Range(1, 7), reels.Uses.SelectMany(u => u.Pieces).Where(p => p.Wire == plan.Wires[0].Id).Select(p => p.Copy).Order());
    }

    [Theory]
    [InlineData("id,length_mm\nA,12x\n", "2:3", "no length in mm")]
    [InlineData("id,length\nA,12.5\n", "2:3", "no unit")]
    [InlineData("id,length_mm\nA,100\nA,200\n", "3:1", "twice")]
    [InlineData("name;size\nA;1.5\n", "1:1", "'id' and 'length_mm' are needed")]
    [InlineData("id,length_mm\n\"A,100\n", "2:1", "never closed")]
    [InlineData("id,length_mm\nA,100,B\n", "2:7", "3 cells")]
    [InlineData("id,length_mm,pieces\nA,100,many\n", "2:7", "no number of pieces")]
    [InlineData("PK\u0003\u0004", "1:1", "not a CSV")]
    [InlineData("", "1:1", "no row")]
    public void A_damaged_stock_file_is_told_with_line_and_column(string text, string place, string message)
    {
        var read = StockReader.Read("stock.csv", new MemoryFiles(new Dictionary<string, string> { ["stock.csv"] = text }));
        Assert.True(read.Failed);
        Assert.Contains(read.Diagnostics, d => $"{d.At!.Line}:{d.At.Column}" == place && d.Message.Contains(message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_stock_file_is_read_with_either_kind_of_length()
    {
        var read = StockReader.Read("s", new MemoryFiles(new Dictionary<string, string> { ["s"] = "id;Length;wire type;Colour;Pieces\r\n012;12.5 m;thin;\"RD/WH\";3\r\n" }));
        Assert.Equal(new ShelfPiece("012", "thin", null, "RD/WH", 12_500, 3), Assert.Single(read.Value!.Pieces));
    }

    private static Plan WithLengths(params double[] lengthsMm)
    {
        var plan = RandomHarness.Plan(1, new(12));
        var wire = plan.Wires[0];
        return plan with { Splices = [], Cavities = [], Wires = [.. lengthsMm.Select((mm, i) => wire with { Id = $"W{i + 1}", CutLengthMm = mm })] };
    }
}
