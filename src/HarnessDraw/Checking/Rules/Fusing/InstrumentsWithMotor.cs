using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class InstrumentsWithMotor : IDesignRule
{
    public RuleInfo Info { get; } = new("instruments-with-motor", "Senders and gauges share a fuse with a motor", Severity.Advice, Consequence.LostFunction, "common practice, no source",
        "A motor that jams takes the gauges with it, which would have told what it did; each start makes their needles jump.")
    {
        Limits = [new("motor from", 1, "A", "common practice, no source: smaller motors do not open a fuse")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var fuse in context.Plan.Fuses)
        {
            // a main fuse carries everything by its nature: only the nearest fuse counts
            var loads = context.LoadsOn(fuse.Id).Where(l => context.ProtectionOf(l.Circuit).FirstOrDefault() == fuse.Id).ToList();
            var motors = loads.Where(l => IsMotor(context, l)).DistinctBy(l => l.Thing.Id).ToList();
            var senders = context.Harness.Circuits.Where(c => IsInstrument(context, c) && context.ProtectionOf(c).FirstOrDefault() == fuse.Id && motors.Exists(m => context.CanMeet(m.Circuit.OnlyWith, c.OnlyWith))).ToList();
            if (motors.Count > 0 && senders.Count > 0 && Free(context, fuse, senders) is { Count: > 0 } free)
            {
                yield return context.Found(Info, $"{Wording.List(senders.Select(s => s.Id))} {(senders.Count == 1 ? "shares" : "share")} fuse {fuse.Id} with {Wording.List(motors.Select(m => $"{m.Thing.Id} ({Figure.Amps(m.CurrentA)})"))}: a motor that jams takes the gauges with it.",
                    $"Take {(senders.Count == 1 ? "it" : "them")} to {Wording.List(free, "or")}, which {(free.Count == 1 ? "feeds" : "feed")} no motor.", [fuse.Id, .. senders.Select(s => s.Id), .. motors.Select(m => m.Circuit.Id)], at: FuseWords.At(context, fuse.Id));
            }
        }
    }

    // a wiper's own parking contact is part of it
    private static bool IsInstrument(RuleContext context, Circuit circuit) => circuit.Duty == Duty.Signal
        && circuit.Feeds.Any(f => context.Thing(f.Thing) is { } t && t.Elements.Any(e => e.Kind == ElementKind.Sender) && t.Elements.All(e => e.Kind != ElementKind.Motor));

    private bool IsMotor(RuleContext context, FusedLoad load) => load.Element?.Kind == ElementKind.Motor && load.CurrentA >= context.Limit(Info, "motor from");

    /// <summary>Fuses on the same panel that feed something with the same key, and no motor; two at the most.</summary>
    private List<string> Free(RuleContext context, FuseChoice fuse, List<Circuit> senders)
    {
        var on = context.Harness.Protections.FirstOrDefault(p => p.Id == fuse.Id)?.On;
        return
        [
            .. context.Harness.Protections.Where(p => p.On is not null && p.On == on && p.Id != fuse.Id)
                .Where(p => context.LoadsOn(p.Id).Where(l => context.ProtectionOf(l.Circuit).FirstOrDefault() == p.Id).ToList() is { Count: > 0 } own
                    && !own.Exists(l => IsMotor(context, l)) && own.Exists(l => senders.TrueForAll(s => s.LiveWith == l.Circuit.LiveWith)))
                .Select(p => p.Id).Take(2),
        ];
    }
}
