using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class LoopDrop : MeasuredRule
{
    private const double LeastToldV = 0.05;

    public override RuleInfo Info { get; } = new("loop-drop", "Volts lost on the way out and back", Severity.Warning, Consequence.DoesNotWork, "ABYC E-11 as quoted; common practice for motors",
        "A lamp at 90 % of its volts gives 70 % of its light; a motor starts late or not at all.")
    {
        Limits =
        [
            new("critical", 100 * PlanningOptions.Usual.CriticalDrop, "%", "ABYC E-11 as quoted: lamps, ignition, pumps, electronics"), new("motor", 100 * PlanningOptions.Usual.MotorDrop, "%", "common practice, no source"), new("other", 100 * PlanningOptions.Usual.OrdinaryDrop, "%", "ABYC E-11 as quoted"),
            new("error at times limit", 2, "", "common practice, no source"),
        ],
    };

    // the worst load of a circuit speaks for all of them
    public override IEnumerable<Measure> Measures(RuleContext context) =>
        LoadVolts.Of(context)
            .GroupBy(l => (l.Circuit.Id, l.Element.Kind == ElementKind.Motor))
            .Select(g => Of(context, [.. g], [.. g.GroupBy(l => (l.Thing.Id, l.Element.Id)).Select(e => e.OrderByDescending(l => l.DropV).ThenBy(l => l.Build).ThenBy(l => l.State, StringComparer.Ordinal).First()).OrderByDescending(l => l.DropV).ThenBy(l => l.Thing.Id, StringComparer.Ordinal)]));

    private Measure Of(RuleContext context, List<LoadVolts> seen, List<LoadVolts> loads)
    {
        var load = loads[0];
        var percent = context.Limit(Info, load.Circuit.Importance == Importance.Critical ? "critical" : load.Element.Kind == ElementKind.Motor ? "motor" : "other");
        var limit = percent / 100 * load.Circuit.NominalV;
        return new($"loop drop of {load.Thing.Id} ({load.Element.Id})", load.DropV, limit, "V", () => TooMuch(context, Only(context, seen, limit), loads, limit, percent));
    }

    // the builds that lose too much, as the fewest choices that none of the others has
    private static BuildCondition Only(RuleContext context, List<LoadVolts> seen, double limit)
    {
        var worst = seen.GroupBy(l => l.Build).ToLookup(g => g.Max(l => l.DropV) > limit, g => context.SolvedBuilds[g.Key]);
        return SmallestBuilds.Of([.. worst[true]], [.. worst[false]]);
    }

    private Finding TooMuch(RuleContext context, BuildCondition only, List<LoadVolts> loads, double limit, double percent)
    {
        var load = loads[0];
        var parts = load.Parts(context);
        var light = load.Element.Kind == ElementKind.Lamp ? $" Light about {Figure.Number(Math.Round(100 * Math.Pow(load.AtLoadV / load.SourceV, PartLaw.LightPower)))} %." : "";
        // of kept wiring that is not described to its end the volts are known and not where they go
        var rest = load.DropV - parts.WiresV - parts.ContactsV - parts.KeptV - parts.ReturnV;
        var where = parts.Told(rest >= LeastToldV ? rest : 0) is { Length: > 0 } said ? $": {said}" : "";
        var also = loads.Skip(1).Where(l => l.DropV > limit).ToList();
        var more = also.Count == 0 ? "" : $" Also {Wording.List(also.Select(l => $"{l.Thing.Id} {Figure.Volts(l.DropV)}"))}.";
        var severity = load.DropV > context.Limit(Info, "error at times limit") * limit ? Severity.Error : Severity.Warning;
        return context.Found(Info, $"{load.Thing.Id} ({load.Element.Id}) loses {Figure.Volts(load.DropV)} ({Figure.Percent(load.DropV / load.Circuit.NominalV)}) in '{load.State}'{where}; {Figure.Number(percent)} % of {Figure.Volts(load.Circuit.NominalV)} is {Figure.Volts(limit)}.{light}{more}",
            Cure(context, parts), [load.Thing.Id, load.Circuit.Id, .. parts.Worst is null ? Array.Empty<string>() : [parts.Worst.Id], .. also.Select(l => l.Thing.Id)], load.Circuit.OnlyWith.And(only), load.Circuit.At, severity);
    }

    private static string Cure(RuleContext context, DropParts parts) => parts.KeptV + parts.ContactsV > parts.WiresV + parts.ReturnV || parts.Worst is not { } wire
        ? "Let a relay near the load carry the current: fuses, switches and kept wiring lose most of it."
        : TakesLarger(context, wire) ? $"{wire.Id} loses most: use larger wire, shorten the run, join fewer contacts, or use a relay near the load."
        : $"{wire.Id} loses most, and its terminals take no larger wire: bring source or ground point nearer, give each load a wire and a fuse of its own, or use a relay near the load.";

    private static bool TakesLarger(RuleContext context, Wire wire) =>
        EndTerminals.LargestMm2(context, [wire]) is var most && context.TypeOf(wire) is { } type && type.Sizes.Any(s => s.AreaMm2 > wire.AreaMm2 && s.AreaMm2 <= most);
}
