using HarnessDraw.Planning;
using HarnessDraw.Tests.Reading;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// A pump at the far right: along the engine in the covering of its wires 1500 mm, 650 of them new; along the cowl 1200 mm, 900 of them new. The longer way saves 250 mm of covering, which is
/// worth it where the engine is as cool as the cowl, and not where its heat makes the wire three times as thick over its whole length. Common practice, no source.
/// </summary>
public sealed class HotWayTests
{
    [Theory]
    [InlineData(60, "engine", 0.5)]
    [InlineData(92, "cowl", 0.5)]
    public void A_wire_goes_round_heat_that_makes_it_thicker_than_the_covering_is_worth(int engineC, string by, double areaMm2)
    {
        var plan = Plan(engineC);
        var wire = plan.Wires.Single(w => w.Circuit == "pump feed");
        Assert.Equal(by == "cowl" ? 1200 : 1500, wire.PathLengthMm!.Value, 0.5);
        Assert.Equal(areaMm2, wire.AreaMm2);
    }

    [Fact]
    public void A_load_that_sits_in_the_heat_gets_there_by_the_way_that_it_shares()
    {
        var plan = Plan(92, pumpZone: "engine");
        Assert.Equal(1500, plan.Wires.Single(w => w.Circuit == "pump feed").PathLengthMm!.Value, 0.5);
    }

    private static Plan Plan(int engineC, string pumpZone = "bay") => HarnessPlanner.Plan(
        new SmallVehicle
        {
            Things = """
                things:
                  bus bar: { at: pass, bar: 3 studs M8 }
                  coil: { at: engine front, blade: 6.3 mm, heater: 2 A, grounds-itself: yes }
                  wiper: { at: cowl, blade: 6.3 mm, heater: 2 A, grounds-itself: yes }
                  pump: { at: far right, blade: 6.3 mm, heater: 4 A, grounds-itself: yes }

                """,
            Power = "power:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: pass, posts: { plus: M8, minus: M8 } }\n\n",
            Protection = "protection:\n  F1: { kind: blade, on: bus bar, rating: 5 A }\n  F2: { kind: blade, on: bus bar, rating: 5 A }\n  F3: { kind: blade, on: bus bar, rating: 7.5 A }\n",
            Circuits = "circuits:\n  coil feed: { from: F1, feeds: coil, live: run }\n  wiper feed: { from: F2, feeds: wiper, live: run }\n  pump feed: { from: F3, feeds: pump, live: run }\n",
            Layout = $$"""
                vehicle-layout: Small van
                root: pass
                zones:
                  bay: { ambient: 60 degC, exposure: dry }
                  engine: { ambient: {{engineC}} degC, exposure: dry }
                places:
                  pass: { at: [0, 0, 600], zone: bay }
                  engine front: { at: [800, 100, 600], zone: engine }
                  cowl: { at: [100, 400, 600], zone: bay }
                  far right: { at: [900, 600, 600], zone: {{pumpZone}} }
                paths:
                  - { from: pass, to: engine front, measured: 850 mm, zone: engine }
                  - { from: engine front, to: far right, measured: 650 mm, zone: engine }
                  - { from: pass, to: cowl, measured: 300 mm, zone: bay }
                  - { from: cowl, to: far right, measured: 900 mm, zone: {{pumpZone}} }
                """,
        }.Harness(),
        PlanningOptions.Usual);
}
