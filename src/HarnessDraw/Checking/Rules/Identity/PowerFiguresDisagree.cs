using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class PowerFiguresDisagree : IDesignRule
{
    public RuleInfo Info { get; } = new("power-figures-disagree", "Current, power and resistance of a load disagree", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Sizes and fuses follow from one of them: if it is the wrong one, they are wrong.")
    {
        Limits = [new("apart", 15, "%", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var thing in context.Harness.Things)
        {
            foreach (var element in thing.Elements.Where(e => e.Draws()))
            {
                var volts = element.NominalV ?? FedAt(context, thing, element);
                var said = Currents(element, volts).ToList();
                if (said.Count > 1 && said.Max(s => s.Amps) > said.Min(s => s.Amps) * (1 + (context.Limit(Info, "apart") / 100)))
                {
                    yield return context.Found(Info, $"{thing.Id} ({element.Id}) at {Figure.Volts(volts)}: {Wording.List(said.Select(s => $"{s.From} gives {Figure.Amps(s.Amps)}"))}.", "Keep the figure of the nameplate and take the other out.", [thing.Id], thing.OnlyWith, thing.At);
                }
            }
        }
    }

    internal static double FedAt(RuleContext context, Thing thing, Element element) =>
        context.Harness.Circuits.FirstOrDefault(c => !c.IsReturn && c.Feeds.Any(f => f.Thing == thing.Id && f.Pin == element.PinA))?.NominalV ?? context.Harness.Power.NominalV;

    private static IEnumerable<(string From, double Amps)> Currents(Element element, double volts)
    {
        if (element.CurrentA is { } amps)
        {
            yield return ("the current", amps);
        }

        if (element.PowerW is { } watts)
        {
            yield return ($"{Figure.Of(watts, "W")}", watts / volts);
        }

        if (element.ResistanceOhm is > 0 and { } ohm)
        {
            yield return ($"{Figure.Of(ohm, "Ω")}", volts / ohm);
        }
    }
}
