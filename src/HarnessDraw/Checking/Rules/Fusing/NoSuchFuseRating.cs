using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class NoSuchFuseRating : IDesignRule
{
    public RuleInfo Info { get; } = new("no-such-fuse-rating", "Fuse rating that is not made", Severity.Error, Consequence.DoesNotWork, "ISO 8820 ratings as reprinted on data sheets; the catalogue's rows",
        "Who cannot buy the rating fits what is at hand.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var voltsOf = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var circuit in context.Harness.Circuits.Where(c => !c.IsReturn))
        {
            foreach (var id in context.ProtectionOf(circuit))
            {
                voltsOf[id] = Math.Max(voltsOf.GetValueOrDefault(id, circuit.NominalV), circuit.NominalV);
            }
        }

        foreach (var fuse in context.Plan.Fuses.Where(f => f.RatingA is not null))
        {
            var volts = voltsOf.GetValueOrDefault(fuse.Id);
            if (MostVolts(context, fuse.Kind) is { } most && volts > most)
            {
                yield return context.Found(Info, $"Fuse {fuse.Id} is a {Word(fuse)} for {Figure.Volts(most)} and stands in a {Figure.Volts(volts)} circuit: it opens with an arc that stays.", "Use a family made for such volts.", [fuse.Id], at: FuseWords.At(context, fuse.Id));
            }

            var made = FuseWords.Ratings(context, fuse.Kind);
            if (made.Length > 0 && !made.Any(r => Math.Abs(r - fuse.RatingA!.Value) < 1e-6))
            {
                yield return context.Found(Info, $"Fuse {fuse.Id}: there is no {Figure.Amps(fuse.RatingA!.Value)} {Word(fuse)}; the nearest made are {Wording.List(Nearest(made, fuse.RatingA.Value).Select(Figure.Amps))}.", "Take one that is made.", [fuse.Id], at: FuseWords.At(context, fuse.Id));
            }
        }
    }

    // what the best of a kind breaks; null where none says
    private static double? MostVolts(RuleContext context, Model.ProtectionKind kind)
    {
        double? most = null;
        foreach (var series in context.Harness.Catalogue.Fuses)
        {
            if (series.Kind == kind)
            {
                if (series.MaxV is not { } volts)
                {
                    return null;
                }

                most = Math.Max(most ?? volts, volts);
            }
        }

        return most;
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
