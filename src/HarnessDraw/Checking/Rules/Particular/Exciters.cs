using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>Circuits that feed an alternator's exciter pin.</summary>
internal static class Exciters
{
    private static readonly string[] Pins = ["L", "D+", "61", "IND"];

    public static IEnumerable<(Circuit Circuit, Thing Alternator)> Of(RuleContext context) =>
        context.Harness.Circuits.Where(c => !c.IsReturn)
            .SelectMany(c => c.Feeds.Where(f => context.Thing(f.Thing)?.Kind == ThingKind.Alternator && Pins.Contains(f.Pin)).Select(f => (c, context.Thing(f.Thing)!)));

    /// <summary>Things the exciter's current passes: where it comes from and the kept switches and lamps on the way.</summary>
    public static IEnumerable<Thing> On(RuleContext context, Circuit circuit)
    {
        var cavities = context.WiresOf(circuit.Id).SelectMany(w => new[] { w.From, w.To }).Select(e => e.ToString()).ToHashSet(StringComparer.Ordinal);
        var kept = context.Harness.Kept.Where(k => cavities.Contains($"{k.Connector}.{k.Cavity}"));
        return kept.SelectMany(k => k.Through.Append(Thing(k.ComesFrom))).Append(circuit.From?.Thing).OfType<string>().Distinct(StringComparer.Ordinal).Select(context.Thing).OfType<Thing>();
    }

    public static bool Limits(Thing thing) =>
        thing.Kind == ThingKind.Lamp || thing.Elements.Any(e => e.Kind is ElementKind.Lamp or ElementKind.Diode || e is { Kind: ElementKind.Heater, ResistanceOhm: > 0 });

    private static string? Thing(string? pin) => pin is null ? null : pin.LastIndexOf('.') is > 0 and var dot ? pin[..dot] : pin;
}
