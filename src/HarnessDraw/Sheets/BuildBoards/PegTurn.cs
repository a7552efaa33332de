using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>The wires that come to a peg from one neighbour and leave it to another, by id.</summary>
public sealed record PegTurn(string Peg, string From, string To, ImmutableArray<string> Wires)
{
    /// <summary>Peg by peg from the datum outward; a peg where wires only pass between two neighbours is told too: it holds them.</summary>
    public static ImmutableArray<PegTurn> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var segments = plan.Tree.Segments.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var order = plan.Tree.Segments.Select((s, i) => (s.To, i)).GroupBy(p => p.To, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().i, StringComparer.Ordinal);
        return
        [
            .. plan.Wires.SelectMany(w => Turns(w, segments)).GroupBy(t => (t.Peg, t.From, t.To))
                .OrderBy(g => order.GetValueOrDefault(g.Key.Peg, -1)).ThenBy(g => order.GetValueOrDefault(g.Key.From, -1)).ThenBy(g => order.GetValueOrDefault(g.Key.To, -1))
                .Select(g => new PegTurn(g.Key.Peg, g.Key.From, g.Key.To, [.. g.Select(t => t.Wire).Distinct(StringComparer.Ordinal).Order(NaturalOrder.Instance)])),
        ];

        // the neighbour nearer to the datum first, whichever way a wire is written down
        IEnumerable<(string Peg, string From, string To, string Wire)> Turns(Wire wire, Dictionary<string, Segment> known)
        {
            var way = wire.Segments.Where(known.ContainsKey).Select(s => known[s]).ToList();
            for (var i = 0; i + 1 < way.Count; i++)
            {
                var (a, b) = (way[i], way[i + 1]);
                var peg = a.From == b.From || a.From == b.To ? a.From : a.To;
                var (one, other) = (a.From == peg ? a.To : a.From, b.From == peg ? b.To : b.From);
                yield return order.GetValueOrDefault(one, -1) <= order.GetValueOrDefault(other, -1) ? (peg, one, other, wire.Id) : (peg, other, one, wire.Id);
            }
        }
    }
}
