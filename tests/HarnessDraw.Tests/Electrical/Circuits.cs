using System.Collections.Immutable;
using HarnessDraw.Electrical;

namespace HarnessDraw.Tests.Electrical;

/// <summary>Small circuits by hand: every kind of part, both grounds, 6 to 24 V. Node 0 is ground.</summary>
internal static class Circuits
{
    public static IEnumerable<(string Name, ImmutableArray<NetworkPart> Parts)> All =>
    [
        ("divider", [Battery(1, 0, 12), R(1, 2, 0.05), R(2, 0, 3)]),
        ("lamp on a thin wire", [Battery(1, 0, 12), R(1, 2, 0.12), Lamp(2, 0, 12, 4.6)]),
        ("two lamps on one poor ground", [Battery(1, 0, 12), R(1, 2, 0.03), Lamp(2, 3, 12, 4.6), R(1, 4, 0.03), Lamp(4, 3, 12, 1.75), R(3, 0, 0.4)]),
        ("lost ground feeds the other filament backwards", [Battery(1, 0, 12), R(1, 2, 0.03), Lamp(2, 3, 12, 1.75), Lamp(4, 3, 12, 0.42), Lamp(4, 0, 12, 0.42)]),
        ("motor", [Battery(1, 0, 12), R(1, 2, 0.02), Motor(2, 3, 12, 16), R(3, 0, 0.01)]),
        ("stalled motor on low volts", [Battery(1, 0, 6), R(1, 2, 0.2), R(2, 0, 0.2)]),
        ("electronics", [Battery(1, 0, 12), R(1, 2, 0.3), Power(2, 0, 12, 2)]),
        ("electronics starved", [Battery(1, 0, 12), R(1, 2, 4), Power(2, 0, 12, 2)]),
        ("lamp behind a diode", [Battery(1, 0, 12), R(1, 2, 0.02), Diode(2, 3), Lamp(3, 0, 12, 0.25)]),
        ("diode across a resting coil", [Battery(1, 0, 12), R(1, 2, 0.02), R(2, 0, 70), Diode(0, 2)]),
        ("diode the wrong way round", [Battery(1, 0, 12), R(1, 2, 0.02), R(2, 0, 70), Diode(2, 0)]),
        ("two diodes share a lamp", [Battery(1, 0, 12), Battery(4, 0, 12.4 / 1.05), R(1, 2, 0.02), Diode(2, 3), R(4, 5, 0.02), Diode(5, 3), Lamp(3, 0, 12, 1.75)]),
        ("alternator charges", [Battery(1, 0, 12), Alternator(2, 0, 12, 55), R(2, 1, 0.005), Lamp(1, 0, 12, 9.2)]),
        ("alternator at its limit", [Battery(1, 0, 12), Alternator(2, 0, 12, 30), R(2, 1, 0.005), Motor(1, 0, 12, 60)]),
        ("relay pulled in", [Battery(1, 0, 12), R(1, 2, 0.025), R(2, 0, 70), R(1, 3, 0.01), Motor(3, 0, 12, 11)]),
        ("24 V with a 12 V island", [Battery(1, 0, 24), R(1, 2, 0.03), Power(2, 0, 24, 6), Limited(3, 0, 12, 25), R(3, 4, 0.02), Lamp(4, 0, 12, 5), Power(4, 0, 12, 4)]),
        ("positive ground", [Battery(0, 1, 12), R(1, 2, 0.04), Lamp(0, 2, 12, 4.6), Motor(0, 2, 12, 3)]),
        ("24 V headlamps", [Battery(1, 0, 24), R(1, 2, 0.06), Lamp(2, 3, 24, 3.1), R(3, 0, 0.02), Lamp(2, 0, 24, 3.1)]),
        ("dead short beside a lamp", [Battery(1, 0, 12), R(1, 2, 0.02), R(2, 0, 0.001), Lamp(1, 0, 12, 4.6)]),
    ];

    public static NetworkPart R(int a, int b, double ohm) => new($"r {a} {b}", a, b, PartLaw.Resistor(ohm));

    public static NetworkPart Battery(int plus, int minus, double nominalV) => new($"battery {plus}", plus, minus, PartLaw.Battery(nominalV * 1.05, 0.008));

    public static NetworkPart Alternator(int plus, int minus, double nominalV, double mostA) => new("alternator", plus, minus, PartLaw.Limited(nominalV * 1.175, 0.008, mostA));

    public static NetworkPart Limited(int plus, int minus, double volts, double mostA) => new("converter", plus, minus, PartLaw.Limited(volts, 0.008, mostA));

    public static NetworkPart Lamp(int a, int b, double volts, double amperes) => new($"lamp {a} {b}", a, b, PartLaw.Load(PartBehaviour.Filament, volts, amperes));

    public static NetworkPart Motor(int a, int b, double volts, double amperes) => new($"motor {a} {b}", a, b, PartLaw.Load(PartBehaviour.Motor, volts, amperes));

    public static NetworkPart Power(int a, int b, double volts, double amperes) => new($"electronics {a} {b}", a, b, PartLaw.Load(PartBehaviour.ConstantPower, volts, amperes));

    public static NetworkPart Diode(int a, int b) => new($"diode {a} {b}", a, b, PartLaw.Diode);
}
