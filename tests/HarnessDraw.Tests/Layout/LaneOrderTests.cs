using System.Collections.Immutable;
using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// Lane order against an exhaustive search that knows nothing of the engine: pins, a few splices on one bundle, then a stack of cards with one lane each. The search puts the
/// lanes that arrive at the splices into every order there is between the cards and counts: two lanes cross once where pins and cards invert them, and a lane crosses a
/// splice's bar where it runs between the outermost of feed and legs.
/// </summary>
public class LaneOrderTests
{
    private sealed record Case(int[] Pins, int Singles, int[][] Legs);

    [Theory]
    [InlineData(1, 3, 150)]
    [InlineData(2, 3, 150)]
    [InlineData(3, 2, 25)]
    public void No_order_of_lanes_crosses_less_often_than_the_one_found(int splices, int mostSingles, int cases)
    {
        var random = new Random(splices);
        for (var again = 0; again < cases; again++)
        {
            var some = Some(random, splices, random.Next(mostSingles + 1));
            var (found, order) = Found(some);
            var least = Least(some, order);
            Assert.True(found.Count == least, $"case {again}: {found.Count} crossings, {least} would do; pins {string.Join(' ', some.Pins)}, legs {string.Join(" | ", some.Legs.Select(l => string.Join(' ', l)))}");
            Assert.InRange(found.StraightLaneBound!.Value, found.LowerBound!.Value, least);
        }
    }

    // cards are numbered: singles first, then the legs of each splice, shuffled; pins: singles, then feeds, in any order
    private static Case Some(Random random, int splices, int singles)
    {
        var cards = Enumerable.Range(0, singles + (2 * splices)).ToArray();
        random.Shuffle(cards);
        var pins = Enumerable.Range(0, singles + splices).ToArray();
        random.Shuffle(pins);
        return new(pins, singles, [.. Enumerable.Range(0, splices).Select(s => cards[(singles + (2 * s))..(singles + (2 * s) + 2)])]);
    }

    private static int[] SinglesOf(Case some) => [.. Enumerable.Range(0, some.Singles + (2 * some.Legs.Length)).Except(some.Legs.SelectMany(l => l))];

    private static (LaneCrossings Crossings, IReadOnlyList<int> Order) Found(Case some)
    {
        var singles = SinglesOf(some);
        var lanes = ImmutableArray.CreateBuilder<ChartLane>();
        for (var i = 0; i < singles.Length; i++)
        {
            lanes.Add(new(new(ChartEndKind.Pin, some.Pins[i]), new(ChartEndKind.Card, singles[i]), i));
        }

        var splices = ImmutableArray.CreateBuilder<ChartSplice>();
        for (var s = 0; s < some.Legs.Length; s++)
        {
            splices.Add(new(1, (s + 1) * 0.2, 8));
            lanes.Add(new(new(ChartEndKind.Pin, some.Pins[singles.Length + s]), new(ChartEndKind.Splice, s), 100 + s));
            lanes.AddRange(some.Legs[s].Select(card => new ChartLane(new(ChartEndKind.Splice, s), new(ChartEndKind.Card, card), 100 + s)));
        }

        var cards = Enumerable.Range(0, singles.Length + (2 * some.Legs.Length)).Select(_ => new ChartCard(1, 60, 7, 0)).ToImmutableArray();
        var rows = Enumerable.Range(0, some.Pins.Length).Select(i => 20 + (4.8 * i)).ToImmutableArray();
        var layout = ChartLayout.Start(new([new(-1, 0, 0), new(0, -300, 0)], cards, splices.ToImmutable(), lanes.ToImmutable(), new(rows, 60, rows[^1] + 5) { LabelMm = 40 }), new());
        return (layout.Crossings, layout.CardOrder);
    }

    private static int Least(Case some, IReadOnlyList<int> order)
    {
        var at = new double[order.Count];
        for (var i = 0; i < order.Count; i++)
        {
            at[order[i]] = i;
        }

        return Places(some.Legs.Length, order.Count).Min(feeds => Crossings(some, at, feeds));
    }

    // every gap for every feed; feeds in one gap in every order
    private static IEnumerable<double[]> Places(int feeds, int cards)
    {
        if (feeds == 0)
        {
            return [[]];
        }

        return Places(feeds - 1, cards).SelectMany(_ => Enumerable.Range(0, cards + 1), (before, gap) => (before, gap))
            .SelectMany(x => Enumerable.Range(1, feeds * 2), (x, within) => (double[])[.. x.before, x.gap - 1 + (within / (feeds * 2.0 + 1))])
            .Where(f => f.Distinct().Count() == f.Length);
    }

    private static int Crossings(Case some, double[] at, double[] feeds)
    {
        var singles = SinglesOf(some);
        double[] ends = [.. singles.Select(c => at[c]), .. feeds];
        var count = 0;
        for (var i = 0; i < ends.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                count += some.Pins[i] < some.Pins[j] != ends[i] < ends[j] ? 1 : 0;
            }
        }

        for (var s = 0; s < feeds.Length; s++)
        {
            double[] own = [feeds[s], .. some.Legs[s].Select(c => at[c])];
            IEnumerable<double> passing = [.. singles.Select(c => at[c]), .. feeds[(s + 1)..], .. some.Legs[..s].SelectMany(l => l).Select(c => at[c])];
            count += passing.Count(p => p > own.Min() && p < own.Max());
        }

        return count;
    }
}
