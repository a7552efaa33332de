using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

public class ChartLayoutTests
{
    [Fact]
    public void One_wire_on_one_segment_is_a_straight_way_without_crossings()
    {
        var plan = Start([new(-1, 0, 0), new(0, -300, 0) { CaptionMm = 6 }], [1]).Pack();
        Assert.Equal(0, plan.Crossings.Count);
        Assert.Single(plan.Cards);
        AssertApart(plan);
    }

    [Fact]
    public void A_star_of_forty_branches_is_packed_apart_and_without_crossings()
    {
        var nodes = new List<ChartNode> { new(-1, 0, 0), new(0, -100, 0) };
        for (var i = 0; i < 40; i++)
        {
            var angle = Math.PI * ((i * 2 / 40.0) + 0.02);
            nodes.Add(new(1, -100 + (300 * Math.Cos(angle)), 300 * Math.Sin(angle)) { CaptionMm = 6 });
        }

        AssertApart(Start([.. nodes], [.. Enumerable.Range(2, 40)]).Pack());
    }

    [Fact]
    public void A_chain_of_sixty_breakouts_keeps_their_order()
    {
        var nodes = new List<ChartNode> { new(-1, 0, 0) };
        for (var i = 1; i <= 60; i++)
        {
            nodes.Add(new(i - 1, -100 * i, 0) { CaptionMm = 6 });
        }

        var plan = Start([.. nodes], [.. Enumerable.Range(1, 60)]).Pack();
        AssertApart(plan);
        var along = plan.Nodes.Where(n => n is not null).Select(n => n!.Value.X).ToList();
        Assert.Equal(along.OrderByDescending(x => x), along);
    }

