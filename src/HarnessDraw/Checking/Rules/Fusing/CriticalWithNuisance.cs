using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class CriticalWithNuisance : IDesignRule
{
    public RuleInfo Info { get; } = new("critical-with-nuisance", "A critical circuit shares its fuse with accessories", Severity.Warning, Consequence.LostFunction, "common practice, no source",
        "A motor or heater that opens the fuse takes the critical circuit with it.")
    {
        Limits = [new("accessory from", 1, "A", "common practice, no source: smaller loads do not open a fuse")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var fuse in context.Plan.Fuses)
        {
            // a main fuse carries everything by its nature: only the nearest fuse counts
            var loads = context.LoadsOn(fuse.Id).Where(l => context.ProtectionOf(l.Circuit).FirstOrDefault() == fuse.Id).ToList();
            var critical = loads.Where(l => l.Circuit.Importance == Importance.Critical).Select(l => l.Circuit.Id).Distinct().ToList();
            var nuisance = loads.Where(l => l.Circuit.Importance != Importance.Critical && l.CurrentA >= context.Limit(Info, "accessory from") && l.Element?.Kind is not ElementKind.Lamp)
                .Where(l => loads.Any(c => c.Circuit.Importance == Importance.Critical && context.CanMeet(c.Circuit.OnlyWith, l.Circuit.OnlyWith))).DistinctBy(l => l.Circuit.Id).ToList();
            if (critical.Count > 0 && nuisance.Count > 0)
            {
                yield return context.Found(Info, $"{Wording.List(critical)} {(critical.Count == 1 ? "shares" : "share")} fuse {fuse.Id} with {Wording.List(nuisance.Select(l => $"{l.Circuit.Id} ({Figure.Amps(l.CurrentA)})"))}: a fault there takes both.",
                    "Give the critical circuit a fuse of its own.", [fuse.Id, .. critical, .. nuisance.Select(l => l.Circuit.Id)], at: FuseWords.At(context, fuse.Id));
            }
        }
    }
}
