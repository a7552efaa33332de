using System.Globalization;
using HarnessDraw.Checking;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Published;

/// <summary>Facts of the trade, common practice, no source: what shops do, beside what the program answers.</summary>
public sealed class TradeFactsTests(ITestOutputHelper output)
{
    /// <summary>6 AWG, 13.3 mm2: what shops use for the feed and the charge lead of alternators of the usual size on runs of a metre or so.</summary>
    private const double ShopMm2 = 13.3;

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Bolt_in_fuses_of_charge_lead_and_panel_feeds_sit_close_to_the_source(string example)
    {
        var plan = ExamplePlans.Of(example);
        var context = new RuleContext(plan, RuleSettings.BuiltIn);
        Assert.DoesNotContain(HarnessChecker.Check(plan, RuleSettings.BuiltIn), f => f.Rule == "unfused-too-long");
        // 40 in from where the battery's cable ends, where the lead is sheathed: ABYC E-11 as quoted
        var reaches = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).SelectMany(p => UnfusedReach.From(context, p.Node)).ToList();
        Assert.All(reaches, r => Assert.True(r.LengthMm <= 1016, $"{r.Wire.Circuit} {r.LengthMm}"));
        var feeds = plan.Wires.Where(w => w.Circuit.Contains("panel feed", StringComparison.Ordinal) || (w.Circuit == "charge lead" && example != "dunmarrow-18")).ToList();
        Assert.All(feeds, w => Assert.Contains(plan.Harness.Protections, p => p.Id == w.ProtectedBy[0] && p is { Kind: ProtectionKind.BoltIn, On: "bus bar" }));
    }

    /// <summary>
    /// The program's own answer for a charge lead, beside the marine table's for 3 % and beside 6 AWG. It differs from both because the lead must bear its fuse where it lies: a table of
    /// drops knows no heat, and a shop's 6 AWG carries 55 A but not, in PVC at 85 degC, the 70 A that its fuse lets pass for good.
    /// </summary>
    [Fact]
    public void The_charge_lead_beside_six_gauge_and_the_marine_table()
    {
        var rows = File.ReadAllLines(ReferenceFolder.Find("voltage_drop_12V_3pct_marine.csv")).Where(l => l.Length > 0 && char.IsDigit(l[0])).Select(l => l.Split(',')).ToList();
        var catalogue = ExamplePlans.Of("brackmere-six").Harness.Catalogue;
        var bolts = catalogue.Fuses.First(f => f.Kind == ProtectionKind.BoltIn).Ratings.Select(r => r.RatingA).Order().ToList();
        var answers = new Dictionary<(double, double, string), double>();
        output.WriteLine("output A | ambient degC | wire | fuse A | by fuse and heat mm2 | by 0.3 V over 1.2 m mm2 | decided mm2 | marine table for 3 %, 2.4 m out and back");
        foreach (var outputA in new[] { 45.0, 55, 65, 100 })
        {
            var marine = rows.Where(r => Number(r[1]) >= outputA && Number(r[0]) * 304.8 >= 2400).OrderBy(r => Number(r[1])).ThenBy(r => Number(r[0])).Select(r => $"{r[2]} AWG ({r[1]} A, {r[0]} ft)").First();
            foreach (var (type, ambientC) in from id in new[] { "thin-wall-105", "cross-linked-125" } from c in new[] { 60.0, 85 } select (catalogue.WireTypes.Single(t => t.Id == id), c))
            {
                var fuse = bolts.First(r => r >= (PlanningOptions.Usual.FuseOverOutput * outputA) - 1e-9);
                var byHeat = type.Sizes.First(s => Ampacity.DeratedA(s, type.MaxC, ambientC, 1) >= fuse).AreaMm2;
                // the fuse loses its share, four rings the rest
                var wireV = 0.3 - (PlanningOptions.Usual.FuseDropV * outputA / fuse) - (outputA * 4 * 0.0002);
                var byDrop = DropRule.Smallest(type.Sizes, outputA, 1200, wireV, type.MaxC)!.AreaMm2;
                answers.Add((outputA, ambientC, type.Id), Math.Max(byHeat, byDrop));
                output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{outputA} | {ambientC} | {type.Id} | {fuse} | {byHeat} | {byDrop} | {Math.Max(byHeat, byDrop)} ({(byHeat >= byDrop ? "fuse and heat" : "drop")}) | {marine}"));
            }
        }

        // cross-linked wire at a usual ambient: 6 AWG it is, to the neighbouring metric size
        Assert.InRange(answers[(55, 60, "cross-linked-125")], 10, 16);
        // hotter, or in PVC, the answer is never thinner
        Assert.All(answers.Where(a => a.Key.Item1 >= 55), a => Assert.True(a.Value >= 10, $"{a.Key} {a.Value}"));
        Assert.True(answers[(55, 85, "thin-wall-105")] > ShopMm2);
        Assert.True(answers[(100, 85, "cross-linked-125")] > ShopMm2);
    }

    [Fact]
    public void An_exciter_wire_belongs_to_an_alternator_with_an_exciter_terminal()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var exciter = plan.Wires.Single(w => w.Circuit == "exciter");
        Assert.All(plan.Builds, b => Assert.Equal(b["charging"] == "exciter", exciter.Builds.Holds(b)));
        Assert.Empty(HarnessChecker.Check(plan, RuleSettings.BuiltIn).Where(f => f.Rule == "one-wire-keeps-exciter"));
        var always = plan with { Harness = plan.Harness with { Circuits = [.. plan.Harness.Circuits.Select(c => c.Id == "exciter" ? c with { OnlyWith = BuildCondition.Always } : c)] } };
        Assert.Contains(HarnessChecker.Check(always, RuleSettings.BuiltIn), f => f.Rule == "one-wire-keeps-exciter");
    }

    [Fact]
    public void A_switched_feed_works_a_relay_coil_and_nothing_heavier()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var triggers = plan.Harness.Circuits.Where(c => c.TriggersOnly).Select(c => c.Id).ToList();
        Assert.Contains("fan trigger", triggers);
        Assert.All(plan.Wires.Where(w => triggers.Contains(w.Circuit)), w => Assert.True(w.Worst!.CurrentA < 1, $"{w.Circuit} {w.Worst.CurrentA} A"));
        var heavy = plan with { Harness = plan.Harness with { Circuits = [.. plan.Harness.Circuits.Select(c => c.Id == "fan trigger" ? c with { Feeds = [new("fan", "1")] } : c)] } };
        Assert.Contains(HarnessChecker.Check(heavy, RuleSettings.BuiltIn), f => f.Rule == "trigger-feeds-load");
    }

    /// <summary>The jumper stands where the pump's interlock would: the two are never in one build.</summary>
    [Fact]
    public void The_wipers_jumper_and_the_washer_pump_exclude_each_other()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var jumper = plan.Wires.Single(w => w.Circuit == "washer jumper");
        Assert.All(plan.Wires.Where(w => w.Circuit.StartsWith("washer interlock", StringComparison.Ordinal)), w => Assert.DoesNotContain(plan.Builds, b => w.Builds.Holds(b) && jumper.Builds.Holds(b)));
        var beside = plan with { Wires = [.. plan.Wires.Select(w => w.Id == jumper.Id ? w with { Builds = BuildCondition.Always } : w)] };
        Assert.Contains(HarnessChecker.Check(beside, RuleSettings.BuiltIn), f => f.Rule == "jumper-beside-wire");
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
