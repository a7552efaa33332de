using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class FusesNotSelective : MeasuredRule
{
    public override RuleInfo Info { get; } = new("fuses-not-selective", "Main and branch fuse may open together", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "A fault in one branch should not darken everything behind the main fuse.")
    {
        Limits = [new("main to branch", 2, "", "common practice, no source")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context) =>
        context.Plan.Wires.SelectMany(w => w.ProtectedBy.Zip(w.ProtectedBy.Skip(1)))
            .Distinct().Order()
            .Select(p => (Branch: context.Fuse(p.First), Main: context.Fuse(p.Second)))
            .Where(p => p.Branch?.RatingA is > 0 && p.Main?.RatingA is > 0)
            .Select(p => Of(context, p.Branch!, p.Main!));

    private Measure Of(RuleContext context, FuseChoice branch, FuseChoice main)
    {
        var times = context.Limit(Info, "main to branch");
        return new($"main fuse {main.Id} over branch fuse {branch.Id}", main.RatingA!.Value, times * branch.RatingA!.Value, "A", () => context.Found(Info,
            $"Main fuse {main.Id} ({Figure.Amps(main.RatingA.Value)}) and branch fuse {branch.Id} ({Figure.Amps(branch.RatingA.Value)}) may open together: the main should be {Figure.Amps(times * branch.RatingA.Value)} or more.",
            "Take a smaller branch fuse, or a larger main if its wires bear it.", [main.Id, branch.Id], at: FuseWords.At(context, branch.Id)), AtLeast: true);
    }
}
