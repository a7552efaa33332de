using HarnessDraw.Planning.Cavities;

namespace HarnessDraw.Tests.Planning;

/// <summary>
/// Cavities and the order of wires behind them, against a search of all ways with rules of its own: branch and bound over every cavity of every wire, for every place of the spliced wires.
/// </summary>
public class CavitySearchTests
{
    [Theory]
    [InlineData(6, 5, 2, 10, 150)]
    [InlineData(9, 8, 2, 10, 40)]
    [InlineData(12, 10, 1, 10, 12)]
    [InlineData(12, 12, 1, 10, 12)]
    [InlineData(8, 5, 3, 2, 40)]
    [InlineData(12, 7, 2, 2, 40)]
    [InlineData(12, 11, 2, 2, 20)]
    public void Up_to_twelve_cavities_no_way_is_better_than_the_one_found(int cavities, int wires, int splices, int oneShutIn, int cases)
    {
        var random = new Random(cavities + wires);
        for (var again = 0; again < cases; again++)
        {
            var some = Some(random, cavities, wires, random.Next(splices + 1), oneShutIn);
            var found = Found(some);
            Assert.True(found == new Exhaustive(some).Least(found + 1), $"case {again}: {found} found, {new Exhaustive(some).Least(found + 1)} would do");
        }
    }

    /// <summary>
    /// Eighty cavities of three sizes, all taken: wires of one size that stand in the wrong order cross less when they change places, so the least is where each size is in order.
    /// </summary>
    [Fact]
    public void Eighty_cavities_are_dealt_out_within_a_fiftieth_of_the_bound()
    {
        var random = new Random(80);
        for (var again = 0; again < 10; again++)
        {
            var some = Some(random, 80, 80, 0, 0);
            var sizes = Enumerable.Range(0, 80).Select(w => SizeOf(some, w)).ToArray();
            var inOrder = new int[80];
            foreach (var size in sizes.Distinct())
            {
                var free = Enumerable.Range(0, 80).Where(c => some.Cost[Array.IndexOf(sizes, size)][c] == 0).ToArray();
                var own = Enumerable.Range(0, 80).Where(w => sizes[w] == size).OrderBy(w => some.Wires[w].Low).ToArray();
                for (var i = 0; i < own.Length; i++)
                {
                    inOrder[own[i]] = free[i];
                }
            }

            var bound = Crossings(some.Wires, inOrder, [.. some.Wires.Select(w => w.Low)]);
            Assert.InRange(Found(some), bound, bound * 1.02);
        }
    }

    /// <summary>
    /// Eighty cavities of three sizes, some of them free, some wires fixed, one wire spliced: of one size the open wires stand in order, so the least is found by how many of each size stand in the
    /// cavities so far, for every place of the spliced wire.
    /// </summary>
    [Theory]
    [InlineData(80, 0, 0, 4)]
    [InlineData(60, 0, 1, 2)]
    [InlineData(60, 2, 1, 3)]
    [InlineData(72, 5, 1, 2)]
    public void Eighty_cavities_with_free_ones_and_a_splice_are_dealt_out_within_a_fiftieth_of_the_least(int wires, int oneShutIn, int splices, int cases)
    {
        var random = new Random(800 + wires + oneShutIn);
        for (var again = 0; again < cases; again++)
        {
            var some = Some(random, 80, wires, splices, oneShutIn);
            var least = PlacesOf(some.Wires).Min(p => new InOrder(some, p).Least());
            Assert.InRange(Found(some), least, least * 1.02);
        }
    }

    // where cost allows one size alone and all places are given: the least by the number of open wires of each size that have a cavity so far
    private sealed class InOrder
    {
        private readonly Case some;
        private readonly double[] places;
        private readonly List<int>[] bySize;
        private readonly int[] sizeOfCavity;
        private readonly int bars;

