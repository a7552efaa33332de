using HarnessDraw.Checking;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Electrical;

/// <summary>What the key and hand switches do that nobody meant, and the figures that network, rules and bench test share.</summary>
public sealed class SwitchedFaultTests
{
    private static readonly Plan Saloon = ExamplePlans.Of("brackmere-six");

    [Fact]
    public void Other_loads_behind_the_key_keep_the_charge_lamp_from_holding_the_ignition_relay() => Assert.Empty(KeyOffFinder.Find(Saloon));

    [Fact]
    public void A_bare_exciter_wire_feeds_back_what_hangs_behind_the_key()
    {
        // some ten loads share what three field diodes give: a volt is left for each
        var fed = KeyOffFinder.Find(Without(Saloon, "charge lamp"));
        Assert.Contains(fed, r => r.Circuit == "blower fast" && r.Share > 0.1);
        Assert.All(fed, r => Assert.InRange(r.VoltageV, 0.1, 14.2));
    }

    [Fact]
    public void Without_its_ground_a_lamp_is_fed_through_its_neighbour()
    {
        var sound = FaultFinder.Find(Saloon).Switches;
        var lifted = FaultFinder.Find(Saloon with { Wires = [.. Saloon.Wires.Where(w => w.Circuit != "front lamp left ground")] }).Switches;
        Assert.Empty(sound.Sneaks);
        Assert.InRange(sound.Tried, 30, 400);
        Assert.Contains(lifted.Sneaks, s => s.Load.StartsWith("front lamp left", StringComparison.Ordinal) && s.Switches.Any(n => n is "turn left" or "parking lamps"));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_load_of_a_fuse_is_that_of_its_worst_solved_state(string example)
    {
        var plan = ExamplePlans.Of(example);
        var solved = BuildLister.Covering(plan.Builds).SelectMany(b => NetworkSolver.Solve(plan, b)).Where(p => plan.Harness.States.First(s => s.Id == p.State).Engine != EngineState.Cranking)
            .SelectMany(p => p.Fuses).GroupBy(f => f.Fuse, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(f => Math.Abs(f.CurrentA)), StringComparer.Ordinal);
        // an alternator's fuse is loaded by what the alternator can give
        foreach (var fuse in plan.Fuses.Where(f => f.LoadState is not null && !f.Why!.Contains("output", StringComparison.Ordinal) && plan.Wires.All(w => w.Circuit != "charge lead" || !w.ProtectedBy.Contains(f.Id))))
        {
            Assert.True(Math.Abs(fuse.LoadA!.Value - solved[fuse.Id]) <= 0.03 * solved[fuse.Id] + 0.01, $"{fuse.Id} {fuse.LoadA} {solved[fuse.Id]}");
        }
    }

    [Fact]
    public void Network_and_rules_know_one_resistance_for_each_joint()
    {
        var graph = PowerGraph.Of(Saloon);
        var point = NetworkSolver.Solve(Saloon).Single(p => p.State == "night and rain");
        var compared = 0;
        foreach (var wire in Saloon.Wires.Where(w => w.From.Pin is not null && w.To.Pin is not null))
        {
            var joints = point.Contacts.Where(c => c.Wire == wire.Id && Math.Abs(c.CurrentA) > 0.1).ToList();
            if (joints.Count == 2)
            {
                compared++;
                var copper = PowerGraph.OhmOf(Saloon, wire, wire.Worst?.TemperatureC ?? 20);
                Assert.Contains(graph.From(wire.From.ToString()), h => h.Wire == wire && Math.Abs(h.Ohm - copper - joints.Sum(j => j.PowerW / (j.CurrentA * j.CurrentA))) < 1e-9);
            }
        }

        Assert.True(compared > 15, $"{compared} wires");
    }

    private static Plan Without(Plan plan, params string[] things) =>
        plan with { Harness = plan.Harness with { Things = [.. plan.Harness.Things.Select(t => things.Contains(t.Id) ? t with { Elements = [] } : t)] } };
}
