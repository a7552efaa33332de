using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class RelayContactOverloaded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("relay-contact-overloaded", "Relay contact too small for its load", Severity.Warning, Consequence.Damage, "workshop practice, no standard",
        "A motor's start welds a contact that was rated for a lamp.")
    {
        Limits = [new("motor share", 80, "%", "workshop practice: contacts are rated for lamps and heaters")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) => SwitchedContact.Of(context).Where(s => s.Thing.Kind == ThingKind.Relay).Select(s =>
    {
        var share = s.Motor ? context.Limit(Info, "motor share") / 100 : 1;
        return new Measure($"contact of {s.Thing.Id}", s.CurrentA, share * s.Contact.RatedA!.Value, "A", () => context.Found(Info,
            $"{s.Thing.Id} switches {Figure.Amps(s.CurrentA)} ({Wording.List(s.Feeds)}) with a {Figure.Amps(s.Contact.RatedA.Value)} contact; {(s.Motor ? "a motor may take " : "it bears ")}{Figure.Amps(share * s.Contact.RatedA.Value)}.",
            "Use a relay with a heavier contact.", [s.Thing.Id, .. s.Feeds], s.Thing.OnlyWith, s.Thing.At));
    });
}
