using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class LoadedNeighbours : IDesignRule
{
    public RuleInfo Info { get; } = new("loaded-neighbours", "Heavily loaded contacts side by side", Severity.Warning, Consequence.DoesNotLast, "common practice, no source",
        "Neighbours heat each other: with more than half of them loaded, a contact bears a fifth less.")
    {
        Limits = [new("share with neighbours", 80, "%", "common practice, no source"), new("loaded from", 50, "%", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Wires.Length > 2))
        {
            var beside = CavityNeighbours.Of(connector.Part);
            var hot = connector.Wires.Where(w => Load(context, w) >= context.Limit(Info, "loaded from") / 100).ToList();
            foreach (var pinned in hot)
            {
                var around = connector.Part.Cavities.Where(c => beside.Contains((pinned.Cavity, c.Name))).Select(c => c.Name).ToHashSet(StringComparer.Ordinal);
                var loaded = hot.Where(h => around.Contains(h.Cavity) && context.CanMeet(h.Wire.Builds, pinned.Wire.Builds)).ToList();
                if (around.Count > 1 && loaded.Count * 2 > around.Count && Load(context, pinned) > context.Limit(Info, "share with neighbours") / 100)
                {
                    yield return context.Found(Info, $"{PointWords.Of(connector.Thing.Id, pinned.Cavity)} ({pinned.Wire.Named()}) is at {Figure.Percent(Load(context, pinned))} of its contact, and {loaded.Count} of its {around.Count} neighbours are loaded too ({Wording.List(loaded.Select(l => l.Cavity))}).",
                        "Spread heavy contacts to the outer rows with light ones between.", [$"{connector.Thing.Id}.{pinned.Cavity}", pinned.Wire.Id], pinned.Wire.Builds, connector.Thing.At);
                }
            }
        }
    }

    private static double Load(RuleContext context, PinnedWire pinned) =>
        context.Terminal(pinned.End.Terminal) is { CurrentA: > 0 } t && pinned.Wire.Worst is { } w && context.Circuit(pinned.Wire.Circuit)?.Duty is not Duty.Momentary ? w.CurrentA / t.CurrentA : 0;
}
