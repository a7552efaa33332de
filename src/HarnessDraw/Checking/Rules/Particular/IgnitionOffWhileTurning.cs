using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>Ignition coils that no circuit feeds in a state in which the engine turns.</summary>
internal sealed class IgnitionOffWhileTurning : IDesignRule
{
    public RuleInfo Info { get; } = new("ignition-off-while-turning", "Ignition coil without current while the engine turns", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "An engine fires while it is cranked and while it runs; what the states leave off there is sized, measured and traced as off.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var switching = new CircuitSwitching(new HarnessIndex(context.Harness));
        foreach (var coil in context.Harness.Things.Where(IsIgnitionCoil))
        {
            var feeds = context.Harness.Circuits.Where(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == coil.Id && coil.Elements.Any(e => e.Kind == ElementKind.Coil && (f.Pin is null || f.Pin == e.PinA)))).ToList();
            var off = context.Harness.States.Where(s => s.Engine != EngineState.Stopped && feeds.TrueForAll(c => !switching.IsLive(c.Id, s))).Select(s => s.Id).ToList();
            if (feeds.Count > 0 && off.Count > 0)
            {
                var named = context.Harness.States.Where(s => feeds.Exists(c => context.Names(s, c.Id))).Select(s => $"'{s.Id}'").ToList();
                yield return context.Found(Info, $"{coil.Id} is off in {Wording.List(off.Select(s => $"'{s}'"))}, in which the engine turns: {Wording.List(feeds.Select(c => c.Id))} {(named.Count == 0 ? "is live in other positions of the key only" : $"is named in {Wording.List(named)}, and a circuit that any state names is off in all others")}.",
                    "Name it in every state in which it is on, or in none: then it follows the key.", [coil.Id, .. feeds.Select(c => c.Id)], feeds[0].OnlyWith, feeds[0].At);
            }
        }
    }

    /// <summary>A coil by its name: nothing else tells it from a relay's.</summary>
    public static bool IsIgnitionCoil(Thing thing) => thing.Label.Contains("IGNITION COIL", StringComparison.OrdinalIgnoreCase) || thing.Id.Contains("ignition coil", StringComparison.OrdinalIgnoreCase);
}