    [Fact]
    public void Thirty_loads_at_one_place_are_packed_apart() => AssertApart(Start([new(-1, 0, 0), new(0, -200, 0)], [.. Enumerable.Repeat(1, 30)]).Pack());

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(0.95)]
    public void A_raised_pin_table_has_the_room_below_it_that_was_asked_for(double share)
    {
        var nodes = new List<ChartNode> { new(-1, 0, 0) };
        for (var i = 1; i <= 12; i++)
        {
            nodes.Add(new(i - 1, -100 * i, i % 3 == 0 ? 200 : i % 3 == 1 ? -200 : 0));
        }

        var layout = Start([.. nodes], [.. Enumerable.Range(1, 12)]);
        var stance = new ChartStance(share, 184, 66);
        layout.Lift(500, 0, stance);
        var plan = layout.Pack(stance);
        AssertApart(plan);
        var corner = new Box(plan.Bounds.Right - 184, plan.Occupied[0].Bottom, 184, 66).Grow(-0.1);
        Assert.DoesNotContain(plan.Occupied, b => b.Overlaps(corner));
    }

    [Fact]
    public void Stems_grow_to_bring_loads_into_their_true_order_as_long_as_the_room_suits()
    {
        // a place far to the right of the vehicle whose single load stands nearer to the trunk than the many of a place that is not so far
        var nodes = ImmutableArray.Create(new ChartNode(-1, 0, 0), new ChartNode(0, -600, 0), new ChartNode(1, -600, -300), new ChartNode(1, -1200, 0), new ChartNode(3, -1200, -900));
        var layout = Start(nodes, [2, 2, 2, 2, 4, 3]);
        var before = layout.Room(ChartStance.Plain);
        var order = layout.Order;
        layout.Settle(_ => false);
        Assert.Equal(order, layout.Order, 9);
        Assert.Equal(before.Bounds, layout.Room(ChartStance.Plain).Bounds);
        layout.Settle(_ => true);
        Assert.True(layout.Order > order + 0.01);
        Assert.Equal(2, layout.Order, 9);
        var settled = layout.Read();
        AssertApart(settled);
        // what was packed step by step is what is packed at once
        Assert.Equal(settled.Bounds, layout.Room(ChartStance.Plain).Bounds);
    }

    [Fact]
    public void Cards_of_one_rib_stand_on_the_side_where_they_truly_sit()
    {
        // two places on a rib across the vehicle, the far one nearer to the nose; and the other way round
        foreach (var nearer in (double[])[-40, 40])
        {
            var plan = Start([new(-1, 0, 0), new(0, -300, 0), new(1, -300, -200), new(2, -300 + nearer, -400)], [2, 2, 3, 3]).Pack();
            var (first, second) = (plan.Cards.Where(c => c.Card < 2).Average(c => c.Box.X), plan.Cards.Where(c => c.Card > 1).Average(c => c.Box.X));
            Assert.Equal(nearer > 0, second > first);
        }
    }

    [Theory]
    [InlineData(-20)]
    [InlineData(20)]
    public void Of_two_places_on_the_trunk_the_one_further_to_the_left_is_drawn_lower(double across)
    {
        var plan = Start([new(-1, 0, 0), new(0, -300, 0), new(1, -600, across)], [1, 1, 1, 2]).Pack();
        var near = plan.Cards.Where(c => c.Card < 3).Average(c => c.Box.Y);
        Assert.Equal(across > 0, plan.Cards.Single(c => c.Card == 3).Box.Y > near);
    }

    [Fact]
    public void What_lies_further_off_the_trunk_is_drawn_further_off()
    {
        // the trunk is drawn straight; the third and the fourth place lie 50 and 150 mm beside it
        var nodes = ImmutableArray.Create<ChartNode>(new(-1, 0, 0), new(0, -300, -100), new(1, -600, -50), new(2, -900, 50), new(3, -1200, 150), new(4, -1500, 0));
        var plan = Start(nodes, [1, 2, 3, 4, 5]).Pack(new ChartStance(0.5, StretchY: 1));
        AssertApart(plan);
        Assert.InRange(plan.Cards.Single(c => c.Card == 3).Box.Y - plan.Cards.Single(c => c.Card == 2).Box.Y, 80, 120);
    }

    [Fact]
    public void The_line_of_a_length_ends_before_a_card_that_hangs_over_its_bundle()
    {
        // the cards of a short rib reach over the trunk, whose next stretch is long
        var nodes = ImmutableArray.Create(new ChartNode(-1, 0, 0), new ChartNode(0, -231, -133) { CaptionMm = 10 }, new ChartNode(1, -335, 145), new ChartNode(0, -24, -84) { CaptionMm = 7 }, new ChartNode(3, -151, 4));
        var plan = Start(nodes, [2, 4, 4]).Pack(new ChartStance(0.5, StretchX: 1, StretchY: 1));
        AssertApart(plan);
        // as long as there is room all the same
        var line = plan.Lengths.Single(l => l.Index == 1).Box;
        Assert.InRange(plan.Cards.Where(c => c.Box.Right < line.X && c.Box.Bottom > line.Y).Select(c => line.X - c.Box.Right).Min(), 0, 10);
    }

    [Fact]
    public void Lanes_run_from_where_they_come_to_where_they_go()
    {
        var cards = ImmutableArray.Create(new ChartCard(1, 60, 9.2, 0), new ChartCard(2, 60, 9.2, 0));
        var lanes = ImmutableArray.Create(new ChartLane(new(ChartEndKind.Card, 0), new(ChartEndKind.Card, 1), 0), new ChartLane(new(ChartEndKind.Card, 1), new(ChartEndKind.Card, 0), 1));
        var plan = ChartLayout.Start(new([new(-1, 0, 0), new(0, -300, 0), new(1, -600, 0)], cards, [], lanes, null), new()).Pack();
        for (var lane = 0; lane < 2; lane++)
        {
            var from = plan.Cards.Single(c => c.Card == lane).Box.Grow(0.1);
            Assert.True(from.Overlaps(new(plan.Lanes[lane][0].At.X, plan.Lanes[lane][0].At.Y, 0.01, 0.01)));
        }
    }

    // panels are put where nothing is occupied: a lane outside would run through their words
    [Fact]
    public void Lanes_to_cards_at_the_end_that_a_rib_pushes_away_lie_in_what_is_called_occupied()
    {
        var plan = Start([new(-1, 0, 0), new(0, -100, 0), new(1, -200, 0)], [.. Enumerable.Repeat(1, 12), .. Enumerable.Repeat(2, 8)]).Pack();
        AssertApart(plan);
        foreach (var lane in plan.Lanes)
        {
            for (var i = 1; i < lane.Length; i++)
            {
                Assert.All(Along(lane[i - 1].At, lane[i].At), p => Assert.Contains(plan.Occupied, b => b.Grow(0.6).Overlaps(new(p.X, p.Y, 0.01, 0.01))));
            }
        }
    }

    private static IEnumerable<Point> Along(Point a, Point b)
    {
        var steps = (int)Math.Ceiling(Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y));
        return Enumerable.Range(0, steps + 1).Select(k => new Point(a.X + ((b.X - a.X) * k / steps), a.Y + ((b.Y - a.Y) * k / steps)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(5)]
    public void A_tree_of_a_shape_that_is_known_has_the_lanes_that_it_has_alone(int seed)
    {
        var problem = RandomChart.Of(RandomHarness.OfLongRun(seed, 60));
        Assert.NotEmpty(problem.Splices);
        var known = new LaneOrders();
        ChartLayout.Start(problem, new(), known);
        // wider and higher cards in the same columns, then other columns
        foreach (var metrics in (ChartMetrics[])[new() { FootMm = 1.5, CardGapMm = 7 }, new() { ColumnMm = 60, OneSideMm = 30 }, new()])
        {
            var (alone, shared) = (ChartLayout.Start(problem, metrics), ChartLayout.Start(problem, metrics, known));
            Assert.Equal(alone.Crossings.Count, shared.Crossings.Count);
            Assert.Equal(alone.Crossings.LowerBound, shared.Crossings.LowerBound);
            Assert.Equal(alone.Pack().Lanes.SelectMany(l => l), shared.Pack().Lanes.SelectMany(l => l));
        }
    }

    [Fact]
    public void The_channel_turns_each_lane_behind_those_it_waits_for_however_many_there_are()
    {
        var random = new Random(5);
        const int n = 1500;
        var rows = Enumerable.Range(0, n).Select(i => (i * 4.8) + 0.8).ToArray();
        var slots = Enumerable.Range(0, n).Select(i => (Math.Round(n * 1.5) * 1.6) + (i * 1.6)).ToArray();
        random.Shuffle(slots);
        var (tracks, count, close) = PinChannel.Route(rows, slots, 1.6);
        Assert.Equal(count, tracks.Max() + 1);
        var near = 0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                // one direction, the order kept, j ahead, and their ways up or down share a height
                var goes = i != j && slots[i] > rows[i] == slots[j] > rows[j] && rows[j] > rows[i] == slots[i] > rows[i] && slots[j] > slots[i] == slots[i] > rows[i]
                    && Math.Min(rows[i], slots[i]) < Math.Max(rows[j], slots[j]) && Math.Min(rows[j], slots[j]) < Math.Max(rows[i], slots[i]);
                Assert.True(!goes || tracks[j] < tracks[i]);
                near += i != j && Math.Abs(rows[j] - slots[i]) < 0.9 * 1.6 && tracks[j] >= tracks[i] ? 1 : 0;
            }
        }

        Assert.Equal(near, close);
    }

    [Theory]
    [InlineData(7)]
    [InlineData(23)]
    public void The_channel_crosses_a_pair_once_if_it_is_inverted_and_never_else(int seed)
    {
        var random = new Random(seed);
        for (var again = 0; again < 200; again++)
        {
            var n = 2 + random.Next(12);
            var rows = Enumerable.Range(0, n).Select(i => (i * 4.8) + 0.8).ToArray();
            var slots = Enumerable.Range(0, n).Select(i => (Math.Round(n * 1.5) * 1.6) + (i * 1.6)).ToArray();
            random.Shuffle(slots);
            var (tracks, _, _) = PinChannel.Route(rows, slots, 1.6);
            for (var i = 0; i < n; i++)
            {
                for (var j = 0; j < i; j++)
                {
                    var inverted = rows[j] < rows[i] != slots[j] < slots[i];
                    Assert.Equal(inverted ? 1 : 0, Meetings(tracks[i], rows[i], slots[i], tracks[j], rows[j], slots[j]));
                }
            }
        }
    }

    [Fact]
    public void The_body_warp_goes_through_places_in_order_and_never_turns_back()
    {
        var warp = BodyWarp.Fit([(0, 10), (100, 30), (200, 20), (300, 90)]);
        var drawn = Enumerable.Range(-5, 50).Select(i => warp.Map(i * 10)).ToList();
        Assert.Equal(drawn.Order(), drawn);
        Assert.Equal(10, warp.Map(0), 6);
        Assert.Equal(90, warp.Map(300), 6);
    }

    private static int Meetings(int ti, double ri, double si, int tj, double rj, double sj) => Meets(ti, ri, si, tj, rj, sj) + Meets(tj, rj, sj, ti, ri, si);

    // the upright piece of one with the row and slot pieces of the other
    private static int Meets(int t, double r, double s, int other, double row, double slot)
    {
        var (low, high) = (Math.Min(r, s), Math.Max(r, s));
        return (t < other && row > low && row < high ? 1 : 0) + (t > other && slot > low && slot < high ? 1 : 0);
    }

    private static ChartLayout Start(ImmutableArray<ChartNode> nodes, ImmutableArray<int> places)
    {
        var cards = places.Select(p => new ChartCard(p, 60, 9.2, 0)).ToImmutableArray();
        var lanes = places.Select((_, i) => new ChartLane(new(ChartEndKind.Pin, i), new(ChartEndKind.Card, i), i)).ToImmutableArray();
        var rows = places.Select((_, i) => 20 + (4.8 * i)).ToImmutableArray();
        return ChartLayout.Start(new(nodes, cards, [], lanes, new(rows, 60, rows[^1] + 5) { LabelMm = 40 }), new());
    }

    private static void AssertApart(ChartPlan plan)
    {
        var boxes = plan.Cards.Select(c => c.Box).Concat(plan.Lengths.Select(l => l.Box)).Concat(plan.Flags.Select(f => f.Box)).ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            Assert.DoesNotContain(boxes.Take(i), b => b.Grow(-0.01).Overlaps(boxes[i].Grow(-0.01)));
        }
    }
}
