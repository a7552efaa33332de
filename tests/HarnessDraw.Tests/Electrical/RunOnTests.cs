using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Cli;
using HarnessDraw.Writing.Starter;

namespace HarnessDraw.Tests.Electrical;

/// <summary>The key is turned off while the engine runs: what the exciter feeds back or a relay holds, and what a diode changes.</summary>
public sealed class RunOnTests
{
    private const string Coil = "  coil feed: { from: K6, enters-by: firewall, half: engine, feeds: [ignition coil.15], live: run,";

    // an ignition relay whose coil alone hangs behind the key, beside the charge lamp
    private const string Relay = "  ignition supply: { from: ignition switch.15, enters-by: firewall, half: engine, feeds: [ignition relay.86], live: run, protected-by: K7 }\n  coil supply: { from: F5, feeds: [ignition relay.30], live: always }\n  coil feed: { from: ignition relay.87, feeds: [ignition coil.15], live: run, protected-by: F5,";

    /// <summary>14.1 V through three field diodes (3 A at most), a coil of 40 W (3.3 A) behind the key: it keeps most of what it had.</summary>
    [Fact]
    public void A_bare_exciter_wire_keeps_the_ignition_coil_on()
    {
        var plan = PlanOf(t => Bare(t));
        var kept = KeyOffFinder.Find(plan);
        Assert.Contains(kept, r => r is { Circuit: "coil feed", ByExciter: true, Share: > 0.5 });
        Assert.Contains(Findings(plan), f => f.Rule == "exciter-run-on" && f.Message.Contains("the engine runs on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_charge_lamp_keeps_the_coil_from_running_on()
    {
        var plan = PlanOf(t => t);
        Assert.DoesNotContain(KeyOffFinder.Find(plan), r => r.Circuit == "coil feed");
        Assert.DoesNotContain(Findings(plan), f => f.Rule == "exciter-run-on");
    }

    /// <summary>
    /// A cold 2 W filament has a tenth of its 72 ohm and lets a relay coil of 80 ohm have most of 14 V; it would let go below a fifth of its 12 V.
    /// </summary>
    [Fact]
    public void A_charge_lamp_holds_an_ignition_relay_that_alone_hangs_behind_the_key()
    {
        var plan = PlanOf(WithRelay);
        var held = Assert.Single(KeyOffFinder.Find(plan), r => r is { Circuit: "coil feed", State: "running" });
        Assert.True(held is { ByExciter: true, Share: > 0.9 });
        var relay = Assert.Single(held.Holding, h => h.Relay == "ignition relay");
        Assert.InRange(relay.CoilV, 6, 12);
        Assert.Equal(2.4, relay.DropsOutV, 6);
        var finding = Assert.Single(Findings(plan), f => f.Rule == "exciter-run-on");
        Assert.Contains("ignition relay holds with", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_diode_in_the_exciter_wire_lets_the_relay_go()
    {
        var plan = PlanOf(t => WithDiode(WithRelay(t)));
        Assert.Empty(KeyOffFinder.Find(plan));
        Assert.DoesNotContain(Findings(plan), f => f.Rule == "exciter-run-on");
        Assert.DoesNotContain(Findings(plan), f => f.Severity == HarnessDraw.Diagnostics.Severity.Error);
    }

    /// <summary>The relay's own contact feeds its coil: without any exciter it stays, and is told as another feed.</summary>
    [Fact]
    public void A_relay_that_holds_itself_is_told_as_another_feed()
    {
        var plan = PlanOf(t => WithDiode(WithRelay(t)).Replace("feeds: [ignition coil.15], live: run, protected-by: F5,", "feeds: [ignition coil.15, ignition relay.86], live: run, protected-by: F5,", StringComparison.Ordinal));
        Assert.Contains(KeyOffFinder.Find(plan), r => r is { Circuit: "coil feed", ByExciter: false, Share: > 0.9 });
    }

    /// <summary>
    /// A motor in the model is a load whose current hardly depends on volts and which falls to nothing without them; that it generates while it coasts is left out, as it stands
    /// within seconds. So a pump on the fuse of a relay's coil holds nothing once the key is off and no exciter feeds back.
    /// </summary>
    [Fact]
    public void A_motor_that_coasts_holds_no_relay_by_the_model()
    {
        var plan = PlanOf(t => Changed(Changed(WithDiode(WithRelay(t)), "  start trigger: {", "  pump feed: { from: K7, enters-by: firewall, half: engine, feeds: [pump.1], live: run }\n  start trigger: {"),
            "  ignition relay: {", "  pump: { at: wing rear, plug: motor-2, motor: { '1': 60 W }, returns: '2' }\n  ignition relay: {"));
        Assert.Contains(NetworkSolver.Solve(plan).Single(p => p.State == "running").Loads, l => l is { Thing: "pump", VoltageV: > 10 });
        Assert.Empty(KeyOffFinder.Find(plan));
    }

    [Fact]
    public void The_diode_that_is_told_as_cure_cures()
    {
        using var folder = new TemporaryFolder();
        var file = Starter(folder, WithRelay);
        var planned = HarnessCompiler.Plan(file, new DiskFiles(), RuleSettings.BuiltIn).Value!;
        var cure = HarnessCompiler.Cure(file, new DiskFiles(), RuleSettings.BuiltIn, planned).Findings.Single(f => f.Rule == "exciter-run-on").Cure!;
        Assert.Contains("planned and solved again", cure, StringComparison.Ordinal);
        Assert.Contains("diode: [A, K]", cure, StringComparison.Ordinal);
    }

    private static string Bare(string text) => Changed(text, "from: charge lamp.D,", "from: ignition switch.15,");

    private static string WithRelay(string text) => Quiet(Changed(Changed(Changed(text, Coil, Relay),
        "  ignition coil: {", "  ignition relay: { at: wing rear, plug: relay-4, relay: { coil: ['86', '85'], makes: ['30', '87'], coil-draws: 0.15 A, contact: 30 A, suppression: resistor }, returns: '85' }\n  ignition coil: {"),
        "  K5: {", "  F5: { kind: blade, on: bus bar }\n  K5: {"));

    // the gauges are fed past the key: nothing else shares what the lamp lets through
    private static string Quiet(string text) => Changed(text, "duty: signal, live: run", "duty: signal, live: always");

    private static string WithDiode(string text) => Changed(Changed(text, "feeds: [alternator.L], live: run, protected-by: K7 }", "feeds: [exciter diode.A], live: run, protected-by: K7 }\n  exciter lead: { from: exciter diode.K, feeds: [alternator.L], live: run, protected-by: K7 }"),
        "  ignition coil: {", "  exciter diode: { at: generator, kind: load, blades: { A: 6.3 mm, K: 6.3 mm }, diode: [A, K] }\n  ignition coil: {");

    private static string Changed(string text, string from, string to)
    {
        var changed = text.Replace(from, to, StringComparison.Ordinal);
        return changed == text && !text.Contains(to, StringComparison.Ordinal) ? throw new InvalidOperationException($"the starter has no '{from}'") : changed;
    }

    /// <summary>A vehicle with a battery, an alternator with an exciter, an ignition coil, two senders, lamps and a horn.</summary>
    private static string Starter(TemporaryFolder folder, Func<string, string> change)
    {
        var answers = new StarterAnswers("Test van");
        folder.File("van-layout.yaml", StarterLayout.Write(answers));
        return folder.File("van.yaml", change(StarterDescription.Write(answers, "van-layout.yaml")));
    }

    private static Plan PlanOf(Func<string, string> change)
    {
        using var folder = new TemporaryFolder();
        var file = Starter(folder, change);
        var outcome = HarnessCompiler.Plan(file, new DiskFiles(), RuleSettings.BuiltIn);
        Assert.False(outcome.Failed, string.Join('\n', outcome.Diagnostics));
        return outcome.Value!.Plan;
    }

    private static ImmutableArray<Finding> Findings(Plan plan) => HarnessChecker.Check(plan, RuleSettings.BuiltIn);
}
