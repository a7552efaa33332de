using System.Collections.Immutable;
using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// The straight-lane bound against an exhaustive search on small trees: a trunk with side branches, one lane to each card, splices anywhere, legs that go on or come back. The search
/// runs the lanes that arrive at a splice through every gap between the cards beyond it, in every order, and counts by rules of its own: two lanes cross once where their
/// ends alternate round the tree, and a bar crosses every lane that passes between its ends.
/// </summary>
public class LaneBoundTests
{
    private static readonly int[] Parents = [-1, 0, 1, 1, 0];
    private static readonly (double X, double Y)[] Places = [(0, 0), (-400, 0), (-800, 0), (-400, -300), (0, 300)];

    // more take the search too long
    private const int MostArriving = 4;

    // a splice: the node its edge leads to; lanes: by net, their cards
    private sealed record Case(int[] NodeOfCard, int[] Pins, int[] Singles, (int Node, int[] Cards)[] Splices);

    [Theory]
    [InlineData(1, 3, 200)]
    [InlineData(2, 2, 60)]
    [InlineData(3, 1, 40)]
    public void The_bound_is_never_above_the_best_order_there_is_and_the_order_found_is_that(int splices, int mostSingles, int cases)
    {
        var random = new Random(100 + splices);
        var (tight, comeBack) = (0, 0);
        for (var again = 0; again < cases; again++)
        {
            var some = Some(random, splices, 1 + random.Next(mostSingles));
            var (found, order) = Found(some);
            var search = new Search(some, order);
            if (search.Arriving > MostArriving)
            {
                again--;
                continue;
            }

            var least = search.Least();
            comeBack += search.ComesBack ? 1 : 0;
            var words = $"case {again}: nodes {string.Join(' ', some.NodeOfCard)}; pins {string.Join(' ', some.Pins)}; singles {string.Join(' ', some.Singles)}; splices {string.Join(", ", some.Splices.Select(s => $"{s.Node}: {string.Join(' ', s.Cards)}"))}; order {string.Join(' ', order)}";
            Assert.True(found.StraightLaneBound <= least, $"bound {found.StraightLaneBound} above {least}, {words}");
            Assert.True(found.LowerBound <= found.StraightLaneBound, words);
            Assert.True(found.Count == least, $"{found.Count} crossings, {least} would do, {words}");
            tight += found.StraightLaneBound == least ? 1 : 0;
        }

        Assert.True(comeBack > cases / 4, "too few legs come back for this to tell anything");
        Assert.True(tight >= cases * 0.95, $"the bound is the least in {tight} of {cases} only");
    }

    private static Case Some(Random random, int splices, int singles)
    {
        var legs = Enumerable.Range(0, splices).Select(_ => 2 + random.Next(splices == 1 ? 2 : 1)).ToArray();
        var count = singles + legs.Sum();
        var nodes = Enumerable.Range(0, count).Select(_ => 1 + random.Next(Parents.Length - 1)).ToArray();
        var cards = Enumerable.Range(0, count).ToArray();
        var pins = Enumerable.Range(0, singles + splices).ToArray();
        random.Shuffle(cards);
        random.Shuffle(pins);
        var at = singles;
        var joined = new List<(int, int[])>();
        foreach (var n in legs)
        {
            // on the edge to one of its own cards, or one above it
            var node = nodes[cards[at + random.Next(n)]];
            joined.Add((random.Next(3) == 0 && Parents[node] > 0 ? Parents[node] : node, cards[at..(at + n)]));
            at += n;
        }

        return new(nodes, pins, cards[..singles], [.. joined]);
    }

    private static double Along(int splice) => 0.2 + (0.2 * splice);

    private static (LaneCrossings Crossings, IReadOnlyList<int> Order) Found(Case some)
    {
        var lanes = ImmutableArray.CreateBuilder<ChartLane>();
        for (var i = 0; i < some.Singles.Length; i++)
        {
            lanes.Add(new(new(ChartEndKind.Pin, some.Pins[i]), new(ChartEndKind.Card, some.Singles[i]), i));
        }

        for (var s = 0; s < some.Splices.Length; s++)
        {
            lanes.Add(new(new(ChartEndKind.Pin, some.Pins[some.Singles.Length + s]), new(ChartEndKind.Splice, s), 100 + s));
            lanes.AddRange(some.Splices[s].Cards.Select(card => new ChartLane(new(ChartEndKind.Splice, s), new(ChartEndKind.Card, card), 100 + s)));
        }

        var rows = Enumerable.Range(0, some.Pins.Length).Select(i => 20 + (4.8 * i)).ToImmutableArray();
        var layout = ChartLayout.Start(
            new([.. Places.Select((p, i) => new ChartNode(Parents[i], p.X, p.Y))], [.. some.NodeOfCard.Select(n => new ChartCard(n, 60, 7, 0))],
                [.. some.Splices.Select((s, i) => new ChartSplice(s.Node, Along(i), 8))], lanes.ToImmutable(), new(rows, 60, rows[^1] + 5) { LabelMm = 40 }),
            new());
        return (layout.Crossings, layout.CardOrder);
    }

