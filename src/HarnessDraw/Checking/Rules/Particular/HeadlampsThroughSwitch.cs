using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>Headlamps whose whole current passes hand switches and no relay, and that lose more than a little on the way.</summary>
internal sealed class HeadlampsThroughSwitch : MeasuredRule
{
    public override RuleInfo Info { get; } = new("headlamps-through-switch", "Headlamp current through a hand switch", Severity.Advice, Consequence.DoesNotLast, "workshop practice, no standard",
        "The switch and two passes of the firewall take a volt of what a relay near the lamps would give them; the switch burns first.")
    {
        Limits = [new("drop", 5, "%", "workshop practice, no standard")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        LoadVolts.Of(context).Where(l => l.Element.Kind == ElementKind.Lamp && l.Thing.Label.Contains("HEADLAMP", StringComparison.OrdinalIgnoreCase))
            .GroupBy(l => l.Circuit.Id, StringComparer.Ordinal).Select(g => g.OrderByDescending(l => l.DropV).ThenBy(l => l.Build).ThenBy(l => l.State, StringComparer.Ordinal).First())
            .Select(l => (Load: l, Passed: Passed(context, l))).Where(p => p.Passed is not null).Select(p => Of(context, p.Load, p.Passed!));

    private Measure Of(RuleContext context, LoadVolts load, string passed)
    {
        var limit = context.Limit(Info, "drop") / 100 * load.Circuit.NominalV;
        return new($"headlamps of {load.Circuit.Id} through switches", load.DropV, limit, "V", () => context.Found(Info,
            $"{load.Circuit.Id} passes {passed} and no relay: {load.Thing.Id} loses {Figure.Volts(load.DropV)} ({Figure.Percent(load.DropV / load.Circuit.NominalV)}) in '{load.State}' ({load.Parts(context)}); {Figure.Volts(limit)} is a good loop.",
            "Let the switch work a relay near the lamps, fed from a fuse of its own.", [load.Circuit.Id, load.Thing.Id], load.Circuit.OnlyWith, load.Circuit.At));
    }

    /// <summary>The switches on the way from the battery, by name; null when there is none, or a relay.</summary>
    private static string? Passed(RuleContext context, LoadVolts load)
    {
        if (context.Graph.Posts.Where(p => p.Source.NominalV == load.Circuit.NominalV).OrderBy(p => p.Source.Kind).FirstOrDefault() is not { } post)
        {
            return null;
        }

        var way = PowerGraph.Way(context.Reach(post.Node), $"{load.Thing.Id}.{load.Element.PinA}").Where(h => h.Switched).ToList();
        var contacts = way.Where(h => h.Kind == HopKind.Contact).Select(h => context.Thing(h.A[..h.A.LastIndexOf('.')])).OfType<Thing>().ToList();
        var kept = way.Where(h => h.Kind == HopKind.Kept).SelectMany(h => context.Harness.Kept.Where(k => $"{k.Connector}.{k.Cavity}" == h.A || $"{k.Connector}.{k.Cavity}" == h.B)).SelectMany(k => k.Through).Select(context.Thing).OfType<Thing>();
        var all = contacts.Concat(kept).ToList();
        return all.Count == 0 || all.Exists(t => t.Kind == ThingKind.Relay) ? null : Wording.List(all.Select(t => t.Id));
    }
}
