using HarnessDraw.Model;

namespace HarnessDraw.Layout;

// a chart whose places are kept: what stood on it before turns, follows and stands as it did
internal sealed partial class ChartShape
{
    // more than all true angles together
    private const double AgainstKept = 1e9;

    private double NotKept(int node, ChartTurn turn) => problem.Nodes[node].Kept is { } kept && kept.Turn != turn ? AgainstKept : 0;

    // how the cards of a place stood, told by the first that stood beside its bundle or at its end; null: none did
    private KeptCard? KeptAt(int node)
    {
        foreach (var card in cards[node])
        {
            if (problem.Cards[card].Kept is { Was.Stand: not CardStand.Lead } kept)
            {
                return kept;
            }
        }

        return null;
    }

    private ChartTurn? SideOf(int card) => problem.Cards[card].Kept is { Was.Stand: CardStand.Beside } kept ? kept.Was.Side : null;

    // what stood before takes the places that it has among all in the order in which it stood
    private static void InKeptOrder<T>(List<T> all, Func<T, int?> rank)
    {
        var known = all.FindAll(one => rank(one) is not null);
        if (known.Count < 2)
        {
            return;
        }

        known.Sort((a, b) => rank(a)!.Value.CompareTo(rank(b)!.Value));
        var next = 0;
        for (var i = 0; i < all.Count; i++)
        {
            all[i] = rank(all[i]) is null ? all[i] : known[next++];
        }
    }

    // each card on the rib on which it stood, a new one on that of the card before it
    private void KeptRibs(Spine spine, Station station, List<int> own)
    {
        var ribs = new SortedDictionary<int, (List<int> Cards, bool IsLeft)>();
        var last = own.Select(c => problem.Cards[c].Kept).First(k => k is { Was.Rib: not null })!.Was;
        foreach (var card in own)
        {
            last = problem.Cards[card].Kept is { Was.Rib: not null } kept ? kept.Was : last;
            if (!ribs.TryGetValue(last.Rib!.Value, out var rib))
            {
                ribs[last.Rib.Value] = rib = ([], last.RibTurn == ChartTurn.Left);
            }

            rib.Cards.Add(card);
        }

        foreach (var (some, isLeft) in ribs.Values)
        {
            Rib(spine, station, some, isLeft);
        }
    }
}
