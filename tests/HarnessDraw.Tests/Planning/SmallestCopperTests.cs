using HarnessDraw.Checking;
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
        var (tried, slack) = Slack(ExamplePlans.Of(example));
        Assert.Empty(slack);
        Assert.True(tried > 3, $"{tried} wires");
    }

    /// <summary>
    /// Harnesses as 'new' writes them for any answers, with loads, runs and ambient drawn by chance: 6, 12 and 24 V, either pole grounded, every kind of charging.
    /// </summary>
    [Theory]
    [InlineData("6")]
    [InlineData("12")]
    [InlineData("24")]
    public void No_wire_of_a_random_harness_can_go_one_size_down_without_breaking_a_rule(string voltage)
    {
        var tried = 0;
        for (var seed = 0; seed < Seeds; seed++)
        {
            var (wires, slack) = Slack(RandomStarter.Plan(seed, voltage));
            tried += wires;
            Assert.True(slack.Count == 0, $"seed {seed}: {string.Join("; ", slack)}");
        }

        Assert.True(tried > 3 * Seeds, $"{tried} wires");
    }

    /// <summary>Ground cable and strap of no given size, which follow the starter's cable.</summary>
    [Theory]
    [InlineData("6")]
    [InlineData("12")]
    [InlineData("24")]
    public void With_straps_left_open_no_wire_can_go_one_size_down_either(string voltage)
    {
        var follow = 0;
        for (var seed = 0; seed < Seeds; seed++)
        {
            var plan = RandomStarter.WithOpenStraps(seed, voltage);
            follow += plan.Wires.Count(w => w.Circuit is "engine strap" or "battery ground" && w.DecidedBy == "unfused cable");
            var slack = Slack(plan).Slack;
            Assert.True(slack.Count == 0, $"seed {seed}: {string.Join("; ", slack)}");
        }

        Assert.True(follow > Seeds, $"{follow} straps follow a cable");
    }

    /// <summary>Wires that are to be sized alike go down together: then too one of them breaks a rule.</summary>
    [Theory]
    [InlineData("6")]
    [InlineData("12")]
    public void Pairs_that_are_sized_alike_cannot_go_one_size_down_together(string voltage)
    {
        var alike = 0;
        for (var seed = 0; seed < AlikeSeeds; seed++)
        {
            var plan = RandomStarter.Plan(seed, voltage, ("headlamp left", "headlamp right"), ("parking lamp left", "parking lamp right"), ("turn left", "turn right"));
            Assert.All(plan.Wires.Select(w => AlikeWith(plan, w)), g => Assert.Single(g.Select(w => w.AreaMm2).Distinct()));
            alike += plan.Wires.Count(w => w.DecidedBy == "sized alike");
            var slack = Slack(plan).Slack;
            Assert.True(slack.Count == 0, $"seed {seed}: {string.Join("; ", slack)}");
        }

        Assert.True(alike > AlikeSeeds, $"{alike} wires follow another");
    }

    private const int AlikeSeeds = 12;
    private const int Seeds = 25;

    /// <summary>How many wires of the plan's own sizing were made one size smaller, and those that bore it.</summary>
    private static (int Tried, List<string> Slack) Slack(Plan plan)
    {
        var before = Drops(plan);
        var tried = 0;
        var slack = new List<string>();
        var lasting = Lasting(plan);
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
            var alike = AlikeWith(plan, wire);
            var tooHot = alike.Any(w => w.AmpacityA!.Value / Ampacity.InAirA(sizes[size]) * Ampacity.InAirA(smaller) < Math.Max(Math.Max(Steady(w), lasting.GetValueOrDefault(w.Id)), Rating(plan, w)) + 0.005);
            // a dynamo's lead with its regulator and ammeter has no rule of the checker; what the plan says of it is held in PlanPropertiesTests
            if (!tooHot && !DropsTooMuch(plan, alike, smaller, before) && !alike.Any(w => w.DecidedBy == "terminal") && !IsDynamoLead(plan, wire))
            {
                slack.Add($"{wire.Id} {wire.Circuit}: {smaller.Label} instead of {wire.SizeLabel} ({wire.DecidedBy}: {wire.RunnerUp})");
            }
        }

        return (tried, slack);
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
        Assert.False(DropsTooMuch(oversized, [thick], sizes[size + 1], Drops(oversized)));
    }

    /// <summary>The charge lead and the starter's cables are held by rules of their own, which a smaller size breaks and a larger one does not.</summary>
    [Fact]
    public void A_charge_lead_that_is_too_thick_is_found()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var lead = plan.Wires.Single(w => w.Circuit == "charge lead");
        var sizes = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == lead.WireType).Sizes;
        var size = sizes.IndexOf(sizes.Single(s => s.Label == lead.SizeLabel));
        Plan With(int number) => plan with { Wires = [.. plan.Wires.Select(w => w.Id == lead.Id ? w with { SizeLabel = sizes[number].Label, AreaMm2 = sizes[number].AreaMm2 } : w)] };
        Assert.False(DropsTooMuch(With(size + 2), [lead], sizes[size + 1], Drops(With(size + 2))));
        Assert.True(DropsTooMuch(plan, [lead], sizes[size - 4], Drops(plan)));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Unfused_cables_cannot_all_go_one_size_down(string example)
    {
        var plan = ExamplePlans.Of(example);
        var cables = plan.Wires.Where(w => w.DecidedBy == "unfused cable").ToList();
        if (cables.Count == 0)
        {
            return;
        }

        var thinner = plan with { Wires = [.. plan.Wires.Select(w => cables.Contains(w) ? OneDown(plan, w) : w)] };
        var before = Drops(plan);
        var tooHot = cables.Any(w => OneDown(plan, w) is var s && w.AmpacityA!.Value / InAirA(plan, w) * InAirA(plan, s) < Math.Max(Steady(w), Rating(plan, w)) + 0.005);
        Assert.True(tooHot || Drops(thinner).Any(d => d.Value.DropV > d.Value.LimitV - TiesV && before.TryGetValue(d.Key, out var was) && d.Value.DropV > was.DropV + TiesV) || BreaksALeadRule(plan, thinner),
            string.Join(", ", cables.Select(w => $"{w.Circuit} {w.SizeLabel}")));
    }

    [Fact]
    public void A_thin_hand_given_wire_does_not_thicken_the_rest_of_its_loop()
    {
        var harness = ExamplePlans.Of("brackmere-six").Harness;
        // sized to the limit, so that the least shift asks for one size more; to make up for the thin wire would ask for three
        var sizes = harness.Catalogue.WireTypes.Single(t => t.IsUsual).Sizes;
        var free = ExamplePlans.Of("brackmere-six").Wires.Where(w => w.Circuit is "fan feed" or "fan ground").ToDictionary(w => w.Circuit, w => sizes.First(s => s.AreaMm2 > w.AreaMm2).AreaMm2, StringComparer.Ordinal);
        var plan = HarnessPlanner.Plan(harness with { Circuits = [.. harness.Circuits.Select(c => c.Id == "fan motor" ? c with { AreaMm2 = 1 } : c)] }, PlanningOptions.Usual);
        Assert.Equal(1, plan.Wires.Single(w => w.Circuit == "fan motor").AreaMm2);
        Assert.All(plan.Wires.Where(w => free.ContainsKey(w.Circuit)), w => Assert.True(w.AreaMm2 <= free[w.Circuit], $"{w.Circuit} {w.AreaMm2} after {free[w.Circuit]}"));
        // the one that is too thin is what the finding names
        Assert.Contains(HarnessChecker.Check(plan, RuleSettings.BuiltIn), f => f.Rule == "loop-drop" && f.Where.Contains("fan"));
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

    /// <summary>The wires that the description has sized alike with one, itself among them, by the words of examples/README.md.</summary>
    private static List<Wire> AlikeWith(Plan plan, Wire wire)
    {
        var found = new List<Wire> { wire };
        for (var i = 0; i < found.Count; i++)
        {
            var ends = EndsOf(plan, found[i]).ToHashSet(StringComparer.Ordinal);
            found.AddRange(plan.Wires.Where(w => !found.Contains(w) && w.DecidedBy != "given by hand" && EndsOf(plan, w).Any(ends.Contains)));
        }

        return found;
    }

    private static IEnumerable<string> EndsOf(Plan plan, Wire wire)
    {
        var feeds = plan.Harness.Circuits.Single(c => c.Id == wire.Circuit).Feeds.Select(f => f.ToString()).ToList();
        return from pair in plan.Harness.SizedAlike.Select((g, n) => (g.Names, g.AreCircuits, Number: n))
               from end in (WireEnd[])[wire.From, wire.To]
               where end.Pin is not null && pair.Names.Contains(pair.AreCircuits ? wire.Circuit : end.At)
               select $"{pair.Number} {(pair.AreCircuits ? $"{feeds.IndexOf(end.ToString())}" : end.Pin)}";
    }

    private static bool IsDynamoLead(Plan plan, Wire wire) => plan.Harness.Things.Any(t => t.Id == "regulator") && wire.Circuit is "charge lead" or "charge to ammeter";

    private static Wire OneDown(Plan plan, Wire wire)
    {
        var sizes = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType).Sizes;
        var size = sizes[Math.Max(0, sizes.IndexOf(sizes.Single(s => s.Label == wire.SizeLabel)) - 1)];
        return wire with { SizeLabel = size.Label, AreaMm2 = size.AreaMm2 };
    }

    /// <summary>The wire in another size, with the warmth that its current gives it there: the rise goes with the square of what the size bears.</summary>
    private static Wire Thinner(Plan plan, Wire wire, WireSize size)
    {
        var zones = plan.Tree.Segments.Where(s => wire.Segments.Contains(s.Id)).Select(s => plan.Harness.Layout.Zones.FirstOrDefault(z => z.Id == s.Zone)?.AmbientC);
        var ambientC = zones.Max() ?? wire.Worst?.TemperatureC ?? 20;
        var share = InAirA(plan, wire) / Ampacity.InAirA(size);
        return wire with { SizeLabel = size.Label, AreaMm2 = size.AreaMm2, Worst = wire.Worst is { } worst ? worst with { TemperatureC = ambientC + (Math.Max(0, worst.TemperatureC - ambientC) * share * share) } : null };
    }

    private static double InAirA(Plan plan, Wire wire) => Ampacity.InAirA(plan.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType).Sizes.Single(s => s.Label == wire.SizeLabel));

    // a starting current lasts for seconds only
    private static double Steady(Wire wire) => wire.Worst!.State == "cranking" ? wire.Worst.CurrentA / PlanningOptions.Usual.MomentaryFactor : wire.Worst.CurrentA;

    /// <summary>By wire: its largest current in a state that lasts, where the worst is that of seconds.</summary>
    private static Dictionary<string, double> Lasting(Plan plan) =>
        BuildLister.Covering(plan.Builds).SelectMany(b => NetworkSolver.Solve(plan, b)).Where(p => p.State != "cranking").SelectMany(p => p.Wires)
            .GroupBy(w => w.Wire, w => Math.Abs(w.CurrentA), StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(), StringComparer.Ordinal);

    private static double Rating(Plan plan, Wire wire)
    {
        var fuses = wire.ProtectedBy.Take(1).Concat(MotorFuses(plan, wire)).Concat(FusesFed(plan, wire));
        return fuses.Select(f => plan.Fuses.First(p => p.Id == f).RatingA ?? 0).DefaultIfEmpty(0).Max();
    }

    // of what no fuse protects a lead to a bus bar bears the largest fuse on it
    private static IEnumerable<string> FusesFed(Plan plan, Wire wire) =>
        plan.Harness.Circuits.Single(c => c.Id == wire.Circuit) is { IsReturn: false, UnfusedBecause: not null } && wire.ProtectedBy.IsEmpty
            ? plan.Harness.Protections.Where(p => p.On == wire.To.At || p.Id == wire.To.At).Select(p => p.Id) : [];

    private static IEnumerable<string> MotorFuses(Plan plan, Wire wire) =>
        from end in (WireEnd[])[wire.From, wire.To]
        from element in plan.Harness.Things.FirstOrDefault(t => t.Id == end.At)?.Elements ?? []
        where element.Kind == ElementKind.Motor && element.PinB is not null && element.PinB == end.Pin
        from feed in plan.Wires.Where(w => w.To.ToString() == $"{end.At}.{element.PinA}")
        from fuse in feed.ProtectedBy.Take(1)
        select fuse;

    /// <summary>True when a load that loses more than its limit loses more still, or one comes to lose more than it.</summary>
    private static bool DropsTooMuch(Plan plan, IReadOnlyList<Wire> wires, WireSize smaller, Dictionary<string, (double DropV, double LimitV)> before)
    {
        var thinner = plan with { Wires = [.. plan.Wires.Select(w => wires.Any(x => x.Id == w.Id) ? Thinner(plan, w, smaller) : w)] };
        return Drops(thinner).Any(d => d.Value.DropV > d.Value.LimitV - TiesV && before.TryGetValue(d.Key, out var was) && d.Value.DropV > was.DropV + TiesV) || BreaksALeadRule(plan, thinner);
    }

    /// <summary>The rules about the starter's and the alternator's leads: a finding more, or one with other volts.</summary>
    private static bool BreaksALeadRule(Plan plan, Plan thinner)
    {
        string[] Told(Plan p) => [.. HarnessChecker.Check(p, RuleSettings.BuiltIn).Where(f => f.Rule is "starter-loop-drop" or "charge-lead-drop").Select(f => f.Message)];
        return Told(thinner).Except(Told(plan), StringComparer.Ordinal).Any();
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
                    // while the engine is cranked sizes are for the currents that are given, of which a sagging battery delivers less
                    var more = point.State == "cranking" && load.CurrentA != 0 ? Math.Max(1, load.NominalA / Math.Abs(load.CurrentA)) : 1;
                    if (source.Length > 0 && Math.Abs(load.VoltageV) >= 0.5 * source[0].VoltageV)
                    {
                        drops[$"{number} {point.State} {load.Thing} {load.Element}"] = (more * (source[0].VoltageV - Math.Abs(load.VoltageV)), limit * circuit.NominalV);
                    }
                }
            }
        }

        return drops;
    }
}