        public InOrder(Case some, double[] places)
        {
            (this.some, this.places) = (some, places);
            var sizes = Enumerable.Range(0, places.Length).Select(w => SizeOf(some, w)).Distinct().ToList();
            bySize = [.. sizes.Select(s => Enumerable.Range(0, places.Length).Where(w => some.IsOpen[w] && SizeOf(some, w) == s).OrderBy(w => places[w]).ToList())];
            var shut = Enumerable.Range(0, places.Length).Where(w => !some.IsOpen[w]).Select(w => some.Start[w]).ToHashSet();
            sizeOfCavity = [.. Enumerable.Range(0, some.Cost[0].Length).Select(c => shut.Contains(c) ? -1 : bySize.ToList().FindIndex(b => b.Count > 0 && some.Cost[b[0]][c] == 0))];
            // in their own order wires cross at bars alone
            int[] inOrder = [.. Enumerable.Range(0, places.Length).OrderBy(i => places[i]).Select((i, n) => (i, n)).OrderBy(x => x.i).Select(x => x.n)];
            bars = Crossings(some.Wires, inOrder, places);
        }

        public int Least()
        {
            int[] counts = [.. bySize.Select(b => b.Count)];
            var states = counts.Aggregate(1, (n, c) => n * (c + 1));
            var least = new int[states];
            Array.Fill(least, int.MaxValue);
            least[0] = 0;
            // of an open wire: how many of each size stand before it by place; its crossings with fixed ones by cavity
            var shut = Enumerable.Range(0, places.Length).Where(w => !some.IsOpen[w]).ToArray();
            var fix = 0;
            for (var i = 0; i < shut.Length; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    fix += Cross(some.Start[shut[i]], places[shut[i]], some.Start[shut[j]], places[shut[j]]);
                }
            }

            for (var c = 0; c < sizeOfCavity.Length; c++)
            {
                if (sizeOfCavity[c] is not (>= 0 and var k))
                {
                    continue;
                }

                var times = counts[..k].Aggregate(1, (n, x) => n * (x + 1));
                var with = bySize[k].Select(w => shut.Sum(s => Cross(c, places[w], some.Start[s], places[s]))).ToArray();
                var upTo = bySize[k].Select(w => bySize.Select(b => b.Count(o => places[o] <= places[w])).ToArray()).ToArray();
                for (var state = states - 1; state >= 0; state--)
                {
                    var n = state / times % (counts[k] + 1);
                    if (n == 0 || least[state - times] == int.MaxValue)
                    {
                        continue;
                    }

                    var sum = least[state - times] + with[n - 1];
                    for (var (s, rest) = (0, state - times); s < counts.Length; rest /= counts[s] + 1, s++)
                    {
                        sum += Math.Max(0, (rest % (counts[s] + 1)) - upTo[n - 1][s]);
                    }

                    least[state] = Math.Min(least[state], sum);
                }
            }

            return least[^1] + fix + bars;
        }

