using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class ContactOverloaded : MeasuredRule
{
    // a worn contact (trade practice, no source)
    private const double WornOhm = 0.010;

    public override RuleInfo Info { get; } = new("contact-overloaded", "More current than a contact should carry", Severity.Warning, Consequence.Fire, "the terminal's own catalogue row; share is common practice",
        "Heat loosens the contact, looseness makes heat: it ends with a melted connector.")
    {
        Limits = [new("share", 80, "%", "common practice, no source"), new("error from", 100, "%", "common practice, no source")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        PlannedEnd.Of(context.Plan).Where(e => e.Wire.Worst is not null && context.Circuit(e.Wire.Circuit)?.Duty is not Duty.Momentary)
            .Select(e => (End: e, Terminal: context.Terminal(e.End.Terminal)!))
            .Where(p => p.Terminal is { Ring: false, CurrentA: > 0 })
            .Select(p =>
            {
                var (amps, bears) = (p.End.Wire.Worst!.CurrentA, p.Terminal.CurrentA);
                return new Measure($"contact {PointWords.Of(p.End.End)} of {p.End.Wire.Named()}", amps, context.Limit(Info, "share") / 100 * bears, "A", () => context.Found(Info,
                    $"{Figure.Amps(amps)} through the {Figure.Amps(bears)} contact {PointWords.Of(p.End.End)} (wire {p.End.Wire.Named()}): {Figure.Percent(amps / bears)}, {Figure.Of(amps * amps * WornOhm, "W")} of heat once it is worn to 10 mΩ.",
                    "Use a larger cavity, or take the heavy current another way (stud, relay).", [p.End.End.ToString(), p.End.Wire.Id], CurrentCause.Of(p.End.Wire, context.Limit(Info, "share") / 100 * bears), context.Circuit(p.End.Wire.Circuit)?.At,
                    amps > context.Limit(Info, "error from") / 100 * bears ? Severity.Error : Severity.Warning));
            });
}
