using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;
using HarnessDraw.Tests.Cli;
using HarnessDraw.Tests.Conventions;
using HarnessDraw.Tests.Layout;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Tests.Writing;
using HarnessDraw.Writing.CutList;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Tests.Fabrication;

/// <summary>Lists for several harnesses, with prices and times.</summary>
public class BatchTests
{
    private static readonly string Saloon = Repository.PathOf("examples", "brackmere-six.yaml");

    [Fact]
    public void Three_of_the_usual_build_and_one_other_are_one_list_with_quantities()
    {
        var run = CliRun.Of("cut", Saloon, "--view", "wire", "--build", "3 x usual", "--build", "charging=single wire,cooling=electric fan");
        Assert.Equal(0, run.Code);
        var rows = SmallCsvReader.Read(run.Output, ',');
        var (id, qty) = (rows[0].IndexOf("wire"), rows[0].IndexOf("qty"));
        var plan = ExamplePlans.Of("brackmere-six");
        var other = plan.Builds[0].SetItem("charging", "single wire").SetItem("cooling", "electric fan");
        foreach (var row in rows.Skip(1))
        {
            var wire = plan.WireOf(SpreadsheetText.Unguard(row[id]));
            Assert.Equal(((wire.Builds.Holds(plan.Builds[0]) ? 3 : 0) + (wire.Builds.Holds(other) ? 1 : 0)).ToString(System.Globalization.CultureInfo.InvariantCulture), row[qty]);
        }

        Assert.Equal(plan.Wires.Count(w => w.Builds.Holds(plan.Builds[0]) || w.Builds.Holds(other)), rows.Count - 1);
    }

    [Fact]
    public void A_batch_of_2000_rows_is_cut_and_listed()
    {
        var wires = RandomHarness.Plan(3, new(40));
        var plan = wires with { Wires = [.. Enumerable.Range(0, 2000).Select(i => wires.Wires[i % wires.Wires.Length] with { Id = $"W{i:0000}", CutLengthMm = 300 + (i * 37 % 2900) })], Splices = [], Cavities = [] };
        Assert.Equal(2000, Lists(FabricationOrder.Everything(plan)));
    }

    [Fact]
    public void Bags_labels_and_parts_of_a_batch_are_the_sum_of_its_harnesses()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var one = new FabricationOrder(plan, [new(plan.Builds[0], 1)]);
        var five = new FabricationOrder(plan, [new(plan.Builds[0], 5)]);
        foreach (var (a, b) in BranchBags.Of(one).Zip(BranchBags.Of(five)))
        {
            Assert.Equal(a.Parts.ToDictionary(p => p.Key, p => 5 * p.Value), b.Parts.ToDictionary(p => p.Key, p => p.Value));
            Assert.Equal(5 * a.Labels, b.Labels);
            Assert.Equal(5 * a.WireGram!.Value, b.WireGram!.Value, 6);
        }

