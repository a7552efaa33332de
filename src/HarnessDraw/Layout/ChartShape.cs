using HarnessDraw.Model;

namespace HarnessDraw.Layout;

/// <summary>
/// Turns the tree into spines and ribs: at every node one child may go straight on, those before it in rotation turn left, those after it
/// turn right, so the order around the node is kept whatever is chosen. Loads stand as cards beside vertical spines; on a horizontal spine they ride on
/// ribs of their own, or are stacked at its end.
/// </summary>
internal sealed partial class ChartShape
{
    /// <summary>Places that are nearer to one another than this lie side by side for the eye, mm on the vehicle (common practice, no source).</summary>
    private const double NearMm = 1;
    private readonly ChartProblem problem;
    private readonly ChartMetrics metrics;
    private readonly List<int>[] children;
    private readonly List<int>[] cards;
    private readonly List<int>[] splices;
    private readonly double[] weight;
    private readonly double[] ownWeight;
    private readonly double[] centreX;
    private readonly double[] centreY;
    private readonly int[] cardCount;
    private readonly double[] cardHeight;
    private readonly HashSet<(int, int)> linked = [];
    private readonly double middleY;

    private ChartShape(ChartProblem problem, ChartMetrics metrics)
    {
        this.problem = problem;
        this.metrics = metrics;
        var n = problem.Nodes.Length;
        turns = new (List<(double Angle, int Node)>, int, int)?[n];
        children = Lists(n);
        cards = Lists(n);
        splices = Lists(n);
        weight = new double[n];
        ownWeight = new double[n];
        centreX = new double[n];
        centreY = new double[n];
        cardCount = new int[n];
        var rows = new int[problem.Cards.Length];
        foreach (var lane in problem.Lanes)
        {
            Count(lane.From, rows);
            Count(lane.To, rows);
            if (lane.From.Kind == ChartEndKind.Card && lane.To.Kind == ChartEndKind.Card)
            {
                linked.Add((lane.From.Index, lane.To.Index));
                linked.Add((lane.To.Index, lane.From.Index));
            }
        }

        cardHeight = new double[problem.Cards.Length];
        for (var c = 0; c < problem.Cards.Length; c++)
        {
            var card = problem.Cards[c];
            cards[card.Node].Add(c);
            cardHeight[c] = metrics.HeightMm(card, rows[c]);
            ownWeight[card.Node] += rows[c] + 0.2;
            cardCount[card.Node]++;
        }

        foreach (var own in cards)
        {
            InKeptOrder(own, c => problem.Cards[c].Kept?.Rank);
        }

        for (var s = 0; s < problem.Splices.Length; s++)
        {
            splices[problem.Splices[s].Node].Add(s);
        }

        double top = double.MaxValue, bottom = double.MinValue;
        for (var v = n - 1; v >= 0; v--)
        {
            var node = problem.Nodes[v];
            (top, bottom) = (Math.Min(top, node.Y), Math.Max(bottom, node.Y));
            splices[v].Sort((a, b) => problem.Splices[a].Along != problem.Splices[b].Along ? problem.Splices[a].Along.CompareTo(problem.Splices[b].Along) : a.CompareTo(b));
            centreX[v] += node.X * (0.01 + cards[v].Count);
            centreY[v] += node.Y * (0.01 + cards[v].Count);
            weight[v] += ownWeight[v];
            if (node.Parent >= 0)
            {
                children[node.Parent].Insert(0, v);
                weight[node.Parent] += weight[v];
                cardCount[node.Parent] += cardCount[v];
                centreX[node.Parent] += centreX[v];
                centreY[node.Parent] += centreY[v];
            }
        }

        var total = new double[n];
        for (var v = n - 1; v >= 0; v--)
        {
            total[v] += 0.01 + cards[v].Count;
            if (problem.Nodes[v].Parent >= 0)
            {
                total[problem.Nodes[v].Parent] += total[v];
            }

            centreX[v] /= total[v];
            centreY[v] /= total[v];
        }

        middleY = (top + bottom) / 2;

        void Count(ChartEnd end, int[] counts)
        {
            if (end.Kind == ChartEndKind.Card)
            {
                counts[end.Index]++;
            }
        }
    }

    public List<Spine> Spines { get; } = [];

    /// <summary>The spines, the root's first; a parent comes before its children.</summary>
    public static List<Spine> Build(ChartProblem problem, ChartMetrics metrics)
    {
        var shape = new ChartShape(problem, metrics);
        var root = new Spine { Index = 0, Parent = null, Dx = -1, Dy = 0, Rx = 0, Ry = 1 };
        shape.Spines.Add(root);
        shape.Extend(root, 0, hasEdge: false);
        foreach (var spine in shape.Spines)
        {
            var places = spine.Stations.ConvertAll(s => spine.Across(problem.Nodes[s.Node]));
            places.Sort();
            spine.LineAcross = MiddleOf(places);
        }

        return shape.Spines;
    }

