using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

internal sealed class BlackFeedRedGround : IDesignRule
{
    public RuleInfo Info { get; } = new("black-feed-red-ground", "Black feed or red ground", Severity.Warning, Consequence.Damage, "common practice, no source",
        "Everybody takes black for ground and red for live: somebody will clamp a black feed to the body.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var feeds = context.Plan.Wires.Where(w => TiredColours.Split(w.Colour).Base == "BK" && !context.IsReturn(w) && context.Circuit(w.Circuit)?.Duty is not Duty.Signal && context.Circuit(w.Circuit) is { IsReturn: false }).ToList();
        var grounds = context.Plan.Wires.Where(w => TiredColours.Split(w.Colour).Base == "RD" && context.IsReturn(w)).ToList();
        foreach (var (wires, word) in new[] { (feeds, "feed"), (grounds, "ground") })
        {
            if (wires.Count > 0)
            {
                yield return context.Found(Info, $"{Wording.List(wires.Select(w => $"{w.Named()} {w.Colour}"))} {(wires.Count == 1 ? $"is a {(word == "feed" ? "black feed" : "red ground")}" : $"are {(word == "feed" ? "black feeds" : "red grounds")}")}.", word == "feed" ? "Use any base but black." : "Use black or brown for returns.", wires.Select(w => w.Id));
            }
        }
    }
}
