using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

/// <summary>Fuses with a rating given by hand for which the wires behind them are made thick, and not for their load.</summary>
internal sealed class FuseFarAboveLoad : IDesignRule
{
    public RuleInfo Info { get; } = new("fuse-far-above-load", "Fuse many times larger than its load", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "Every wire behind a fuse must bear its rating: a fuse far above its load makes wires thick that no small terminal takes, and what fails inside the load burns on.")
    {
        Limits = [new("times load", 10, "", "common practice, no source: a branch fuse is one and a quarter to three times its load; lamps and relay coils share fuses of 5 to 10 A"), new("above", 10, "A", "common practice, no source: up to that a fuse is made for its panel and not for a load")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var burden in FuseBurden.Of(context).Where(b => b.Fuse.Given && b.RatingA > context.Limit(Info, "above") && b.RatingA > context.Limit(Info, "times load") * b.TotalA))
        {
            var made = context.Plan.Wires.Where(w => w.DecidedBy is "protection" or "terminal" && w.ProtectedBy.FirstOrDefault() == burden.Fuse.Id).ToList();
            if (made.Count > 0)
            {
                var one = made.Count == 1;
                yield return context.Found(Info, $"Fuse {burden.Fuse.Id} is {Figure.Amps(burden.RatingA)} for {Figure.Amps(burden.TotalA)}, {Figure.Number(Math.Round(burden.RatingA / burden.TotalA))} times its load: {Wording.List(made.Select(w => $"{w.Named()}, {Figure.Area(w.AreaMm2)}"))} {(one ? "is" : "are")} as thick as the fuse asks and not as the load.",
                    "Take a smaller fuse, or leave the rating out: it is worked out.", [burden.Fuse.Id, .. made.Select(w => w.Id)], at: FuseWords.At(context, burden.Fuse.Id));
            }
        }
    }
}
