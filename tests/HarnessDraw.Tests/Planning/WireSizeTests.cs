using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Model;
using HarnessDraw.Tests.Reading;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Planning;

/// <summary>Sizes as the trade would have them, on the small harness and on the example saloon.</summary>
public sealed class WireSizeTests
{
    [Fact]
    public void Two_speeds_of_one_motor_never_add_up()
    {
        var one = GroundOfFan(With(SmallHarness.Harness, 8, null));
        var two = GroundOfFan(With(SmallHarness.Harness, 8, 5));
        Assert.Equal(one.Worst!.CurrentA, two.Worst!.CurrentA, 0.05);
        Assert.Equal(one.AreaMm2, two.AreaMm2);
    }

    [Fact]
    public void A_ground_of_no_length_is_no_thicker_than_its_feed()
    {
        var wires = ExamplePlans.Of("brackmere-six").Wires;
        foreach (var ground in wires.Where(w => w.Circuit.Contains("headlamp", StringComparison.Ordinal) && w.Circuit.EndsWith("ground", StringComparison.Ordinal)))
        {
            var feeds = wires.Where(w => w.To.At == ground.From.At || w.To.At == ground.To.At).Where(w => w.Circuit is "dipped left" or "dipped right" or "main left" or "main right");
            // a short wire is the cheapest to thicken by the one size that whole sizes leave wanting
            var sizes = ExamplePlans.Of("brackmere-six").Harness.Catalogue.WireTypes.Single(t => t.Id == ground.WireType).Sizes;
            Assert.InRange(ground.AreaMm2, 0.5, sizes.First(s => s.AreaMm2 > feeds.Max(w => w.AreaMm2)).AreaMm2);
        }
    }

    [Fact]
    public void Automatic_colours_hold_no_swapped_pair()
    {
        var bare = SmallHarness.Harness with { Circuits = [.. SmallHarness.Harness.Circuits.Select(c => c with { Colour = null })], Kept = [] };
        var colours = HarnessPlanner.Plan(bare, PlanningOptions.Usual).Wires.Select(w => w.Colour).Distinct(StringComparer.Ordinal).ToHashSet(StringComparer.Ordinal);
        Assert.True(colours.Count > 5);
        Assert.DoesNotContain(colours, c => c.Length == 5 && c[..2] != c[3..] && colours.Contains($"{c[3..]}/{c[..2]}"));
    }

    [Theory]
    [InlineData("lamp way: { route-by: [F1, firewall, light switch.30, light switch.56, firewall, headlamp left.56a] }")]
    [InlineData("pair: { from: [headlamp left.56a, headlamp left.56b], feeds: [bus bar.1, bus bar.2], cable: { twisted: 33 mm } }")]
    public void Nets_of_a_circuit_that_meet_in_a_connector_differ_in_colour(string circuit)
    {
        var plan = HarnessPlanner.Plan(new SmallVehicle { Circuits = $"circuits:\n  {circuit}\n" }.Harness(), PlanningOptions.Usual);
        var wires = plan.Wires.Where(w => w.Circuit == circuit[..circuit.IndexOf(':')]).ToArray();
        Assert.Equal(2, wires.Select(w => w.Net).Distinct().Count());
        Assert.Equal(2, wires.Select(w => w.Colour).Distinct().Count());
    }

    /// <summary>Common practice, no source: battery, switch and starter are joined by cables of one size, as no fuse saves a thinner one.</summary>
    [Theory]
    [InlineData("dunmarrow-18", "battery cable", "starter lead")]
    [InlineData("brackmere-six", "starter cable", "bus bar feed")]
    public void An_unfused_cable_is_no_thinner_than_the_one_it_goes_on_from(string example, string before, string behind)
    {
        var wires = ExamplePlans.Of(example).Wires;
        var (first, second) = (wires.Single(w => w.Circuit == before), wires.Single(w => w.Circuit == behind));
        Assert.Equal(first.AreaMm2, second.AreaMm2);
        Assert.InRange(first.AreaMm2, 16, 70);
    }

    /// <summary>A fuse is rated by motors only where motors stop without it, and by no motor where none does: taken out of the solved network.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_fuse_is_rated_for_motors_only_where_motors_hang_on_it(string example)
    {
        var plan = ExamplePlans.Of(example);
        var opens = HarnessDraw.Electrical.FaultFinder.Opens(plan);
        foreach (var fuse in plan.Fuses.Where(f => f.Why!.Contains("mostly motors", StringComparison.Ordinal)))
        {
            Assert.Contains(opens.Where(o => o.What == $"fuse {fuse.Id}").SelectMany(o => o.Dead.Concat(o.Dim)), d => d.Load.Contains(" motor ", StringComparison.Ordinal));
        }

        foreach (var fuse in plan.Fuses.Where(f => f is { Given: false, LoadA: > 0 } && opens.Where(o => o.What == $"fuse {f.Id}").SelectMany(o => o.Dead.Concat(o.Dim)).All(d => !d.Load.Contains(" motor ", StringComparison.Ordinal))))
        {
            Assert.DoesNotContain("motors", fuse.Why!, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Only_a_fuse_that_passes_the_output_is_chosen_by_it()
    {
        foreach (var fuse in ExamplePlans.Of("dunmarrow-18").Fuses.Where(f => f.Why?.Contains("alternator output", StringComparison.Ordinal) == true))
        {
            Assert.Equal(20, fuse.LoadA!.Value, 2);
        }
    }

    [Fact]
    public void No_load_is_grounded_on_a_surface_that_does_not_conduct()
    {
        var harness = SmallHarness.Harness;
        var first = GroundOfFan(SmallHarness.Plan).To.At;
        var plastic = harness with
        {
            Layout = harness.Layout with { Surfaces = [.. harness.Layout.Surfaces.Where(s => s.Id != "grille"), new("grille", "plastic", false)] },
            Things = [.. harness.Things.Select(t => t.Id == first ? t with { Surface = "grille" } : t), .. harness.Things.Where(t => t.Id == first).Select(t => t with { Id = "second " + first })],
        };
        var plan = HarnessPlanner.Plan(plastic, PlanningOptions.Usual);
        Assert.NotEqual(first, GroundOfFan(plan).To.At);
    }

    private static Wire GroundOfFan(Plan plan) => plan.Wires.Single(w => w.From.At == "fan" && plan.Harness.Things.Any(t => t.Id == w.To.At && t.Kind == ThingKind.GroundPoint));

    private static Plan With(Harness harness, double fastA, double? slowA) => HarnessPlanner.Plan(
        harness with
        {
            Things =
            [
                .. harness.Things.Select(t => t.Id == "fan" ? t with { Elements = [t.Elements[0] with { CurrentA = fastA }, .. slowA is null ? Array.Empty<Element>() : [t.Elements[0] with { Id = "slow", CurrentA = slowA }]] } : t),
            ],
        },
        PlanningOptions.Usual);
}
