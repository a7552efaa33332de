using HarnessDraw.Model;

namespace HarnessDraw.Layout;

/// <summary>How the branch to a node left on the chart before: its number among all that left there, and what was lengthened, mm.</summary>
public sealed record KeptBranch(ChartTurn Turn, int Rank, double StemMm, double HoldMm);

/// <summary>Where a card stood on the chart before: its number at its place, and the node whose branch it rode on (-1: none).</summary>
public sealed record KeptCard(FrozenCard Was, int Rank, int Host);

/// <summary>Takes down how a chart is laid out, and lays another one out the same way.</summary>
internal static class ChartKeeping
{
    /// <summary>Stems and stretches as long as they were, or so much of that.</summary>
    public static void Restore(ChartProblem problem, List<Spine> spines, double share)
    {
        foreach (var spine in spines)
        {
            spine.LiftMm = spine.Parent is null ? 0 : StemMm(problem, spine) * share;
            foreach (var station in spine.Stations)
            {
                station.HoldMm = station.HasEdge ? (problem.Nodes[station.Node].Kept?.HoldMm ?? 0) * share : 0;
            }
        }
    }

    private static double StemMm(ChartProblem problem, Spine rib)
    {
        if (rib.Stations.Find(s => s.HasEdge) is { } first)
        {
            return problem.Nodes[first.Node].Kept?.StemMm ?? 0;
        }

        foreach (var item in rib.Stations[0].Left.Concat(rib.Stations[0].Right))
        {
            if (problem.Cards[item.Card].Kept is { } kept)
            {
                return kept.Was.StemMm;
            }
        }

        return 0;
    }

    /// <summary>The branches by node, each node's in the order in which they leave.</summary>
    public static List<(int Node, ChartTurn Turn, double StemMm, double HoldMm)> Branches(List<Spine> spines)
    {
        var branches = new List<(int, ChartTurn, double, double)>();
        foreach (var spine in spines)
        {
            for (var k = 0; k < spine.Stations.Count; k++)
            {
                AddAll(spine.Stations[k].Left, ChartTurn.Left);
                if (k + 1 < spine.Stations.Count)
                {
                    branches.Add((spine.Stations[k + 1].Node, ChartTurn.Straight, 0, spine.Stations[k + 1].HoldMm));
                }

                AddAll(Enumerable.Reverse(spine.Stations[k].Right), ChartTurn.Right);
            }
        }

        // of a rib whose first cards are those of the place where it leaves the first branch is the rib itself, as it was told there
        return [.. branches.DistinctBy(b => b.Item1)];

        void AddAll(IEnumerable<SpineItem> items, ChartTurn turn)
        {
            foreach (var item in items)
            {
                if (item.Child?.Stations.Find(s => s.HasEdge) is { } first)
                {
                    branches.Add((first.Node, turn, item.Child.LiftMm, first.HoldMm));
                }
                else if (item.LeadNode >= 0)
                {
                    branches.Add((item.LeadNode, turn, 0, 0));
                }
            }
        }
    }

    /// <summary>The cards by their number, each place's in the order in which they stand; a host is the node of the branch that carries cards of the place where it leaves.</summary>
    public static List<(int Card, FrozenCard Was, int Host)> Cards(List<Spine> spines, IReadOnlyList<(double X, double Y)> drawn)
    {
        var cards = new List<(int, FrozenCard, int)>();
        var ribs = new Dictionary<int, int>();
        foreach (var spine in spines)
        {
            var isRib = spine.Parent is not null && !spine.Stations[0].HasEdge && spine.Stations.Count == 1;
            int? rib = isRib ? ribs[spine.Stations[0].Node] = ribs.GetValueOrDefault(spine.Stations[0].Node, -1) + 1 : null;
            for (var k = 0; k < spine.Stations.Count; k++)
            {
                var host = k == 0 && spine.HasOwnFirst ? spine.Stations[1].Node : -1;
                foreach (var item in spine.Stations[k].Left.Concat(spine.Stations[k].Right).Where(i => i.Card >= 0))
                {
                    var stand = item.LeadNode >= 0 ? CardStand.Lead : CardStand.Beside;
                    var kept = new FrozenCard("", stand, item.IsLeft ? ChartTurn.Left : ChartTurn.Right, drawn[item.Card].X, drawn[item.Card].Y)
                    {
                        Rib = rib,
                        RibTurn = rib is null ? ChartTurn.Straight : spine.ParentItem!.IsLeft ? ChartTurn.Left : ChartTurn.Right,
                        StemMm = rib is null ? 0 : spine.LiftMm,
                    };
                    cards.Add((item.Card, kept, host));
                }
            }

            cards.AddRange(spine.EndCards.Select(card => (card, new FrozenCard("", CardStand.End, ChartTurn.Straight, drawn[card].X, drawn[card].Y), -1)));
        }

        return cards;
    }
}
