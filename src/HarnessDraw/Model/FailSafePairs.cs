namespace HarnessDraw.Model;

/// <summary>Circuits of which one has to stay when the other fails: both beams of one headlamp, or the same lamp on the other side.</summary>
internal static class FailSafePairs
{
    public static bool Are(Circuit a, Circuit b, Func<string, Thing?> thingOf) =>
        a.Id != b.Id && a.Importance == Importance.Critical && b.Importance == Importance.Critical
        && Lamps(a, thingOf).Any(x => Lamps(b, thingOf).Any(y => x.Thing.Id == y.Thing.Id ? IsBeam(x.Pin) && IsBeam(y.Pin) : x.Pin == y.Pin && Sides.Opposite(x.Thing, y.Thing)));

    // DIN 72552: 56a main beam, 56b dipped beam
    private static bool IsBeam(string? pin) => pin is "56a" or "56b";

    private static IEnumerable<(Thing Thing, string? Pin)> Lamps(Circuit circuit, Func<string, Thing?> thingOf) =>
        circuit.Feeds.Select(f => (Thing: thingOf(f.Thing)!, f.Pin)).Where(p => p.Thing is not null && p.Thing.Elements.Any(e => e.Kind == ElementKind.Lamp && e.PinA == p.Pin)).Distinct();
}
