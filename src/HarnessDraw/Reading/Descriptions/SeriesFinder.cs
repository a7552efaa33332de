using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Finds batteries in series: a circuit that joins the grounded-side pole of one straight to the live pole of another. Together they are one battery of the sum of their volts,
/// which is also that of an alternator that names none.
/// </summary>
internal static class SeriesFinder
{
    public static PowerSystem Joined(Draft draft, PowerSystem power, IEnumerable<CircuitDraft> circuits)
    {
        var standsOn = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var circuit in circuits)
        {
            PinRef[] pins = [.. circuit.Froms.Concat(circuit.Feeds).Concat(circuit.RouteBy).Select(p => p.Pin), .. circuit.To is { } to ? [to.Pin] : Array.Empty<PinRef>(), .. circuit.ByHand.SelectMany(w => new[] { w.From, w.To })];
            if (pins.FirstOrDefault(p => Pole(draft, power, p, live: false)) is { } upper && pins.FirstOrDefault(p => Pole(draft, power, p, live: true)) is { } lower && upper.Thing != lower.Thing)
            {
                standsOn.TryAdd(upper.Thing, lower.Thing);
            }
        }

        if (standsOn.Count == 0)
        {
            return power;
        }

        var joined = power with { Sources = [.. power.Sources.Select(s => standsOn.TryGetValue(s.Id, out var below) ? s with { StandsOn = below } : s)] };
        var nominals = draft.Blocks("sources", draft.Root.Map("power")!).Where(b => b.Map.Has("nominal")).Select(b => b.Name.Value).ToHashSet(StringComparer.Ordinal);
        return joined with { Sources = [.. joined.Sources.Select(s => s.Kind == SourceKind.Alternator && !nominals.Contains(s.Id) ? s with { NominalV = joined.NominalV } : s)] };
    }

    private static bool Pole(Draft draft, PowerSystem power, PinRef pin, bool live)
    {
        var element = power.Sources.Any(s => s.Id == pin.Thing && s.Kind == SourceKind.Battery) ? draft.Thing(pin.Thing)?.Elements.FirstOrDefault(e => e.Kind == ElementKind.Source) : null;
        return element is not null && pin.Pin == (live == (power.Ground == GroundPolarity.Negative) ? element.PinA : element.PinB);
    }
}
