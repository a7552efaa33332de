using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class LeftBesideRight : IDesignRule
{
    public RuleInfo Info { get; } = new("left-beside-right", "Lamps of both sides, or both beams, in neighbouring cavities", Severity.Advice, Consequence.LostFunction, "common practice, no source",
        "One bent pin or one hot contact then takes both.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Thing.Kind is ThingKind.Mate or ThingKind.Inline))
        {
            var pairs = connector.Neighbours().Where(p => p.A.Wire.Circuit != p.B.Wire.Circuit && context.IsCritical(p.A.Wire.Circuit) && context.IsCritical(p.B.Wire.Circuit)
                && IsFailSafePair(context, p.A.Wire, p.B.Wire) && context.CanMeet(p.A.Wire.Builds, p.B.Wire.Builds)).ToList();
            if (pairs.Count > 0)
            {
                yield return context.Found(Info, $"{connector.Thing.Id}: {Wording.List(pairs.Select(p => $"{p.A.Cavity}/{p.B.Cavity} ({p.A.Wire.Circuit}, {p.B.Wire.Circuit})"))} are neighbours: one bent pin joins them.",
                    "Put another circuit between them.", [connector.Thing.Id, .. pairs.SelectMany(p => new[] { p.A.Wire.Id, p.B.Wire.Id })], at: connector.Thing.At);
            }
        }
    }

    /// <summary>Two beams of one headlamp, or the same lamp on the other side.</summary>
    private static bool IsFailSafePair(RuleContext context, Wire a, Wire b) =>
        Lamps(context, a).Any(x => Lamps(context, b).Any(y => x.Thing.Id == y.Thing.Id ? IsBeam(x.Pin) && IsBeam(y.Pin) : x.Pin == y.Pin && Sides.Opposite(x.Thing, y.Thing)));

    // DIN 72552: 56a main beam, 56b dipped beam
    private static bool IsBeam(string? pin) => pin is "56a" or "56b";

    private static List<(Thing Thing, string? Pin)> Lamps(RuleContext context, Wire wire) =>
        [.. (context.Circuit(wire.Circuit)?.Feeds ?? []).Select(f => (Thing: context.Thing(f.Thing)!, f.Pin)).Where(p => p.Thing is not null && Loads.At(p.Thing, p.Pin).Any(e => e.Kind == ElementKind.Lamp && e.PinA == p.Pin)).Distinct()];
}
