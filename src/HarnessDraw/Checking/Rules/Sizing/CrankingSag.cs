using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Sizing;

/// <summary>What ignition coils, electronics and relay coils get while the starter turns and while it still stands, in the solved network.</summary>
internal sealed class CrankingSag : MeasuredRule
{
    public override RuleInfo Info { get; } = new("cranking-sag", "Too few volts for ignition or relays while cranking", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "The starter pulls the battery down: a coil that gets too little does not spark and a relay that lets go takes its load with it, so the engine turns and does not start.")
    {
        Limits =
        [
            new("ignition and electronics", 60, "%", "common practice, no source: of the nominal volts"), new("relay pulls in", 100 * StateCircuit.PullsInAt, "%", "common practice, no source: 60 to 70 % of the nominal volts"),
            new("relay holds", 100 * StateCircuit.DropsOutAt, "%", "common practice, no source: lets go at 10 to 30 % of the nominal volts"),
        ],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        from build in context.SolvedBuilds.Take(1)
        from point in CrankingFinder.Find(context.Plan, build)
        from load in point.Loads
        let limit = LimitOf(load, point.Stalled)
        where limit is not null
        group (point, load) by (limit, load.Load) into one
        select Of(context, one.Key.limit!, one.MinBy(p => p.load.Share));

    /// <summary>A coil or electronics needs its volts while the starter turns; in the first moment a relay must hold. Lamps and motors may be weak for seconds.</summary>
    private static string? LimitOf(CrankedLoad load, bool stalled) => load switch
    {
        { WorksContact: true } => stalled ? "relay holds" : "relay pulls in",
        { Kind: ElementKind.Electronic or ElementKind.Coil } when !stalled => "ignition and electronics",
        _ => null,
    };

    private Measure Of(RuleContext context, string limit, (CrankingPoint Point, CrankedLoad Load) at)
    {
        var (point, load) = at;
        var least = context.Limit(Info, limit);
        return new($"{load.Load} while {point.Starter} {(point.Stalled ? "still stands" : "turns")}", 100 * load.Share, least, "%", () => context.Found(Info,
            $"{load.Load} gets {Figure.Volts(load.VoltageV)} ({Figure.Percent(load.Share)}) in '{point.State}' while {point.Starter} {(point.Stalled ? "still stands" : "turns")} and takes {Figure.Amps(point.StarterA)}: the battery's posts are at {Figure.Volts(point.BatteryV)}, the starter has {Figure.Volts(point.StarterV)}; {Figure.Number(least)} % of its volts is the least.",
            "Feed it nearer to the battery, with larger wire and fewer contacts, or fit a battery with less internal resistance.", [load.Thing, .. load.Circuit is null ? [] : new[] { load.Circuit }, point.Starter], at: context.Circuit(load.Circuit ?? "")?.At), AtLeast: true);
    }
}
