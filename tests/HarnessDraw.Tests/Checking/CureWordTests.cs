using HarnessDraw.Checking;
using HarnessDraw.Checking.Cures;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Words and proposals of cures fit the vehicle that they are for. Common practice, no source.</summary>
public class CureWordTests
{
    private static readonly Plan DimLamp = SmallPlan.Plan.Volts("headlamp right.56b", 11.8);

    [Theory]
    [InlineData("firewall", "two wires through firewall")]
    [InlineData("rear bulkhead", "two wires through rear bulkhead")]
    [InlineData(null, "two wires from there on")]
    public void A_shared_fuse_speaks_of_the_connector_that_its_circuit_passes(string? mate, string words)
    {
        var cure = Found(SmallPlan.Plan.Circuit("dipped beam", c => c with { EntersBy = mate }), "shared-lamp-fuse").Cure;
        Assert.Contains(words, cure, StringComparison.Ordinal);
        Assert.Equal(mate == "firewall", cure!.Contains("firewall", StringComparison.Ordinal));
    }

    [Fact]
    public void No_size_is_proposed_that_a_terminal_of_its_wires_does_not_take()
    {
        // the bulkhead's 2.8 contacts of the small catalogue take 2.5 mm2, the lamp's sockets 4; its wire has 1
        Assert.Equal([1.5, 2.0, 2.5], Sizes(DimLamp));
        Assert.Equal([2.5], Sizes(DimLamp.Wire("F03", Of(2))));
        var full = DimLamp.Wire("F01", Of(2.5)).Wire("F02", Of(2.5)).Wire("F03", Of(2.5));
        Assert.Empty(Sizes(full));
    }

    [Fact]
    public void A_wire_as_thick_as_its_terminals_take_is_told_another_way_than_larger_wire()
    {
        Plan Full(double areaMm2) => DimLamp.Wire("F01", Of(areaMm2)).Volts("firewall.B2", 12.5).Volts("SP1", 11.9);
        Assert.Contains("F01 loses most: use larger wire", Found(Full(2), "loop-drop").Cure, StringComparison.Ordinal);
        var cure = Found(Full(2.5), "loop-drop").Cure;
        Assert.Contains("F01 loses most, and its terminals take no larger wire: bring source or ground point nearer", cure, StringComparison.Ordinal);
        Assert.DoesNotContain("use larger wire", cure, StringComparison.Ordinal);
    }

    /// <summary>A bar may gather returns: no fuse is put on that.</summary>
    [Fact]
    public void A_relay_is_fed_from_a_bar_that_is_fed()
    {
        var plan = DimLamp.Harness(h => h with { Things = [.. h.Things.Where(t => t.Id == "bus bar").Select(t => t with { Id = "minus bar" }), .. h.Things] });
        plan = plan.Harness(h => h with { Catalogue = h.Catalogue with { Connectors = [.. h.Catalogue.Connectors, h.Catalogue.Connectors.First(c => c.Cavities.Length >= 4) is var like ? like with { Id = "relay-four", Cavities = [.. like.Cavities.Take(4)] } : like] } });
        var relays = Proposals(plan).Where(c => c.Words.StartsWith("a relay at", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(relays);
        Assert.All(relays, r => Assert.Contains("fed from bus bar through", r.Words, StringComparison.Ordinal));
    }

    private static Func<Wire, Wire> Of(double areaMm2) => w => w with { AreaMm2 = areaMm2, SizeLabel = areaMm2.ToString(System.Globalization.CultureInfo.InvariantCulture) };

    private static Finding Found(Plan plan, string rule) => HarnessChecker.Check(plan, RuleSettings.BuiltIn).First(f => f.Rule == rule && f.Where.Contains("dipped beam"));

    private static IEnumerable<CureCandidate> Proposals(Plan plan) => CureProposals.Of(plan, RuleSettings.BuiltIn, Found(plan, "loop-drop")).SelectMany(l => l.Rungs);

    private static List<double> Sizes(Plan plan) =>
        [.. Proposals(plan).SelectMany(c => c.Changes).Where(c => c.Contains(".size=", StringComparison.Ordinal)).Select(c => double.Parse(c.Split('=')[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture))];
}
