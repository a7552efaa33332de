using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Model;

namespace HarnessDraw.Tests.Sheets;

public class ConnectorSheetsTests
{
    [Fact]
    public void Sheets_are_free_of_faults_in_colour_and_in_black()
    {
        foreach (var black in new[] { false, true })
        {
            var sheets = ConnectorSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = black }).Sheets;
            SheetPictures.Put("small", sheets);
            AssertFaultless(sheets);
            Assert.All(sheets, s => Assert.Equal(black, s.BlackInk));
        }
    }

    [Fact]
    public void Positions_mirror_about_the_upright_axis_and_letters_do_not()
    {
        var sheet = ConnectorSheets.Compose(SmallPlan.Plan, [], new()).Sheets[0];
        var part = SmallCatalogue.Catalogue.Connectors.Single(c => c.IsBulkhead);
        var rings = ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Tag?.Cavity is not null).ToLookup(p => p.Tag!.Cavity!, Centre);
        var middles = new List<double>();
        foreach (var cavity in part.Cavities)
        {
            var at = rings[$"firewall:{cavity.Name}"].OrderBy(p => p.X).ToList();
            Assert.Equal(2, at.Count);
            Assert.Equal(at[0].Y, at[1].Y, 6);
            middles.Add((at[0].X + at[1].X) / 2);
        }

        // one and the same upright line mirrors every cavity, and distances keep the catalogue's proportion
        Assert.All(middles, m => Assert.Equal(middles[0], m, 6));
        var (a, b) = (Left("A2"), Left("B3"));
        Assert.Equal((65 - 20) / (b.X - a.X), (30 - 15) / (Left("A5").Y - a.Y), 6);
        Assert.All(ItemWalk.Texts(sheet), t => Assert.Equal(0, t.TurnDegrees));

        Point Left(string name) => rings[$"firewall:{name}"].MinBy(p => p.X);
    }

    [Fact]
    public void Each_circle_holds_its_own_name_and_wire_in_both_views()
    {
        var sheet = ConnectorSheets.Compose(SmallPlan.Plan, [], new()).Sheets[0];
        var texts = ItemWalk.Texts(sheet).ToList();
        foreach (var ring in ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Tag?.Cavity is not null))
        {
            var centre = Centre(ring);
            var inside = texts.Where(t => t.Anchor == TextAnchor.Middle && Math.Abs(t.At.X - centre.X) < 1e-6 && Math.Abs(t.At.Y - centre.Y) < 4).OrderBy(t => t.At.Y).Select(t => t.Text);
            var cavity = ring.Tag!.Cavity!.Split(':')[1];
            var wire = SmallPlan.Plan.Cavities.Single(c => c.Connector == "firewall" && c.Cavity == cavity).Wire;
            Assert.Equal(wire is null ? [cavity] : [cavity, wire], inside);
        }
    }

    [Fact]
    public void Every_cavity_and_every_wire_of_every_connector_stands_in_a_table_once()
    {
        var texts = ConnectorSheets.Compose(SmallPlan.Plan, [], new()).Sheets.SelectMany(ItemWalk.Texts).Where(t => t.Anchor == TextAnchor.Start).ToList();
        var cavities = texts.Select(t => t.Tag?.Cavity).OfType<string>().Order(StringComparer.Ordinal);
        Assert.Equal(SmallPlan.Plan.Cavities.Where(HasWires).Select(c => $"{c.Connector}:{c.Cavity}").Order(StringComparer.Ordinal), cavities);
        foreach (var wires in SmallPlan.Plan.Cavities.Where(c => c.Wire is not null).GroupBy(c => c.Wire!))
        {
            Assert.Equal(wires.Count(), texts.Count(t => t.Text == wires.Key && t.Tag?.For == wires.Key));
        }

        static bool HasWires(CavityUse use) => SmallPlan.Plan.Cavities.Any(c => c.Connector == use.Connector && c.Wire is not null);
    }

    [Fact]
    public void What_is_not_known_is_a_dash_and_never_a_nought()
    {
        var plan = SmallPlan.Plan with { Nodes = [], Wires = [.. SmallPlan.Plan.Wires.Select(w => w with { Worst = null })] };
        var texts = ConnectorSheets.Compose(plan, [], new()).Sheets.SelectMany(ItemWalk.Texts).ToList();
        Assert.DoesNotContain(texts, t => t.Text is "0.0" or "0" or "NaN" or "−0.0");
        Assert.Contains("any cavity with – under off may be live", string.Join(' ', texts.Select(t => t.Text)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_body_of_the_shipped_catalogue_can_be_drawn_full(bool black)
    {
        var sheets = ConnectorSheets.Compose(FullPlan.Plan, [], new() { BlackInk = black }).Sheets;
        SheetPictures.Put("full", sheets);
        AssertFaultless(sheets);
        foreach (var use in FullPlan.Plan.Cavities)
        {
            Assert.True(PagesOf(sheets, use) > 0, use.Connector);
            Assert.Equal(2, sheets.SelectMany(ItemWalk.All).Count(i => i is PathItem && i.Tag?.Cavity == $"{use.Connector}:{use.Cavity}") / PagesOf(sheets, use));
        }
    }

    [Fact]
    public void Long_and_hostile_names_keep_apart()
    {
        var name = "horn \"<script>\" \u202e & " + new string('W', 300);
        var plan = SmallPlan.With(SmallPlan.Plan, "F07", w => w with { Circuit = name, To = w.To with { At = name, Pin = name }, Builds = new BuildCondition([new(name, [name])]) });
        plan = plan with { Cavities = [.. plan.Cavities.Select(c => c.Wire == "F07" ? c with { Builds = new BuildCondition([new(name, [name])]) } : c)] };
        var things = plan.Harness.Things.Select(t => t.Kind is ThingKind.Mate or ThingKind.Motor ? t with { Label = name, Place = name } : t);
        var sheets = ConnectorSheets.Compose(plan with { Harness = plan.Harness with { Things = [.. things], Vehicle = name } }, [], new()).Sheets;
        SheetPictures.Put("hostile", sheets);
        AssertFaultless(sheets);
    }

    [Theory]
    [InlineData("A2")]
    [InlineData("Tabloid")]
    public void Other_papers_hold_the_same_cavities(string paper)
    {
        var result = ConnectorSheets.Compose(SmallPlan.Plan, [], new() { Paper = PaperSizes.Find(paper) });
        SheetPictures.Put($"small-{paper}", result.Sheets);
        Assert.Null(result.Refused);
        AssertFaultless(result.Sheets);
        Assert.All(result.Sheets, s => Assert.Equal(paper, s.Paper.Name));
    }

    [Fact]
    public void A_connector_too_large_for_the_paper_is_refused_with_what_would_do_and_the_others_are_drawn()
    {
        var result = ConnectorSheets.Compose(SmallPlan.Plan, [], new() { Paper = PaperSizes.A4Landscape });
        Assert.Equal("connector firewall needs A3", result.Refused);
        Assert.NotEmpty(result.Sheets);
        AssertFaultless(result.Sheets);
    }

    // faces stand on every page of a connector
    private static int PagesOf(IEnumerable<Sheet> sheets, CavityUse use) =>
        sheets.Count(s => ItemWalk.All(s).Any(i => i is PathItem && i.Tag?.Cavity == $"{use.Connector}:{use.Cavity}"));

    private static void AssertFaultless(IEnumerable<Sheet> sheets) =>
        Assert.Equal([], sheets.SelectMany(s => SheetChecker.Check(s).Select(f => $"{s.Title}: {f}")));

    private static Point Centre(PathItem circle)
    {
        var left = ((PathStep.MoveTo)circle.Outline.Steps[0]).To;
        var right = ((PathStep.ArcTo)circle.Outline.Steps[1]).To;
        return new((left.X + right.X) / 2, left.Y);
    }
}