        Assert.Equal(5 * WireLabels.Of(one).Sum(l => l.Copies), WireLabels.Of(five).Sum(l => l.Copies));
        foreach (var group in new[] { "covering", "grommet", "sleeve", "fixing", "fuse", "label" })
        {
            double Needed(FabricationOrder o) => PurchaseList.Of(o, ReelPlanner.Plan(o, new())).Lines.Where(l => l.Group == group).Sum(l => l.Needed);
            Assert.Equal(5 * Needed(one), Needed(five), 6);
        }
    }

    [Fact]
    public void Prices_and_masses_of_the_owner_are_added_up_and_what_has_none_is_counted()
    {
        var order = FabricationOrder.Everything(ExamplePlans.Of("dunmarrow-18"));
        var reels = ReelPlanner.Plan(order, new());
        var plain = PurchaseList.Of(order, reels);
        var (terminal, wire) = (plain.Lines.First(l => l.Group == "terminal"), plain.Lines.First(l => l.Group == "wire"));
        // a wire may be priced in any colour
        var anyColour = wire.Part[..wire.Part.LastIndexOf(' ')];
        var prices = Read($"part;price_each;mass_g;currency\n{terminal.Part};0.25;1.5;EUR\n{anyColour};0.8;;EUR\n");
        var list = PurchaseList.Of(order, reels, null, prices.Value!);
        Assert.Equal(0.25 * terminal.Order, list.Lines.Single(l => l.Part == terminal.Part).Price!.Value, 9);
        Assert.All(list.Lines.Where(l => l.Part.StartsWith(anyColour + " ", StringComparison.Ordinal)), l => Assert.Equal(0.8, l.PriceEach));
        Assert.Equal(list.WireGram + (1.5 * terminal.Needed), list.HarnessGram);
        var table = SupplyTables.Purchase(list);
        var total = table.Rows.Last();
        Assert.Equal("total", total[0].Text);
        Assert.Equal(list.Lines.Sum(l => l.Price ?? 0), total[table.Heads.IndexOf("price")].Number!.Value, 6);
        Assert.Contains($"{list.Lines.Count(l => l.Price is null)} of {list.Lines.Length} lines have no price", total[table.Heads.IndexOf("note")].Text, StringComparison.Ordinal);
        Assert.DoesNotContain(SupplyTables.Purchase(plain).Rows, r => r[0].Text == "total");
    }

    [Theory]
    [InlineData("part,price\nA,1\nA,2\n", "3:1", "two prices")]
    [InlineData("part,price\nA,\"1,20\"\n", "2:3", "no plain number")]
    [InlineData("part,price,currency\nA,1,EUR\nB,2,SEK\n", "3:5", "cannot be added")]
    [InlineData("name,price\nA,1\n", "1:1", "'part' and 'price_each' or 'mass_g' are needed")]
    [InlineData("part,price\n,1\n", "2:1", "without a part")]
    public void A_damaged_price_list_is_told_with_line_and_column(string text, string place, string message)
    {
        var read = Read(text);
        Assert.True(read.Failed);
        Assert.Contains(read.Diagnostics, d => $"{d.At!.Line}:{d.At.Column}" == place && d.Message.Contains(message, StringComparison.Ordinal));
    }

    [Fact]
    public void Times_are_counts_by_stated_minutes()
    {
        var order = FabricationOrder.Everything(ExamplePlans.Of("brackmere-six"));
        var usual = TimeEstimate.Of(order, ImmutableSortedDictionary<string, double>.Empty);
        var read = UnitTimeReader.Read("t", new MemoryFiles(new Dictionary<string, string> { ["t"] = "work,minutes\ncrimp,0.75\ntest,0\n" }), TimeEstimate.Works);
        var stated = TimeEstimate.Of(order, read.Value!);
        Assert.Equal(order.Plan.Wires.Length, usual.Single(l => l.Work == "cut").Count);
        Assert.Equal(CrimpGroups.Of(order).Sum(g => g.Crimps), usual.Single(l => l.Work == "crimp").Count);
        Assert.Equal(order.Plan.Splices.Length, usual.Single(l => l.Work == "splice").Count);
        Assert.Equal(0.75 * usual.Single(l => l.Work == "crimp").Count, stated.Single(l => l.Work == "crimp").Minutes, 9);
        Assert.Equal(0, stated.Single(l => l.Work == "test").Minutes);
        Assert.Equal(usual.Single(l => l.Work == "lay").Minutes, stated.Single(l => l.Work == "lay").Minutes);
        Assert.Equal(2 * usual.Sum(l => l.Count) - (2 * usual.Single(l => l.Work == "pull test").Count), TimeEstimate.Of(Twice(order), ImmutableSortedDictionary<string, double>.Empty).Where(l => l.Work != "pull test").Sum(l => l.Count), 6);
        Assert.True(UnitTimeReader.Read("t", new MemoryFiles(new Dictionary<string, string> { ["t"] = "work,minutes\ncrmp,1\ncrimp,soon\ncut,1\ncut,2\n" }), TimeEstimate.Works) is { Failed: true, Diagnostics.Length: 3 });
    }

    [Fact]
    public void A_bundle_is_laid_in_layers_of_six_more_each_time()
    {
        // 1 + 6 + 12 + 18: equal round wires round a core
        Assert.Equal([0, 1, 1, 2, 2, 3], new[] { 0, 1, 6, 7, 18, 19 }.Select(BundlePosition.LayerOf));
        var plan = ExamplePlans.Of("brackmere-six");
        var laid = BundlePosition.Of(plan);
        Assert.All(plan.Wires.Where(w => !w.Segments.IsEmpty), w => Assert.True(laid.ContainsKey(w.Id)));
        Assert.Contains(laid.Values, v => v.EndsWith(" core", StringComparison.Ordinal));
    }

    [Fact]
    public void Lists_are_written_with_the_separator_decimal_mark_and_beginning_asked_for()
    {
        foreach (var command in new[] { "buy", "reels", "kit", "cut" })
        {
            var run = CliRun.Of(command, Saloon, "--separator", "semicolon", "--decimal", "comma", "--mark");
            Assert.Equal(0, run.Code);
            Assert.Equal('\uFEFF', run.Output[0]);
            var rows = SmallCsvReader.Read(run.Output[1..], ';');
            Assert.All(rows, r => Assert.Equal(rows[0].Count, r.Count));
            Assert.True(rows[0].Count > 3);
        }
    }

    private static FabricationOrder Twice(FabricationOrder order) => new(order.Plan with { Wires = [.. order.Plan.Wires.Select(w => w with { Builds = BuildCondition.Always })], Splices = [.. order.Plan.Splices.Select(s => s with { Builds = BuildCondition.Always })] }, [new(order.Plan.Builds[0], 2)]);

    private static int Lists(FabricationOrder order)
    {
        var reels = ReelPlanner.Plan(order, new());
        var table = CutListTables.Of(order, "reel", reels.CutFrom);
        return ListCsvWriter.Write(table).Length > 0 ? table.Rows.Length : 0;
    }

    private static HarnessDraw.Diagnostics.Outcome<PriceList> Read(string text) => PriceReader.Read("p.csv", new MemoryFiles(new Dictionary<string, string> { ["p.csv"] = text }));
}
