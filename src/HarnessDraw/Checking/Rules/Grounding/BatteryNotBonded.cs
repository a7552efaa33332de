using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Grounding;

internal sealed class BatteryNotBonded : IDesignRule
{
    public RuleInfo Info { get; } = new("battery-not-bonded", "Battery, body and engine are not joined", Severity.Error, Consequence.Fire, "workshop practice, no standard",
        "Without a strap the starter's current returns by a throttle cable or a gauge pipe.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        if (context.Harness.Power.Returns != ReturnPath.Body)
        {
            yield break;
        }

        foreach (var post in context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery && !context.Harness.Power.IsTap(p.Source)))
        {
            if (StrapWires.GroundedPost(context, post) is not { } ground)
            {
                continue;
            }

            var found = context.Graph.Search(ground, h => h.Kind is HopKind.Wire or HopKind.Joint);
            var reached = context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && t.Pins.Any(p => found.ContainsKey($"{t.Id}.{p.Name}"))).ToList();
            if (reached.Count == 0)
            {
                yield return context.Found(Info, $"{PointWords.OfNode(ground)} reaches no ground point: nothing returns to the battery.", "Run a battery cable from it to the body, and a strap to the engine.", [post.Source.Id], at: post.Source.At);
            }
        }
    }
}
