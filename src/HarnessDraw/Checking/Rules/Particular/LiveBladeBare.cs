using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class LiveBladeBare : IDesignRule
{
    public RuleInfo Info { get; } = new("live-end-unguarded", "Always-live wire on a bare blade", Severity.Warning, Consequence.Fire, "common practice, no source",
        "Pulled off, the terminal hangs live against the body (the horn is the usual case).");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var bare = context.Plan.Wires.Where(w => IsBare(context, w)).ToList();
        if (bare.Count > 0)
        {
            yield return context.Found(Info, $"{Wording.List(bare.Select(w => $"{w.Named()} at {PointWords.Of(w.To)}"))}: always live on a bare blade; unplugged, {(bare.Count == 1 ? "it touches" : "they touch")} the body.", "Use insulated receptacles or boots, and blank them when the part is unplugged.",
                bare.SelectMany(w => new[] { w.Id, w.To.At }), bare.Count == 1 ? bare[0].Builds : null, context.Thing(bare[0].To.At)?.At);
        }
    }

    private static bool IsBare(RuleContext context, Wire wire) =>
        context.IsPermanentlyLive(wire) && context.Circuit(wire.Circuit)?.UnfusedBecause is null
        && context.Thing(wire.To.At) is { Kind: ThingKind.Load or ThingKind.Motor or ThingKind.Lamp or ThingKind.Switch, ConnectorPart: null } thing && thing.Pins.Any(p => p.Name == wire.To.Pin && p.Style == PinStyle.Blade)
        && !wire.To.ThreadOnFirst.Any(t => t.Contains("boot", StringComparison.OrdinalIgnoreCase) || t.Contains("sleeve", StringComparison.OrdinalIgnoreCase));
}
