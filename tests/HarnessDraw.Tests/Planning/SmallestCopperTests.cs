using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Planning.Sizing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Planning;

/// <summary>The smallest copper that satisfies every rule: each wire of the examples is made one size smaller, and the states are solved again with it.</summary>
public sealed class SmallestCopperTests
{
    private const double TiesV = 0.0005;

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_wire_can_go_one_size_down_without_breaking_a_rule(string example)
    {
        var plan = ExamplePlans.Of(example);
        var before = Drops(plan);
        var tried = 0;
        foreach (var wire in plan.Wires.Where(w => w.DecidedBy is not ("given by hand" or "unfused cable" or "terminal")))
        {
            var sizes = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType).Sizes;
            var size = sizes.IndexOf(sizes.Single(s => s.Label == wire.SizeLabel));
            if (size == 0 || sizes[size - 1].AreaMm2 < PlanningOptions.Usual.SmallestAreaMm2 - 1e-9)
            {
                continue;
            }

            tried++;
            var smaller = sizes[size - 1];
            var bearsA = wire.AmpacityA!.Value / Ampacity.InAirA(sizes[size]) * Ampacity.InAirA(smaller);
            var tooHot = bearsA < Math.Max(Steady(wire), Rating(plan, wire)) + 0.005;
            Assert.True(tooHot || DropsTooMuch(plan, wire, smaller, before), $"{example} {wire.Id} {wire.Circuit}: {smaller.Label} instead of {wire.SizeLabel} ({wire.DecidedBy}: {wire.RunnerUp})");
        }

        Assert.True(tried > 3, $"{tried} wires");
    }

    /// <summary>The other way: what is two sizes too thick can lose one.</summary>
    [Fact]
    public void A_wire_that_is_too_thick_is_found()
    {
        var plan = ExamplePlans.Of("aldervane-coach");
        var wire = plan.Wires.Single(w => w.Circuit == "dipped right" && w.To.At == "headlamp right");
        var sizes = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType).Sizes;
        var size = sizes.IndexOf(sizes.Single(s => s.Label == wire.SizeLabel));
        var thick = wire with { SizeLabel = sizes[size + 2].Label, AreaMm2 = sizes[size + 2].AreaMm2 };
        var oversized = plan with { Wires = [.. plan.Wires.Select(w => w.Id == wire.Id ? thick : w)] };
        Assert.False(DropsTooMuch(oversized, thick, sizes[size + 1], Drops(oversized)));
    }

    [Fact]
    public void A_motor_ground_is_no_thinner_than_its_fuse_asks_for()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var ground = plan.Wires.Single(w => w.Circuit == "fan ground");
        Assert.True(ground.AmpacityA >= plan.Fuses.Single(f => f.Id == "F2").RatingA, $"{ground.SizeLabel} bears {ground.AmpacityA} A");
        // a lamp's ground follows its own current: a shorted lamp opens its fuse by way of the holder
        Assert.True(plan.Wires.Single(w => w.Circuit == "side marker left ground").AreaMm2 < ground.AreaMm2);
    }

    // a starting current lasts for seconds only
    private static double Steady(Wire wire) => wire.Worst!.State == "cranking" ? wire.Worst.CurrentA / PlanningOptions.Usual.MomentaryFactor : wire.Worst.CurrentA;

    private static double Rating(Plan plan, Wire wire)
    {
        var fuses = wire.ProtectedBy.Take(1).Concat(MotorFuses(plan, wire));
        return fuses.Select(f => plan.Fuses.First(p => p.Id == f).RatingA ?? 0).DefaultIfEmpty(0).Max();
    }

    private static IEnumerable<string> MotorFuses(Plan plan, Wire wire) =>
        from end in (WireEnd[])[wire.From, wire.To]
        from element in plan.Harness.Things.FirstOrDefault(t => t.Id == end.At)?.Elements ?? []
        where element.Kind == ElementKind.Motor && element.PinB is not null && element.PinB == end.Pin
        from feed in plan.Wires.Where(w => w.To.ToString() == $"{end.At}.{element.PinA}")
        from fuse in feed.ProtectedBy.Take(1)
        select fuse;

    /// <summary>True when a load that loses more than its limit loses more still, or one comes to lose more than it.</summary>
    private static bool DropsTooMuch(Plan plan, Wire wire, WireSize smaller, Dictionary<string, (double DropV, double LimitV)> before)
    {
        var thinner = plan with { Wires = [.. plan.Wires.Select(w => w.Id == wire.Id ? w with { SizeLabel = smaller.Label, AreaMm2 = smaller.AreaMm2 } : w)] };
        return Drops(thinner).Any(d => d.Value.DropV > d.Value.LimitV - TiesV && before.TryGetValue(d.Key, out var was) && d.Value.DropV > was.DropV + TiesV)
            || wire.Circuit.Contains("charge", StringComparison.Ordinal) || wire.Worst?.State == "cranking";
    }

    private static Dictionary<string, (double DropV, double LimitV)> Drops(Plan plan)
    {
        var drops = new Dictionary<string, (double, double)>(StringComparer.Ordinal);
        foreach (var (build, number) in BuildLister.Covering(plan.Builds).Select((b, i) => (b, i)))
        {
            foreach (var point in NetworkSolver.Solve(plan, build))
            {
                foreach (var load in point.Loads.Where(l => l is { Element: not null, Circuit: not null }))
                {
                    var circuit = plan.Harness.Circuits.Single(c => c.Id == load.Circuit);
                    var kind = plan.Harness.Things.First(t => t.Id == load.Thing).Elements.First(e => e.Id == load.Element).Kind;
                    var limit = circuit.Importance == Importance.Critical ? 0.03 : kind == ElementKind.Motor ? 0.05 : 0.1;
                    var source = point.Sources.Where(s => plan.Harness.Power.Sources.Any(p => p.Id == s.Source && p.NominalV == circuit.NominalV)).ToArray();
                    if (source.Length > 0 && Math.Abs(load.VoltageV) >= 0.5 * source[0].VoltageV)
                    {
                        drops[$"{number} {point.State} {load.Thing} {load.Element}"] = (source[0].VoltageV - Math.Abs(load.VoltageV), limit * circuit.NominalV);
                    }
                }
            }
        }

        return drops;
    }
}
