using HarnessDraw.Electrical;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Electrical;

public class OperatingPointTests(ITestOutputHelper output)
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_state_of_every_build_settles_and_balances(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var build in plan.Builds)
        {
            foreach (var point in NetworkSolver.Solve(plan, build))
            {
                Assert.True(point.Settled, $"{point.State} {string.Join(' ', build)}");
                Assert.True(point.ImbalanceShare < 1e-9, $"{point.State}: {point.GivenW} W given, {point.TakenW} W taken");
                Assert.All(point.Volts.Values, v => Assert.True(v is null || double.IsFinite(v.Value)));
                Assert.All(point.Wires, w => Assert.True(double.IsFinite(w.CurrentA) && w.TemperatureC is > -60 and < 1084));
            }
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Current_into_every_splice_comes_out_of_it(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var point in NetworkSolver.Solve(plan))
        {
            var amperes = point.Wires.ToDictionary(w => w.Wire, w => w.CurrentA, StringComparer.Ordinal);
            foreach (var splice in plan.Splices)
            {
                var sum = splice.Wires.Sum(id => plan.WireOf(id).To.At == splice.Id ? amperes[id] : -amperes[id]);
                Assert.True(Math.Abs(sum) < 1e-8, $"{splice.Id} in {point.State}: {sum} A");
            }
        }
    }

    [Fact]
    public void A_running_alternator_holds_the_battery_near_fourteen_volts()
    {
        var point = NetworkSolver.Solve(ExamplePlans.Of("brackmere-six")).Single(p => p.State == "running");
        foreach (var source in point.Sources)
        {
            output.WriteLine($"{source.Source}: {source.VoltageV:0.000} V, {source.CurrentA:0.00} A of {source.OutputA}");
        }

        Assert.InRange(point.Sources.Single(s => s.Source == "main battery").VoltageV, 13.3, 14.2);
        Assert.InRange(point.Sources.Single(s => s.Source == "alternator").CurrentA, 1, 55.1);
    }

    [Fact]
    public void What_a_panel_may_draw_at_the_most_is_not_drawn_with_the_key_off()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        double Given(Plan asked, string state) => NetworkSolver.Solve(asked).Single(p => p.State == state).Loads.Where(l => l.Thing == "given for the circuit").Sum(l => l.CurrentA);
        Assert.Equal(0, Given(plan, "off"), 6);
        Assert.True(Given(plan, "running") > 5);

        // unless the state says so
        var named = plan with { Harness = plan.Harness with { States = [.. plan.Harness.States.Select(s => s with { On = [.. s.On, "lamp panel feed"] })] } };
        Assert.True(Given(named, "off") > 5);
    }

    [Fact]
    public void A_lamp_on_fewer_volts_draws_more_than_a_resistor_would()
    {
        var point = NetworkSolver.Solve([Circuits.Battery(1, 0, 12), Circuits.R(1, 2, 1), Circuits.Lamp(2, 0, 12, 4.6)]);
        var (volts, amperes) = (point.Volts[2]!.Value, point.Amperes[2]);
        Assert.Equal(4.6 * Math.Pow(volts / 12, 0.55), amperes, 3);
        Assert.True(amperes > 4.6 * volts / 12);
    }

    [Fact]
    public void A_diode_drops_about_seven_tenths_of_a_volt_at_an_ampere_and_blocks_the_other_way()
    {
        var forward = NetworkSolver.Solve([Circuits.Battery(1, 0, 12), Circuits.Diode(1, 2), Circuits.R(2, 0, 12)]);
        Assert.InRange(forward.Volts[1]!.Value - forward.Volts[2]!.Value, 0.69, 0.73);
        var backward = NetworkSolver.Solve([Circuits.Battery(1, 0, 12), Circuits.Diode(2, 1), Circuits.R(2, 0, 12)]);
        Assert.Equal(0, backward.Volts[2]!.Value, 6);
    }

    [Fact]
    public void What_hangs_on_nothing_has_no_volts_but_works_in_itself()
    {
        var point = NetworkSolver.Solve([Circuits.Battery(1, 0, 12), Circuits.R(1, 0, 6), Circuits.Battery(2, 3, 12), Circuits.R(2, 3, 12)]);
        Assert.Null(point.Volts[2]);
        Assert.Equal(12.6 / 12.008, point.Amperes[3], 9);
        Assert.True(point.Settled);
    }

    [Fact]
    public void A_wire_warms_with_its_current_and_stays_below_its_class_in_a_sound_plan()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        foreach (var point in NetworkSolver.Solve(plan).Where(p => p.State != "cranking"))
        {
            foreach (var (wire, at) in plan.Wires.Zip(point.Wires))
            {
                var type = plan.Harness.Catalogue.WireTypes.First(t => t.Id == wire.WireType);
                Assert.True(at.TemperatureC <= type.MaxC + 0.5, $"{wire.Id} in {point.State}: {at.TemperatureC} degC, {at.CurrentA} A");
            }
        }
    }
}
