using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class ChargeLeadDrop : MeasuredRule
{
    public override RuleInfo Info { get; } = new("charge-lead-drop", "Volts lost in the charge lead at full output", Severity.Warning, Consequence.DoesNotLast, "workshop practice, no standard",
        "The regulator measures at the alternator: what the lead loses, the battery never gets.")
    {
        Limits = [new("at 12 V", PlanningOptions.Usual.ChargeDropAt12V, "V", "workshop practice; scaled with the nominal volts")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var alternator in context.Graph.Posts.Where(p => p.Source is { Kind: SourceKind.Alternator, OutputA: > 0 }))
        {
            var found = context.Graph.Search(alternator.Node, h => h.Kind is HopKind.Wire or HopKind.Joint or HopKind.Fuse);
            var battery = context.Graph.Posts.FirstOrDefault(p => p.Source.Kind == SourceKind.Battery && context.Harness.Power.LiveV(p.Source) == alternator.Source.NominalV && found.ContainsKey(p.Node));
            if (battery is not null)
            {
                var volts = found[battery.Node].Ohm * alternator.Source.OutputA!.Value;
                var wires = PowerGraph.Way(found, battery.Node).Where(h => h.Wire is not null).ToList();
                yield return new($"charge lead of {alternator.Source.Id}", volts, context.Limit(Info, "at 12 V") * alternator.Source.NominalV / 12, "V", () => context.Found(Info,
                    $"{Figure.Volts(volts)} is lost between {PointWords.OfNode(alternator.Node)} and {PointWords.OfNode(battery.Node)} at {Figure.Amps(alternator.Source.OutputA.Value)} ({Wording.List(wires.Select(h => h.Wire!.Named()))}): the battery stays under-charged.",
                    wires.OrderByDescending(h => h.Ohm).Select(h => $"Use larger wire for {h.Wire!.Id}, which loses most.").FirstOrDefault(), [alternator.Source.Id, .. wires.Select(h => h.Wire!.Id)]));
            }
        }
    }
}
