using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class NoSuchFuseRating : IDesignRule
{
    public RuleInfo Info { get; } = new("no-such-fuse-rating", "Fuse rating that is not made", Severity.Error, Consequence.DoesNotWork, "ISO 8820 ratings as reprinted on data sheets; the catalogue's rows",
        "Who cannot buy the rating fits what is at hand.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var fuse in context.Plan.Fuses.Where(f => f.RatingA is not null))
        {
            var made = FuseWords.Ratings(context, fuse.Kind);
            if (made.Length > 0 && !made.Any(r => Math.Abs(r - fuse.RatingA!.Value) < 1e-6))
            {
                yield return context.Found(Info, $"Fuse {fuse.Id}: there is no {Figure.Amps(fuse.RatingA!.Value)} {Word(fuse)}.", $"Nearest: {Wording.List(Nearest(made, fuse.RatingA.Value).Select(Figure.Amps))}.", [fuse.Id], at: FuseWords.At(context, fuse.Id));
            }
        }
    }

    private static string Word(FuseChoice fuse) => fuse.Kind switch
    {
        Model.ProtectionKind.Blade => "blade fuse",
        Model.ProtectionKind.BoltIn => "bolt-in fuse",
        Model.ProtectionKind.FusibleLink => "fusible link",
        _ => "breaker",
    };

    private static IEnumerable<double> Nearest(double[] made, double rating) => made.Where(r => r < rating).TakeLast(1).Concat(made.Where(r => r > rating).Take(1));
}
