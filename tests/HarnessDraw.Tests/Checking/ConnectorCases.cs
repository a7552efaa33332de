using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

internal static class ConnectorCases
{
    private static readonly BuildCondition Exciter = new([new("charging", ["exciter"])]);
    private static readonly BuildCondition Single = new([new("charging", ["single wire"])]);

    public static IEnumerable<RuleCase> All =>
    [
        // exclusive options sharing a cavity are not reported
        new("two-wires-in-cavity", p => p.Move("E03", "A3", "A2"), ["firewall A2 has E01 (ignition) and E03 (coolant signal)"], p => p.Move("E03", "A3", "A2").Wire("E01", w => w with { Builds = Exciter }).Wire("E03", w => w with { Builds = Single })),
        new("two-wires-on-blade", p => Blade(p, 0.4), ["ignition coil 15", "one is 2.5 times the other"], p => Blade(p, 0.5)),
        new("net-differs-across-mate", p => Kept(p, "B2", k => k with { ComesFrom = "F8" }), ["firewall B2: the cabin side comes from F8", "F01 (dipped beam) expects F7 out"], p => p),
        new("colour-changes-at-firewall", p => Kept(p, "B2", k => k with { Colour = "BU" }), ["F01 (dipped beam) BU in the cabin, YE in the bay (B2)"], p => p),
        new("wrong-half", p => p.Move("E03", "A3", "B5"), ["E03 (coolant signal) belongs to half A (engine) but sits in firewall B5 of half B (front lighting)"], p => p.Move("E03", "A3", "A6")),
        // 80 % of the 15 A contact is 12 A
        new("contact-overloaded", p => p.Wire("F04", w => w with { Worst = new("night", 12.1, 0.1, 60) }), ["12.1 A through the 15 A contact firewall B3", "1.46 W of heat"], p => p.Wire("F04", w => w with { Worst = new("night", 12, 0.1, 60) })),
        new("contact-overloaded", p => p.Wire("F04", w => w with { Worst = new("night", 16, 0.1, 60) }), ["16 A through the 15 A contact"], p => p),
        new("loaded-neighbours", p => Hot(p, 12.5), ["firewall B2", "83.3 %"], p => Hot(p, 11.9)),
        new("firewall-passes", p => p.AddWire("F01", w => w with { Id = "F30", Net = "dipped beam:2", From = new("F1", "out"), To = new("firewall", "B5") }), ["dipped beam crosses the firewall twice", "4 contacts in series lose 0.18 V at 9.2 A"], p => p),
        new("live-beside-sender", p => ParticularCases.Fed(p, "F1.out"), ["A2 (E01 (ignition), always live) is beside A3 (E03 (coolant signal))"], p => ParticularCases.Fed(p, "F1.out").Part("bulkhead-12", x => x with { Sealed = true })),
        new("left-beside-right", p => p, ["firewall: B2/B3 (dipped beam, main beam)"], p => p.Move("F04", "B3", "B6").Move("F09", "B4", "B3")),
        new("keep-apart-broken", p => p.Harness(h => h with { KeepApart = [new(["ignition", "coolant signal"], null)] }), ["firewall A2 and A3 are neighbours"], p => p),
        new("mixed-volts-in-connector", p => p.Part("bulkhead-12", x => x with { Key = null }).Circuit("horn", c => c with { NominalV = 24 }), ["firewall has no key", "24 V reaches 12 V parts"], p => p.Circuit("horn", c => c with { NominalV = 24 })),
        new("foreign-terminal", p => p.Wire("E01", w => w with { From = w.From with { Terminal = "socket-2.8-s" } }), ["firewall A2: terminal socket-2.8-s (socket 2.8) does not lock"], p => p),
        new("seal-does-not-grip", p => p.Wire("F07", w => w with { OutsideMm = 3.9 }), ["horn 1: 3.9 mm wire F07 (horn) in seal seal-2.8 for 1.4 to 3.8 mm leaks"], p => p.Wire("F07", w => w with { OutsideMm = 3.8 })),
        new("seal-does-not-grip", p => p.Wire("F07", w => w with { To = w.To with { Seal = null } }), ["F07 (horn) has no seal"], p => p),
        new("cavity-unplugged", p => p.NoWire("F08"), ["horn: 1 of 2 cavities", "plug-2.8"], p => p.NoWire("F08") with { Cavities = [.. p.NoWire("F08").Cavities, new() { Connector = "horn", Cavity = "2", Plug = "plug-2.8" }] }),
        new("more-wires-than-cavities", p => p.Move("E03", "A3", "A9"), ["firewall: 9 cavities needed, 12 there; without a cavity: E03"], p => p),
        new("no-reserve", p => p.Part("bulkhead-12", x => x with { Cavities = [.. x.Cavities.Where(c => c.Name is not ("A6" or "B5" or "B6"))] }), ["9 of 9 cavities"], p => p),
        new("ring-not-its-stud", p => p.Wire("P01", w => w with { To = w.To with { Terminal = "ring-M6-70" } }), ["M6 ring on the M8 stud bus bar 1"], p => p),
        new("rings-per-stud", p => Rings(p, "bus bar", "1", 4), ["5 rings on bus bar 1", "4 are the most"], p => Rings(p, "bus bar", "1", 3)),
        new("torque-not-given", p => p.Thing("ground left", t => t with { TorqueNm = null }), ["ground left", "see maker"], p => p.Harness(h => h with { Things = [.. h.Things.Select(t => t with { TorqueNm = 8 })] })),
        new("live-pins-bare", p => p.Thing("firewall", t => t with { Contacts = ContactGender.Pins }), ["With firewall unplugged, A1 (P04 (cabin feed)) is a bare live pin"], p => p),
        new("plugs-swappable", p => p, ["The plugs of horn and fan are alike (Sealed plug, 2 cavities)"], p => p.Thing("fan", t => t with { Place = "thermostat" })),
    ];

    private static Plan Blade(Plan p, double area) => p.AddWire("E03", w => w with { Id = "E13", From = new("ignition coil", "15") { Terminal = "blade-6.3-s" }, To = new("coolant sender", "1"), AreaMm2 = area });

    private static Plan Kept(Plan p, string cavity, Func<KeptPin, KeptPin> change) => p.Harness(h => h with { Kept = [.. h.Kept.Select(k => k.Cavity == cavity ? change(k) : k)] });

    private static Plan Hot(Plan p, double amps) => new[] { "F07", "F01", "F04" }.Aggregate(p.Move("F09", "B4", "B5").Wire("F09", w => w with { Worst = new("night", 9, 0.1, 60) }), (x, id) => x.Wire(id, w => w with { Worst = new("night", amps, 0.1, 60) }));

    internal static Plan Rings(Plan p, string thing, string pin, int more) =>
        Enumerable.Range(0, more).Aggregate(p, (x, i) => x.AddWire("E02", w => w with { Id = $"X{i}", To = new(thing, pin) { Terminal = "ring-M8-1" } }));
}
