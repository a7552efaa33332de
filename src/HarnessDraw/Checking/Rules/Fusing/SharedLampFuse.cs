using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class SharedLampFuse : IDesignRule
{
    public RuleInfo Info { get; } = new("shared-lamp-fuse", "One fuse for the lamps of both sides", Severity.Warning, Consequence.LostFunction, "common practice, no source",
        "One open fuse then leaves the road dark at once.");

    // lamps that show the vehicle or its way; fog, marker and reading lamps may fail together
    private static readonly string[] Showing = ["head", "dipped", "main beam", "tail", "rear lamp", "parking", "position", "brake lamp"];

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Harness.Circuits.Where(c => !c.IsReturn && (c.Importance == Importance.Critical || Showing.Any(s => c.Id.Contains(s, StringComparison.OrdinalIgnoreCase)))).SelectMany(c => Of(context, c));

    private IEnumerable<Finding> Of(RuleContext context, Circuit circuit)
    {
        var lamps = circuit.Feeds.Where(f => context.Thing(f.Thing) is { } t && Loads.At(t, f.Pin).Any(e => e.Kind == ElementKind.Lamp)).Select(f => context.Thing(f.Thing)!).ToList();
        if (lamps.Any(l => Sides.Of(l) == "L") && lamps.Any(l => Sides.Of(l) == "R") && context.ProtectionOf(circuit).FirstOrDefault() is { } fuse)
        {
            yield return context.Found(Info, $"Fuse {fuse} open means no {circuit.Id} at all: {Wording.List(lamps.Select(l => l.Id))} hang on it.",
                $"Give each side its own fuse (two wires {(circuit.EntersBy is { } mate ? $"through {mate}" : "from there on")}), or waive with the reason.", [circuit.Id, fuse], circuit.OnlyWith, circuit.At);
        }
    }
}