    private static List<int>[] Lists(int n)
    {
        var lists = new List<int>[n];
        for (var i = 0; i < n; i++)
        {
            lists[i] = [];
        }

        return lists;
    }

    // a loop along the straight chain, recursion only into side branches
    private void Extend(Spine spine, int node, bool hasEdge, List<int>? along = null)
    {
        var middle = Middle(spine, node, along ?? []);
        if (along is not null)
        {
            var place = new Station { Node = problem.Nodes[node].Parent, HasEdge = false };
            spine.Stations.Add(place);
            Column(spine, place, along, middle);
        }

        for (var v = node; v >= 0; hasEdge = true)
        {
            var station = new Station { Node = v, HasEdge = hasEdge };
            if (hasEdge)
            {
                station.Splices.AddRange(splices[v]);
            }

            spine.Stations.Add(station);
            var (around, split, straight) = TurnsAt(spine, v);
            var isEnd = straight < 0 && (KeptAt(v) is { } kept ? kept.Was.Stand == CardStand.End : around.Count == 0 || metrics.StacksAtEnds);
            var own = PlaceOwnCards(spine, station, v, isEnd, middle) ? [] : cards[v];
            var host = own.Count > 0 ? Host(around, straight, KeptAt(v)) : -1;
            if (own.Count > 0 && host < 0)
            {
                Ribs(spine, station, own, middle);
            }

            for (var i = 0; i < split; i++)
            {
                Hang(spine, station, around[i].Node, isLeft: true, i == host ? own : []);
            }

            // in leaving order: rotation runs outside in on the left and inside out on the right
            for (var i = around.Count - 1; i >= split && i != straight; i--)
            {
                Hang(spine, station, around[i].Node, isLeft: false, i == host ? own : []);
            }

            v = straight >= 0 ? around[straight].Node : -1;
        }
    }

    // the side branch that takes the place's own cards along, so that they need no rib of their own; -1: none
    private int Host(List<(double Angle, int Node)> around, int straight, KeptCard? kept)
    {
        var host = kept is null ? -1 : around.FindIndex(a => a.Node == kept.Host);
        if (kept is { Was.Rib: not null } || (host >= 0 && host != straight))
        {
            return host;
        }

        host = -1;
        for (var i = 0; i < around.Count; i++)
        {
            if (i != straight && (host < 0 || weight[around[i].Node] > weight[around[host].Node]))
            {
                host = i;
            }
        }

        return host;
    }

    private void Hang(Spine spine, Station station, int child, bool isLeft, List<int> own)
    {
        var list = isLeft ? station.Left : station.Right;
        var isLeaf = children[child].Count == 0 && cards[child].Count == 1 && splices[child].Count == 0;
        if (!spine.IsHorizontal && isLeaf && problem.Nodes[child].FlagWidthMm <= 0)
        {
            list.Add(new SpineItem { Card = cards[child][0], IsLeft = isLeft, LeadNode = child });
            return;
        }

        Extend(Branch(spine, list, isLeft), child, hasEdge: true, own.Count > 0 ? own : null);
    }

    private Spine Branch(Spine spine, List<SpineItem> list, bool isLeft)
    {
        var rib = spine.Turn(Spines.Count, isLeft);
        Spines.Add(rib);
        var item = new SpineItem { Child = rib, IsLeft = isLeft };
        rib.ParentItem = item;
        list.Add(item);
        return rib;
    }

    // beside a vertical spine, or stacked at the end of a horizontal one; false: they need a rib
    private bool PlaceOwnCards(Spine spine, Station station, int v, bool isEnd, SpineMiddle middle)
    {
        if (cards[v].Count == 0)
        {
            return true;
        }

        if (!spine.IsHorizontal)
        {
            Column(spine, station, cards[v], middle);
            return true;
        }

        var isLinked = cards[v].Exists(c => cards[v].Exists(d => linked.Contains((c, d))));
        if (isEnd && !isLinked && (KeptAt(v) is not null || HeightOf(cards[v]) <= metrics.ColumnMm))
        {
            spine.EndCards.AddRange(cards[v]);
            return true;
        }

        return false;
    }

    private double HeightOf(List<int> some) => some.Sum(c => cardHeight[c] + metrics.GapMm);

