using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class CoilAboveContact : MeasuredRule
{
    public override RuleInfo Info { get; } = new("coil-above-contact", "Switch or sender too small for what it switches", Severity.Warning, Consequence.Damage, "common practice, no source",
        "A sender's contact is made for a signal: a coil burns it.");

    public override IEnumerable<Measure> Measures(RuleContext context) => SwitchedContact.Of(context).Where(s => s.Thing.Kind is not ThingKind.Relay).Select(s =>
        new Measure($"contact of {s.Thing.Id}", s.CurrentA, s.Contact.RatedA!.Value, "A", () => context.Found(Info,
            $"The contact of {s.Thing.Id} is rated {Figure.Amps(s.Contact.RatedA.Value)}; {Wording.List(s.Feeds)} {(s.Feeds.Distinct().Count() == 1 ? "needs" : "need")} {Figure.Amps(s.CurrentA)}.", "Put a relay between, or use a coil that draws less.", [s.Thing.Id, .. s.Feeds], s.Thing.OnlyWith, s.Thing.At)));
}
