using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class ExciterRunOn : IDesignRule
{
    public RuleInfo Info { get; } = new("exciter-run-on", "Engine runs on through the exciter", Severity.Error, Consequence.LostFunction, "workshop practice, no standard",
        "With the key off the alternator feeds the ignition back through a bare exciter wire.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        Exciters.Of(context).Where(p => !Exciters.On(context, p.Circuit).Any(Exciters.Limits))
            .Select(p => context.Found(Info, $"{p.Circuit.Id} joins {p.Alternator.Id} to {p.Circuit.From} with no lamp, resistor or diode between: key off, the alternator feeds the ignition and the engine runs on.",
                "Put the charge lamp (about 2 W), 75 to 150 Ω in the 2 to 3 W class, or a diode in the wire.", [p.Circuit.Id, p.Alternator.Id, .. context.WiresOf(p.Circuit.Id).Select(w => w.Id)], p.Circuit.OnlyWith, p.Circuit.At));
}
