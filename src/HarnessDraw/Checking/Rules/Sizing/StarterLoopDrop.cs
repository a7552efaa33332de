using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class StarterLoopDrop : MeasuredRule
{
    public override RuleInfo Info { get; } = new("starter-loop-drop", "Volts lost in the starter leads while cranking", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "Half a volt less and the starter turns slowly on the first cold morning.")
    {
        Limits = [new("feed at 12 V", 0.5, "V", "workshop practice; scaled with the nominal volts"), new("return at 12 V", 0.3, "V", "workshop practice; scaled with the nominal volts")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var starter in context.Harness.Things.Where(t => t.Kind == ThingKind.Starter))
        {
            foreach (var motor in starter.Elements.Where(e => e is { Kind: ElementKind.Motor, CurrentA: > 0 }))
            {
                foreach (var post in context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery))
                {
                    var far = $"{starter.Id}.{motor.PinA}";
                    var feed = Of(context, post.Node, far, motor.CurrentA!.Value, "feed at 12 V", post.Source);
                    var back = StrapWires.GroundedPost(context, post) is { } ground && context.Harness.Things.FirstOrDefault(t => t.Kind == ThingKind.GroundPoint && t.Place == starter.Place && !t.Pins.IsEmpty) is { } bolt
                        ? Of(context, ground, $"{bolt.Id}.{bolt.Pins[0].Name}", motor.CurrentA.Value, "return at 12 V", post.Source) : null;
                    foreach (var measure in new[] { feed, back }.OfType<Measure>())
                    {
                        yield return measure;
                    }
                }
            }
        }
    }

    private Measure? Of(RuleContext context, string from, string to, double amps, string limit, Source source)
    {
        var found = context.Graph.Search(from, h => h.Kind is HopKind.Wire or HopKind.Joint or HopKind.Fuse);
        if (!found.TryGetValue(to, out var end) || end.By is null)
        {
            return null;
        }

        var volts = end.Ohm * amps;
        var wires = PowerGraph.Way(found, to).Where(h => h.Wire is not null).Select(h => h.Wire!).ToList();
        var most = context.Limit(Info, limit) * context.Harness.Power.LiveV(source) / 12;
        return new($"cranking, {PointWords.OfNode(from)} to {PointWords.OfNode(to)}", volts, most, "V", () => context.Found(Info,
            $"{Figure.Amps(amps)} from {PointWords.OfNode(from)} to {PointWords.OfNode(to)} loses {Figure.Volts(volts)} in {Wording.List(wires.Select(w => $"{w.Named()}, {Figure.Area(w.AreaMm2)}"))}; {Figure.Volts(most)} is the most.",
            wires.OrderByDescending(w => PowerGraph.OhmOf(context.Plan, w, 20)).Select(w => $"Use larger wire for {w.Id}, or shorten it.").FirstOrDefault(), [.. wires.Select(w => w.Id)]));
    }
}
