using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>A thermal flasher behind which the lamps of one side draw less than it needs.</summary>
internal sealed class FlasherUnderloaded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("flasher-underloaded", "Lamps draw less than the flasher needs", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "A thermal flasher works by the heat of its lamps' current: with less than its least load, as with LED lamps, it does not flash.");

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var flasher in context.Harness.Things.Where(t => t.LeastLoadA is > 0))
        {
            foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn && (c.From?.Thing == flasher.Id || KeptCavities.For(context, c)?.Through.Contains(flasher.Id) == true)))
            {
                var amps = circuit.CurrentA ?? circuit.Feeds.Where(f => context.Thing(f.Thing) is not null).SelectMany(f => Loads.At(context.Thing(f.Thing)!, f.Pin)).Sum(e => e.Amps(circuit.NominalV) ?? 0);
                if (amps > 0)
                {
                    yield return new($"load of {circuit.Id} on {flasher.Id}", amps, flasher.LeastLoadA!.Value, "A", () => context.Found(Info,
                        $"{circuit.Id} draws {Figure.Amps(amps)}; {flasher.Id} needs {Figure.Amps(flasher.LeastLoadA.Value)} to flash.", "Fit an electronic flasher, or lamps with filaments.", [circuit.Id, flasher.Id], circuit.OnlyWith, circuit.At), AtLeast: true);
                }
            }
        }
    }
}