    private sealed record Lane(int Net, int Splice, bool Arrives, double Far, int Card);

    private sealed class Search
    {
        private readonly Case some;
        private readonly List<Lane> lanes = [];
        private readonly List<Lane> arriving;
        private readonly Dictionary<Lane, double> place = [];
        private readonly (double Low, double High)[] beyond;

        public Search(Case some, IReadOnlyList<int> order)
        {
            this.some = some;
            var at = new double[order.Count];
            for (var i = 0; i < order.Count; i++)
            {
                at[order[i]] = i;
            }

            beyond = [.. some.Splices.Select(s => Enumerable.Range(0, at.Length).Where(c => IsUnder(s.Node, some.NodeOfCard[c])).Select(c => at[c])).Select(k => (k.Min(), k.Max()))];
            for (var i = 0; i < some.Singles.Length; i++)
            {
                // an unspliced lane: its ends are the pin and the card
                lanes.Add(new(i, -1, true, at[some.Singles[i]], some.Singles[i]));
                place[lanes[^1]] = 1000 - some.Pins[i];
            }

            for (var s = 0; s < some.Splices.Length; s++)
            {
                lanes.Add(new(100 + s, s, true, 1000 - some.Pins[some.Singles.Length + s], -1));
                lanes.AddRange(some.Splices[s].Cards.Select(c => new Lane(100 + s, s, !IsUnder(some.Splices[s].Node, some.NodeOfCard[c]), at[c], c)));
            }

            arriving = lanes.FindAll(l => l.Splice >= 0 && l.Arrives);
            ComesBack = arriving.Exists(l => l.Card >= 0);
        }

        public bool ComesBack { get; }

        public int Arriving => arriving.Count;

        public int Least() => Try(0);

        private int Try(int n)
        {
            if (n == arriving.Count)
            {
                return Crossings();
            }

            var (low, high) = beyond[arriving[n].Splice];
            var least = int.MaxValue;
            for (var card = low - 1; card <= high; card++)
            {
                // behind each card and before the first, in every order with the others there; before what lies beyond a splice and behind it lanes stay apart from its neighbours
                foreach (var part in Parts(card, low, high))
                {
                    for (var within = 0; within < arriving.Count; within++)
                    {
                        place[arriving[n]] = card + part + (0.3 * within / arriving.Count) + (0.001 * n);
                        least = Math.Min(least, Try(n + 1));
                    }
                }
            }

            return least;
        }

        private IEnumerable<double> Parts(double card, double low, double high)
        {
            const double First = 0.1;
            const double Second = 0.6;
            if (card == high || (card >= low && beyond.Any(b => b.High == card)))
            {
                yield return First;
            }

            if (card < low || (card < high && (beyond.Any(b => b.Low - 1 == card) || beyond.All(b => b.High != card))))
            {
                yield return Second;
            }
        }

        private int Crossings()
        {
            var count = 0;
            for (var i = 0; i < lanes.Count; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    count += lanes[i].Net != lanes[j].Net && Sees(lanes[i], lanes[j]) && Sees(lanes[j], lanes[i]) && Alternate(lanes[i], lanes[j]) ? 1 : 0;
                }
            }

            for (var s = 0; s < some.Splices.Length; s++)
            {
                var own = lanes.Where(l => l.Splice == s).Select(l => l.Arrives ? place[l] : l.Far).ToList();
                count += lanes.Count(l => l.Splice != s && IsBeyond(s, l, near: true) != IsBeyond(s, l, near: false) && KeyAt(s, l) > own.Min() && KeyAt(s, l) < own.Max());
            }

            return count;
        }

        private double KeyAt(int splice, Lane lane) => IsBeyond(splice, lane, near: false) ? lane.Far : place[lane];

        // whether the way of one lane from its splice has to do with another: legs lie beyond the splice, all else on this side
        private bool Sees(Lane lane, Lane other) => lane.Splice < 0 || lane.Arrives != (IsBeyond(lane.Splice, other, near: true) && IsBeyond(lane.Splice, other, near: false));

        private bool Alternate(Lane a, Lane b)
        {
            var (from, to) = (Math.Min(Near(a), a.Far), Math.Max(Near(a), a.Far));
            return (Near(b) > from && Near(b) < to) != (b.Far > from && b.Far < to);
        }

        private double Near(Lane lane) => lane.Arrives ? place[lane] : beyond[lane.Splice].Low - 0.5;

        // whether an end of a lane lies beyond a splice; the near end is at the lane's own splice, of unspliced ones at the pin
        private bool IsBeyond(int splice, Lane lane, bool near) => near
            ? lane.Splice >= 0 && (some.Splices[lane.Splice].Node == some.Splices[splice].Node ? lane.Splice > splice : IsUnder(some.Splices[splice].Node, some.Splices[lane.Splice].Node))
            : lane.Card >= 0 && IsUnder(some.Splices[splice].Node, some.NodeOfCard[lane.Card]);

        private static bool IsUnder(int top, int node)
        {
            while (node > top)
            {
                node = Parents[node];
            }

            return node == top;
        }
    }
}