        private static int Cross(int cavity, double place, int other, double otherPlace) => place != otherPlace && cavity < other != place < otherPlace ? 1 : 0;
    }

    private sealed record Case(double[][] Cost, CavityWire[] Wires, int[] Start, bool[] IsOpen);

    private static string SizeOf(Case some, int wire) => string.Join(' ', some.Cost[wire].Select(c => c == 0));

    // two or three sizes of cavities; a wire costs nothing in its own size, something in another or may not go there; one of so many is fixed
    private static Case Some(Random random, int cavities, int wires, int splices, int oneShutIn)
    {
        var isStrict = cavities == 80;
        var sizes = Enumerable.Range(0, cavities).Select(_ => random.Next(3)).ToArray();
        var at = Enumerable.Range(0, cavities).ToArray();
        random.Shuffle(at);
        var places = Enumerable.Range(0, wires + (2 * splices)).Select(p => (double)p).ToArray();
        random.Shuffle(places);
        var cost = new double[wires][];
        var list = new CavityWire[wires];
        for (var w = 0; w < wires; w++)
        {
            var size = sizes[at[w]];
            cost[w] = [.. sizes.Select((s, c) => s == size || c == at[w] ? 0 : isStrict || random.Next(2) == 0 ? double.PositiveInfinity : 5000)];
            list[w] = new(places[w], places[w]);
        }

        for (var s = 0; s < splices; s++)
        {
            var (a, b) = (places[wires + (2 * s)], places[wires + (2 * s) + 1]);
            list[s] = new(Math.Min(a, b), Math.Max(a, b));
        }

        return new(cost, list, at[..wires], [.. Enumerable.Range(0, wires).Select(_ => oneShutIn == 0 || random.Next(oneShutIn) > 0)]);
    }

    // cost, and crossings where the spliced wires run best
    private static int Found(Case some)
    {
        var cavities = CavitySearch.Best(some.Cost, some.Wires, some.Start, some.IsOpen);
        Assert.Equal(cavities.Length, cavities.Distinct().Count());
        Assert.True(some.IsOpen.Select((open, i) => open || cavities[i] == some.Start[i]).All(x => x));
        return (1000 * (int)cavities.Select((c, i) => some.Cost[i][c]).Sum()) + PlacesOf(some.Wires).Min(p => Crossings(some.Wires, cavities, p));
    }

    private static int Crossings(CavityWire[] wires, int[] cavities, double[] places)
    {
        var count = 0;
        for (var i = 0; i < wires.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                count += places[i] != places[j] && cavities[i] < cavities[j] != places[i] < places[j] ? 1 : 0;
            }

            count += wires[i].Low < wires[i].High ? wires.Count(o => o.Low == o.High && o.Low > Math.Min(places[i], wires[i].Low) && o.Low < Math.Max(places[i], wires[i].High)) : 0;
        }

        return count;
    }

    // every gap for every spliced wire; two in one gap stand as their cavities do
    private static IEnumerable<double[]> PlacesOf(CavityWire[] wires)
    {
        IEnumerable<double[]> all = [[.. wires.Select(w => w.Low)]];
        for (var i = 0; i < wires.Length; i++)
        {
            var wire = i;
            if (wires[i].Low < wires[i].High)
            {
                all = all.SelectMany(p => Enumerable.Range(0, wires.Length + 5).Select(g => p.Select((x, n) => n == wire ? g - 0.5 : x).ToArray()));
            }
        }

        return all;
    }

    private sealed class Exhaustive(Case some)
    {
        private readonly int[] cavities = new int[some.Wires.Length];
        private double[] places = [];
        private int least;

        public int Least(int below)
        {
            least = below;
            foreach (var p in PlacesOf(some.Wires))
            {
                places = p;
                var bars = Crossings(some.Wires, [.. Enumerable.Range(0, p.Length).OrderBy(i => p[i]).Select((i, n) => (i, n)).OrderBy(x => x.i).Select(x => x.n)], p);
                Try(0, bars);
            }

            return least;
        }

        private void Try(int wire, int sum)
        {
            if (sum >= least)
            {
                return;
            }

            if (wire == cavities.Length)
            {
                least = sum;
                return;
            }

            for (var c = 0; c < some.Cost[wire].Length; c++)
            {
                if (double.IsPositiveInfinity(some.Cost[wire][c]) || (!some.IsOpen[wire] && c != some.Start[wire]))
                {
                    continue;
                }

                var (now, isFree) = (sum + (1000 * (int)some.Cost[wire][c]), true);
                for (var j = 0; j < wire && isFree; j++)
                {
                    isFree = cavities[j] != c;
                    now += places[j] != places[wire] && cavities[j] < c != places[j] < places[wire] ? 1 : 0;
                }

                if (isFree)
                {
                    cavities[wire] = c;
                    Try(wire + 1, now);
                }
            }
        }
    }
}
