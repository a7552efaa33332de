using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>Rules about options, mirrored halves, opened grounds and the particular circuits that go with them.</summary>
internal static class VariantCases
{
    private static readonly BuildCondition Single = new([new("charging", ["single wire"])]);

    public static IEnumerable<RuleCase> All =>
    [
        // 80 % of 25 A is 20 A
        new("fuse-load-with-option", p => OnlySingle(p, 21), ["With charging=single wire fuse F3 carries 21 A in 'night', 84 % of 25 A (at most 20 A); the usual build 0 A"], p => OnlySingle(p, 20)),
        new("fuse-load-with-option", p => OnlySingle(p, 21), ["fuse F3"], p => OnlySingle(p, 21).Circuit("fan", c => c with { OnlyWith = BuildCondition.Always })),
        new("fuse-place-unknown", p => Nowhere(p, ""), ["Where is F3?"], p => Nowhere(p, "left wing rear")),
        // the columns of each row of three change sides
        new("mirrored-pin-map", p => Kept(p, "B5", "B6"), ["firewall: All 2 cavities that differ from the kept half (B5 and B6) agree with top and bottom swapped"], p => Kept(p, "B2", "B3")),
        new("mirrored-pin-map", p => Kept(p, "B5", "B6"), ["written down from the other face"], p => Kept(p, "B2", "B6")),
        new("sealant-not-named", p => Note(p, null), ["firewall: no grease and no sealant is named"], p => Note(p, "contacts greased, entry sealed with neutral-cure")),
        new("sealant-not-named", p => Note(p, "sealed with acid-curing paste"), ["eats copper"], p => Note(p, "sealed with neutral-cure")),
        new("ground-back-feed", p => p, ["ground left opens, headlamp left (dipped) gets", "through other loads in 'full beam'", "while it is switched off"], p => p.NoWire("F13", "F14")),
        new("motor-fed-twice", p => p.Circuit("horn", c => c with { Feeds = [new("fan", "1")] }), ["fan and horn both feed fan 1 in one build"], p => p.Circuit("horn", c => c with { Feeds = [new("fan", "1")], OnlyWith = Single }).Circuit("fan", c => c with { OnlyWith = new([new("charging", ["exciter"])]) })),
        new("motor-fed-twice", p => p.Circuit("fan", c => c with { OnlyWith = Single }), ["With charging=exciter nothing feeds fan: fan belong"], p => p),
        new("interlock-bypassed", p => Neutral(p, "ignition switch"), ["starter solenoid works starter without passing neutral switch"], p => Neutral(p, "neutral switch")),
        new("coil-ballast", p => ByPass(p, "ignition switch"), ["start by-pass by-passes a ballast that is not in ignition"], p => ByPass(p, "ballast")),
        new("coil-ballast", p => Made(p, 8), ["ignition coil is made for 8 V and hangs on 12 V (ignition)", "2.2 times its heat"], p => Made(p, 12)),
        // the coil behind it draws 4 A
        new("flasher-underloaded", p => p.Thing("ignition switch", t => t with { LeastLoadA = 4.5 }), ["ignition draws 4 A; ignition switch needs 4.5 A"], p => p.Thing("ignition switch", t => t with { LeastLoadA = 0.1 })),
        new("brake-warning-unproved", p => Warning(p, null, "coolant sender"), ["Brake warning lamp at gauges 1 (brake warning): no check contact"], p => Warning(p, "lamp check by the key", "ignition coil")),
        new("brake-warning-unproved", p => Warning(p, "lamp check by the key", "coolant sender"), ["coolant sender alone works it"], p => Warning(p, "lamp check by the key", "ignition coil")),
    ];

    private static Plan OnlySingle(Plan p, double amps) => p.Element("fan", "motor", e => e with { CurrentA = amps }).Circuit("fan", c => c with { OnlyWith = Single })
        .Harness(h => h with { States = [.. h.States.Select(s => s.Id == "night" ? s with { On = s.On.Add("fan") } : s)] });

    private static Plan Nowhere(Plan p, string place) => p.Protection("F3", f => f with { On = null }).Thing("F3", t => t with { Place = place });

    private static Plan Kept(Plan p, string dipped, string main) => p.Harness(h => h with
    {
        Kept = [new() { Connector = "firewall", Cavity = dipped, ComesFrom = "F7" }, new() { Connector = "firewall", Cavity = main, ComesFrom = "F8" }],
    }).AddWire("F07", w => w with { Id = "F20", From = w.From with { Pin = "B5" } }).AddWire("F07", w => w with { Id = "F21", From = w.From with { Pin = "B6" } });

    private static Plan Note(Plan p, string? note) => p.Thing("firewall", t => t with { Note = note });

    private static Plan Neutral(Plan p, string from) => p.Harness(h => h with { Things = [.. h.Things, h.Things.Single(t => t.Id == "ignition switch") with { Id = "neutral switch" }] }).Circuit("starter solenoid", c => c with { From = new(from, "50") });

    private static Plan ByPass(Plan p, string from) => p.Harness(h => h with
    {
        Things = [.. h.Things, h.Things.Single(t => t.Id == "ignition switch") with { Id = "ballast", Elements = [new("resistor", ElementKind.Heater, "30", "15") { ResistanceOhm = 1.5 }] }],
        Circuits = [.. h.Circuits, new() { Id = "start by-pass", From = new("ignition switch", "50"), Feeds = [new("ignition coil", "15")], LiveWith = KeyPosition.Start }],
    }).Circuit("ignition", c => c with { From = new(from, "15") });

    private static Plan Made(Plan p, double volts) => p.Element("ignition coil", "primary", e => e with { NominalV = volts });

    private static Plan Warning(Plan p, string? note, string second) => p.Thing("coolant sender", t => t with { Note = note }).Harness(h => h with
    {
        Circuits = [.. h.Circuits, new() { Id = "brake warning", From = new("gauges", "1"), Feeds = [new("coolant sender", "1"), new(second, "1")], Duty = Duty.Signal }],
    });
}
