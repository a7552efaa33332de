using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>A neutral or clutch switch that the starter's control circuit does not pass.</summary>
internal sealed class InterlockBypassed : IDesignRule
{
    private static readonly string[] Names = ["neutral", "clutch switch", "clutch pedal", "inhibitor"];
    private const int Steps = 4;

    public RuleInfo Info { get; } = new("interlock-bypassed", "Starter control does not pass the neutral or clutch switch", Severity.Warning, Consequence.LostFunction, "common practice, no source",
        "The engine then starts in gear and the vehicle drives off by itself.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var interlocks = context.Harness.Things.Where(t => t.Elements.Any(e => e.Kind is ElementKind.Contact) && Names.Any(n => t.Id.Contains(n, StringComparison.OrdinalIgnoreCase))).ToList();
        foreach (var starter in context.Harness.Things.Where(t => t.Kind == ThingKind.Starter))
        {
            var coils = starter.Elements.Where(e => e.Kind == ElementKind.Coil).Select(e => e.PinA).ToList();
            foreach (var control in context.Harness.Circuits.Where(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == starter.Id && f.Pin is not null && coils.Contains(f.Pin))))
            {
                var passed = Passed(context, control, Steps).ToHashSet(StringComparer.Ordinal);
                var missed = interlocks.Where(i => !passed.Contains(i.Id)).Select(i => i.Id).ToList();
                if (missed.Count > 0)
                {
                    yield return context.Found(Info, $"{control.Id} works {starter.Id} without passing {Wording.List(missed)}: the engine can be started in gear.", "Lead the start wire through it (route-by), or through the coil of the start relay that it grounds.", [control.Id, starter.Id, .. missed], control.OnlyWith, control.At);
                }
            }
        }
    }

    /// <summary>What the circuit's current passes, and what works the relays on its way.</summary>
    private static IEnumerable<string> Passed(RuleContext context, Circuit circuit, int steps)
    {
        foreach (var thing in context.WiresOf(circuit.Id).SelectMany(w => new[] { w.From.At, w.To.At }).Append(circuit.From?.Thing).OfType<string>().Distinct(StringComparer.Ordinal))
        {
            yield return thing;
        }

        foreach (var through in KeptCavities.For(context, circuit)?.Through ?? [])
        {
            yield return through;
        }

        if (steps > 0 && circuit.From is { } from && context.Thing(from.Thing) is { Kind: ThingKind.Relay or ThingKind.Switch })
        {
            foreach (var feeder in context.Harness.Circuits.Where(c => c.Id != circuit.Id && (c.Feeds.Any(f => f.Thing == from.Thing) || c.From?.Thing == from.Thing)))
            {
                foreach (var further in Passed(context, feeder, steps - 1).Concat(feeder.Feeds.Select(f => f.Thing)))
                {
                    yield return further;
                }
            }
        }
    }
}
