using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Model;

/// <summary>
/// A harness of sixteen small circuits for everybody's tests: one mate with two halves, a bus bar with two bolt-in fuses, two lamp
/// splices, two ground points, a relay-fed fan and one option (exciter wire or none). All of it is invented.
/// </summary>
public static class SmallHarness
{
    private static readonly BuildCondition Exciter = new([new("charging", ["exciter"])]);

    public static Harness Harness { get; } = new()
    {
        Id = "small",
        Title = "Engine bay and front lighting",
        Vehicle = "Small saloon",
        Drawing = new() { Number = "SS-100", Owner = "Test works", Drawn = "T. Ester", IssuedOn = "2026-09-11", Revisions = [new("A", "2026-09-11", "First issue", null, null)] },
        Power = new(GroundPolarity.Negative, ReturnPath.Body,
        [
            new() { Id = "main battery", Kind = SourceKind.Battery, NominalV = 12 },
            new() { Id = "alternator", Kind = SourceKind.Alternator, NominalV = 12, OutputA = 55 },
        ]),
        Options = [new("charging", ["exciter", "single wire"], "exciter", null)],
        OptionRules = [],
        States =
        [
            new("off", KeyPosition.Off, EngineState.Stopped, [], null),
            new("ignition on", KeyPosition.Run, EngineState.Stopped, ["ignition", "coolant signal", "exciter"], null),
            new("cranking", KeyPosition.Start, EngineState.Cranking, ["ignition", "starter solenoid"], null),
            new("running", KeyPosition.Run, EngineState.Running, ["ignition", "coolant signal", "exciter", "fan trigger"], null),
            new("night", KeyPosition.Run, EngineState.Running, ["ignition", "coolant signal", "exciter", "fan trigger", "dipped beam"], null),
            new("full beam", KeyPosition.Run, EngineState.Running, ["ignition", "coolant signal", "exciter", "main beam", "horn"], null),
        ],
        Things = SmallThings.Things,
        Protections =
        [
            new() { Id = "F1", Kind = ProtectionKind.BoltIn, On = "bus bar", Protects = ["cabin feed"] },
            new() { Id = "F2", Kind = ProtectionKind.BoltIn, On = "bus bar", Protects = ["charge lead"] },
            new() { Id = "F3", Kind = ProtectionKind.Blade, On = "bus bar", Protects = ["fan feed"] },
            new() { Id = "F7", Kind = ProtectionKind.Blade, RatingA = 15, On = "cabin fuse panel" },
            new() { Id = "F8", Kind = ProtectionKind.Blade, RatingA = 15, On = "cabin fuse panel" },
            new() { Id = "F9", Kind = ProtectionKind.Blade, RatingA = 10, On = "cabin fuse panel" },
            new() { Id = "F10", Kind = ProtectionKind.Blade, RatingA = 10, On = "cabin fuse panel" },
        ],
        Kept =
        [
            new() { Connector = "firewall", Cavity = "B2", ComesFrom = "F7", Through = ["light switch", "dip switch"], Colour = "YE", AddsOhm = 0.03 },
            new() { Connector = "firewall", Cavity = "B3", ComesFrom = "F8", Through = ["light switch", "dip switch"], Colour = "WH" },
        ],
        Assumed = new(),
        Circuits = [.. Rows.Select(r => r.Circuit)],
        Nets = [.. Rows.Select(r => r.Net)],
        KeepApart = [new(["horn", "coolant signal"], null)],
        Waivers = [],
        Layout = SmallLayout.Layout,
        Catalogue = SmallCatalogue.Catalogue,
        OpenQuestions = [],
        SourceHash = "0123456789ab",
    };

    /// <summary>Its plan with the usual figures.</summary>
    public static Plan Plan { get; } = HarnessPlanner.Plan(Harness, PlanningOptions.Usual);

