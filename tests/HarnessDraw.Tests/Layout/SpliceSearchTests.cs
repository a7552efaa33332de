using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

/// <summary>The search for the place of a splice's lanes against every choice there is.</summary>
public class SpliceSearchTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void No_choice_of_gaps_is_better_than_the_one_found(int lanes)
    {
        var random = new Random(lanes);
        for (var again = 0; again < 300; again++)
        {
            var gaps = 2 + random.Next(7);
            var cost = Table(random, lanes, gaps, 6);
            var tie = Table(random, lanes, gaps, 3);
            var passing = Enumerable.Range(0, gaps - 1).Select(_ => random.Next(3)).ToArray();
            var (a, b) = (random.Next(gaps), random.Next(gaps));
            (int, int)? legs = random.Next(4) == 0 ? null : (Math.Min(a, b), Math.Max(a, b));
            var found = SpliceSearch.Score(cost, tie, passing, legs, SpliceSearch.Best(cost, tie, passing, legs));
            Assert.Equal(Choices(lanes, gaps).Min(c => SpliceSearch.Score(cost, tie, passing, legs, c)), found);
        }
    }

    [Fact]
    public void A_bar_costs_the_lanes_between_its_ends()
    {
        // the leg lies right of three lanes; going there costs nothing, staying left would cost the three
        Assert.Equal([3], SpliceSearch.Best([[0, 0, 0, 0]], [[0, 0, 0, 0]], [1, 1, 1], (3, 3)));
        // unless the way to the leg's side costs more than the bar
        Assert.Equal([0], SpliceSearch.Best([[0, 2, 4, 6]], [[0, 0, 0, 0]], [1, 1, 1], (3, 3)));
    }

    private static int[][] Table(Random random, int lanes, int gaps, int below) =>
        [.. Enumerable.Range(0, lanes).Select(_ => Enumerable.Range(0, gaps).Select(_ => random.Next(below)).ToArray())];

    private static IEnumerable<int[]> Choices(int lanes, int gaps)
    {
        for (var i = 0; i < Math.Pow(gaps, lanes); i++)
        {
            yield return [.. Enumerable.Range(0, lanes).Select(a => i / (int)Math.Pow(gaps, a) % gaps)];
        }
    }
}
