using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class AmmeterBelowOutput : MeasuredRule
{
    public override RuleInfo Info { get; } = new("ammeter-below-output", "Ammeter or cut-out too small for the charge", Severity.Warning, Consequence.Fire, "workshop practice, no standard",
        "All that the alternator gives passes an instrument in series with its lead.");

    public override IEnumerable<Measure> Measures(RuleContext context)
    {
        var batteries = context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).ToList();
        foreach (var post in context.Graph.Posts.Where(p => p.Source is { Kind: SourceKind.Alternator, OutputA: > 0 }))
        {
            var found = context.Graph.Search(post.Node, _ => true);
            foreach (var hop in batteries.Take(1).SelectMany(b => PowerGraph.Way(found, b.Node)).Where(h => h.Kind == HopKind.Contact))
            {
                var id = hop.A[..hop.A.LastIndexOf('.')];
                if (context.Thing(id) is { Kind: not ThingKind.Relay } thing && thing.Elements.FirstOrDefault(e => e is { Kind: ElementKind.Contact, RatedA: > 0 }) is { } contact)
                {
                    yield return new($"charge through {id}", post.Source.OutputA!.Value, contact.RatedA!.Value, "A", () => context.Found(Info,
                        $"{post.Source.Id} gives {Figure.Amps(post.Source.OutputA.Value)} through {id}, which is made for {Figure.Amps(contact.RatedA.Value)}.",
                        "Fit one that is made for more than the alternator gives, or a shunt beside it.", [id, post.Source.Id], thing.OnlyWith, thing.At));
                }
            }
        }
    }
}