    private static ImmutableArray<(Circuit Circuit, Net Net)> Rows =>
    [
        Bay("battery feed", "main battery.plus", ["bus bar.1"], c => c with { LiveWith = KeyPosition.Off, Colour = "RD", UnfusedBecause = "170 mm, sleeved and booted" }),
        Bay("starter cable", "main battery.plus", ["starter.B"], c => c with { LiveWith = KeyPosition.Off, Colour = "RD", UnfusedBecause = "starter lead is exempt", Duty = Duty.Momentary }),
        Bay("charge lead", "alternator.B+", ["F2.out"], c => c with { LiveWith = KeyPosition.Off, Colour = "RD", ProtectedBy = ["F2"] }),
        Mated("cabin feed", "F1.out", ["firewall"], ["cabin fuse panel.1"], "A", c => c with { LiveWith = KeyPosition.Off, Colour = "RD", ProtectedBy = ["F1"], CurrentA = 25 }),
        Mated("dipped beam", "F7.out", ["headlamp left.56b", "headlamp right.56b"], [], "B", c => c with { Colour = "YE", Importance = Importance.Critical, ProtectedBy = ["F7"] }),
        Mated("main beam", "F8.out", ["headlamp left.56a", "headlamp right.56a"], [], "B", c => c with { Colour = "WH", Importance = Importance.Critical, ProtectedBy = ["F8"] }),
        Mated("horn", "F10.out", ["horn.1"], [], "B", c => c with { Colour = "BN/WH", Duty = Duty.Intermittent, ProtectedBy = ["F10"] }),
        Mated("ignition", "ignition switch.15", ["ignition coil.15"], [], "A", c => c with { Importance = Importance.Critical, ProtectedBy = ["F9"] }),
        Mated("coolant signal", "gauges.1", ["coolant sender.1"], [], "A", c => c with { Duty = Duty.Signal, ProtectedBy = ["F9"] }),
        Mated("starter solenoid", "ignition switch.50", ["starter.S"], [], "A", c => c with { LiveWith = KeyPosition.Start, Duty = Duty.Momentary, ProtectedBy = ["F9"] }),
        Mated("exciter", "charge lamp.1", ["alternator.L"], [], "A", c => c with { OnlyWith = Exciter, WhenNotFitted = "remove", ProtectedBy = ["F9"] }),
        Mated("fan trigger", "ignition switch.15", ["fan relay.86"], [], "B", c => c with { TriggersOnly = true, ProtectedBy = ["F9"] }),
        Bay("fan feed", "F3.out", ["fan relay.30"], c => c with { LiveWith = KeyPosition.Off, Colour = "RD/WH", ProtectedBy = ["F3"] }),
        Bay("fan", "fan relay.87", ["fan.1"], c => c with { Colour = "RD/BK", ProtectedBy = ["F3"] }),
        Ground("battery ground", "ground rear.stud", "main battery.minus"),
        Ground("engine strap", "ground rear.stud", "engine ground.stud"),
    ];

    private static (Circuit Circuit, Net Net) Bay(string id, string from, string[] feeds, Func<Circuit, Circuit> more)
    {
        var circuit = more(new() { Id = id, From = Pin(from), Feeds = [.. feeds.Select(Pin)] });
        return (circuit, new() { Id = id, Circuit = id, Root = Pin(from), Ends = [.. feeds.Select(Pin)], OnlyWith = circuit.OnlyWith });
    }

    /// <summary>From the cabin the mate is the root of the bay net; towards the cabin it is an end.</summary>
    private static (Circuit Circuit, Net Net) Mated(string id, string from, string[] ends, string[] cabinFeeds, string half, Func<Circuit, Circuit> more)
    {
        var outward = cabinFeeds.Length == 0;
        var circuit = more(new() { Id = id, From = Pin(from), Feeds = [.. (outward ? ends : cabinFeeds).Select(Pin)], EntersBy = "firewall", Half = half });
        var root = outward ? new PinRef("firewall", null) : Pin(from);
        return (circuit, new() { Id = id, Circuit = id, Root = root, Ends = [.. ends.Select(Pin)], OnlyWith = circuit.OnlyWith });
    }

    private static (Circuit Circuit, Net Net) Ground(string id, string ground, string end)
    {
        var circuit = new Circuit { Id = id, From = Pin(end), Feeds = [Pin(ground)], IsReturn = true, LiveWith = KeyPosition.Off, Colour = "BK" };
        return (circuit, new() { Id = id, Circuit = id, Root = Pin(ground), Ends = [Pin(end)] });
    }

    private static PinRef Pin(string text)
    {
        var dot = text.LastIndexOf('.');
        return dot < 0 ? new(text, null) : new(text[..dot], text[(dot + 1)..]);
    }
}