    // the true place across the spine that parts its cards in two halves: those before it stand on the one side, those beyond it on the other
    private SpineMiddle Middle(Spine spine, int node, List<int> along)
    {
        var places = along.ConvertAll(c => Across(spine, problem.Cards[c].Node));
        for (var v = node; v >= 0;)
        {
            foreach (var _ in cards[v])
            {
                places.Add(Across(spine, v));
            }

            var (around, _, straight) = TurnsAt(spine, v);
            v = straight >= 0 ? around[straight].Node : -1;
        }

        places.Sort();
        return new(MiddleOf(places), places.Count == 0 ? 0 : places.Average());
    }

    // how far a place lies beyond the middle one; for the middle one itself, beyond the mean of all
    private double Beyond(Spine spine, int node, SpineMiddle middle)
    {
        var beyond = Across(spine, node) - middle.Median;
        return Math.Abs(beyond) > NearMm ? beyond : Across(spine, node) - middle.Mean;
    }

    private double Across(Spine spine, int node) => spine.Across(problem.Nodes[node]);

    private static double MiddleOf(List<double> sorted) => sorted.Count == 0 ? 0 : (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;

    // cards at a place of a vertical spine: few on the side where the place truly lies, many on both, the lower column taking the next one
    private void Column(Spine spine, Station station, List<int> own, SpineMiddle middle)
    {
        var total = 0.0;
        foreach (var c in own)
        {
            total += cardHeight[c];
        }

        var beyond = Beyond(spine, problem.Cards[own[0]].Node, middle);
        var oneSide = total < metrics.OneSideMm ? total : 0;
        var (left, right) = beyond > NearMm ? (oneSide, 0.0) : (0, oneSide);
        if (own.Exists(c => SideOf(c) is not null))
        {
            // what is new stands on the side with more room
            left = own.Sum(c => SideOf(c) == ChartTurn.Left ? cardHeight[c] : 0);
            right = own.Sum(c => SideOf(c) == ChartTurn.Right ? cardHeight[c] : 0);
            (left, right) = oneSide > 0 && Math.Min(left, right) == 0 ? (right, left) : (left, right);
        }

        foreach (var c in own)
        {
            var isLeft = SideOf(c) is { } side ? side == ChartTurn.Left : left <= right;
            if (SideOf(c) is not null)
            {
                // counted already
            }
            else if (isLeft)
            {
                left += cardHeight[c];
            }
            else
            {
                right += cardHeight[c];
            }

            (isLeft ? station.Left : station.Right).Add(new SpineItem { Card = c, IsLeft = isLeft });
        }
    }

    // of places in the very middle of the vehicle as many stand on the one side of their bundle as on the other
    private static bool IsLeftEmptier(Spine spine) => spine.Stations.Sum(s => s.Left.Count) <= spine.Stations.Sum(s => s.Right.Count);

    private void Ribs(Spine spine, Station station, List<int> own, SpineMiddle middle)
    {
        var height = HeightOf(own);
        var beyond = Beyond(spine, station.Node, middle);
        // a place in the middle of its spine's turns to where the vehicle's nearer side is; left turns up where the spine runs towards the nose
        var off = problem.Nodes[station.Node].Y - middleY;
        var isFirstLeft = Math.Abs(beyond) > NearMm ? beyond < 0 : Math.Abs(off) > NearMm ? off < 0 == spine.Ry > 0 : IsLeftEmptier(spine);
        if (KeptAt(station.Node) is { Was.Rib: not null })
        {
            KeptRibs(spine, station, own);
            return;
        }

        var count = Math.Max(1, (int)Math.Ceiling(height / (2 * metrics.ColumnMm)));
        var share = height / count;
        var at = 0;
        for (var k = 0; k < count; k++)
        {
            var some = new List<int>();
            var filled = 0.0;
            while (at < own.Count && (k == count - 1 || filled < share))
            {
                filled += cardHeight[own[at]] + metrics.GapMm;
                some.Add(own[at++]);
            }

            if (some.Count == 0)
            {
                // the last rib when those before it took all
                break;
            }

            var isLeft = isFirstLeft == (k % 2 == 0);
            Rib(spine, station, some, isLeft);
        }
    }

    private void Rib(Spine spine, Station station, List<int> some, bool isLeft)
    {
        var rib = Branch(spine, isLeft ? station.Left : station.Right, isLeft);
        var place = new Station { Node = station.Node, HasEdge = false };
        rib.Stations.Add(place);
        Column(rib, place, some, new(Across(rib, station.Node), Across(rib, station.Node)));
    }
}

/// <summary>Where the cards of a spine lie across it, mm on the vehicle: the middle one and the mean.</summary>
internal readonly record struct SpineMiddle(double Median, double Mean);
