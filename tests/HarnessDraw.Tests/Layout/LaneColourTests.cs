using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

/// <summary>Of two lane orders with equal crossings the one whose neighbours look least alike; never one with more crossings.</summary>
public class LaneColourTests
{
    private const int Alike = 20;

    /// <summary>Distances by hand: red beside green is plain to most, and near for a deutan eye when both are dark; a tracer tells two reds apart.</summary>
    [Theory]
    [InlineData("RD", "RD", 0, 0)]
    [InlineData("RD/WH", "RD/BU", 20, 200)]
    [InlineData("GN", "BN", 10, 20)]
    [InlineData("TQ", "GY", 10, 20)]
    [InlineData("GN/WH", "BN/BK", 40, 200)]
    [InlineData("BU", "YE", 60, 300)]
    public void Two_wires_are_as_far_apart_as_what_differs_most(string a, string b, double least, double most)
    {
        Assert.InRange(ColourVision.LeastDistance(WireColour.Parse(a), WireColour.Parse(b)), least, most);
        Assert.Equal(ColourVision.LeastDistance(WireColour.Parse(a), WireColour.Parse(b)), ColourVision.LeastDistance(WireColour.Parse(b), WireColour.Parse(a)));
    }

    [Theory]
    [InlineData(2, 3)]
    [InlineData(2, 4)]
    [InlineData(3, 2)]
    public void Lanes_between_the_same_two_loads_alternate(int colours, int ofEach)
    {
        var lanes = Enumerable.Range(0, colours * ofEach).Select(i => new ChartLane(new(ChartEndKind.Card, 0), new(ChartEndKind.Card, 1), i) { Colour = i / ofEach }).ToImmutableArray();
        ImmutableArray<ChartNode> nodes = [new(-1, 0, 0), new(0, -300, 0), new(1, -900, 0), new(2, -1200, 0)];
        ImmutableArray<ChartCard> cards = [new(1, 60, 7, 0), new(3, 60, 7, 0)];
        var problem = new ChartProblem(nodes, cards, [], lanes, null);
        var (plain, varied) = (ChartLayout.Start(problem, new()), ChartLayout.Start(problem with { Likeness = SameColour(colours) }, new()));
        Assert.Equal(plain.Crossings.Count, varied.Crossings.Count);
        var order = Order(varied.Pack(), lanes.Length, LevelX(varied.Pack()));
        Assert.Equal(lanes.Length, order.Count);
        Assert.DoesNotContain(order.Zip(order.Skip(1)), p => lanes[p.First].Colour == lanes[p.Second].Colour);
    }

    [Fact]
    public void Among_lanes_that_arrive_at_splices_colours_decide_where_crossings_do_not()
    {
        var random = new Random(7);
        var (before, after) = (0, 0);
        for (var again = 0; again < 200; again++)
        {
            var problem = Some(random);
            var (plain, varied) = (ChartLayout.Start(problem, new()), ChartLayout.Start(problem with { Likeness = SameColour(3) }, new()));
            Assert.Equal(plain.Crossings.Count, varied.Crossings.Count);
            before += Likeness(problem, plain.Pack());
            after += Likeness(problem, varied.Pack());
        }

        Assert.True(after < before, $"{after} alike, {before} without colours");
    }

    private static ImmutableArray<ImmutableArray<int>> SameColour(int colours) =>
        [.. Enumerable.Range(0, colours).Select(a => Enumerable.Range(0, colours).Select(b => a == b ? Alike : 0).ToImmutableArray())];

    // four single lanes and two splices of two legs each, in any order, in three colours
    private static ChartProblem Some(Random random)
    {
        const int Singles = 4;
        const int Splices = 2;
        var cards = Enumerable.Range(0, Singles + (2 * Splices)).ToArray();
        var pins = Enumerable.Range(0, Singles + Splices).ToArray();
        random.Shuffle(cards);
        random.Shuffle(pins);
        var lanes = ImmutableArray.CreateBuilder<ChartLane>();
        for (var i = 0; i < Singles; i++)
        {
            lanes.Add(new(new(ChartEndKind.Pin, pins[i]), new(ChartEndKind.Card, cards[i]), i) { Colour = random.Next(3) });
        }

        for (var s = 0; s < Splices; s++)
        {
            var colour = random.Next(3);
            lanes.Add(new(new(ChartEndKind.Pin, pins[Singles + s]), new(ChartEndKind.Splice, s), 100 + s) { Colour = colour });
            lanes.Add(new(new(ChartEndKind.Splice, s), new(ChartEndKind.Card, cards[Singles + (2 * s)]), 100 + s) { Colour = colour });
            lanes.Add(new(new(ChartEndKind.Splice, s), new(ChartEndKind.Card, cards[Singles + (2 * s) + 1]), 100 + s) { Colour = colour });
        }

        var rows = Enumerable.Range(0, pins.Length).Select(i => 20 + (4.8 * i)).ToImmutableArray();
        return new([new(-1, 0, 0), new(0, -300, 0)], [.. cards.Select(_ => new ChartCard(1, 60, 7, 0))], [new(1, 0.2, 8), new(1, 0.4, 8)], lanes.ToImmutable(), new(rows, 60, rows[^1] + 5) { LabelMm = 40 });
    }

    // neighbours of one colour just before the first splice
    private static int Likeness(ChartProblem problem, ChartPlan plan)
    {
        var order = Order(plan, problem.Lanes.Length, plan.Splices.Max(s => s.Dots[0].X) + 0.5);
        Assert.Equal(6, order.Count);
        return order.Zip(order.Skip(1)).Count(p => problem.Lanes[p.First].Colour == problem.Lanes[p.Second].Colour);
    }

    private static double LevelX(ChartPlan plan)
    {
        var leg = plan.Lanes[0].Zip(plan.Lanes[0].Skip(1)).Where(l => l.First.At.Y == l.Second.At.Y).MaxBy(l => Math.Abs(l.First.At.X - l.Second.At.X));
        return (leg.First.At.X + leg.Second.At.X) / 2;
    }

    // the lanes that pass a place, from the top
    private static List<int> Order(ChartPlan plan, int lanes, double x) =>
        [.. Enumerable.Range(0, lanes).SelectMany(l => plan.Lanes[l].Zip(plan.Lanes[l].Skip(1)).Where(p => p.First.At.Y == p.Second.At.Y && Math.Min(p.First.At.X, p.Second.At.X) < x && Math.Max(p.First.At.X, p.Second.At.X) > x).Select(p => (Lane: l, p.First.At.Y))).OrderBy(p => p.Y).Select(p => p.Lane)];
}
