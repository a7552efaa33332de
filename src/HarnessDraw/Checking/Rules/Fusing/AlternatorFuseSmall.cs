using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Fusing;

internal sealed class AlternatorFuseSmall : MeasuredRule
{
    public override RuleInfo Info { get; } = new("alternator-fuse-small", "Charge fuse close to the alternator's output", Severity.Warning, Consequence.Damage, "workshop practice, no standard",
        "A charge fuse that opens at full output leaves the alternator without its battery: the surge destroys regulator and electronics.")
    {
        Limits = [new("of output", 100 * PlanningOptions.Usual.FuseOverOutput, "%", "workshop practice: 1.2 to 1.5 times the rated output"), new("error below", 100, "%", "workshop practice")],
    };

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        foreach (var source in context.Harness.Power.Sources.Where(s => s.Kind == SourceKind.Alternator && s.OutputA is > 0))
        {
            foreach (var fuse in FusesOf(context, source).Distinct(StringComparer.Ordinal).Select(context.Fuse).OfType<FuseChoice>().Where(f => f.RatingA is not null))
            {
                yield return Of(context, source, fuse);
            }
        }
    }

    // what else ends at the post, such as a charge lamp's wire, carries no charge: the fuses on the way to a battery count, and those that guard the wires of that way
    private static IEnumerable<string> FusesOf(RuleContext context, Source source)
    {
        foreach (var post in context.Graph.Posts.Where(p => p.Source == source))
        {
            var found = context.Graph.Search(post.Node, h => !context.IsGround(h.B));
            var battery = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery && found.ContainsKey(p.Node)).MinBy(p => found[p.Node].Ohm);
            var way = battery is null ? [] : PowerGraph.Way(found, battery.Node);
            var lead = way.Where(h => h.Wire is not null && (h.A == post.Node || h.B == post.Node)).SelectMany(h => h.Wire!.ProtectedBy.Take(1));
            foreach (var fuse in lead.Concat(way.Select(h => h.Fuse).OfType<string>()))
            {
                yield return fuse;
            }
        }
    }

    private Measure Of(RuleContext context, Source source, FuseChoice fuse)
    {
        var (output, rating) = (source.OutputA!.Value, fuse.RatingA!.Value);
        return new($"charge fuse {fuse.Id} over {source.Id}", rating, context.Limit(Info, "of output") / 100 * output, "A", () => context.Found(Info,
            $"{source.Id} gives {Figure.Amps(output)}, its fuse {fuse.Id} is {Figure.Amps(rating)} ({Figure.Percent(rating / output)}): {(rating < output ? "it opens at full charge" : "it ages at full charge and opens one day")}.",
            "Take a larger fuse, with a charge lead that bears it.",
            [fuse.Id, source.Id], at: FuseWords.At(context, fuse.Id), severity: rating < context.Limit(Info, "error below") / 100 * output ? Severity.Error : Severity.Warning), AtLeast: true);
    }
}
