using HarnessDraw.Fabrication.Cutting;

namespace HarnessDraw.Tests.Fabrication;

public class BarPackerTests(ITestOutputHelper output)
{
    [Fact]
    public void Small_tasks_take_as_few_bars_as_looking_at_every_way()
    {
        var next = 12345u;
        for (var round = 0; round < 300; round++)
        {
            int Below(int n) => (int)((next = (next * 1664525) + 1013904223) >> 8) % n;
            var lengths = Enumerable.Range(0, 3 + Below(6)).Select(_ => (long)(1 + Below(40))).ToArray();
            var packing = BarPacker.Pack(PackingTask.Of(40 + Below(20), lengths));
            AssertWhole(packing, lengths);
            Assert.Equal(Exhaustive(lengths, packing.Task.Capacity), packing.Bars);
            Assert.True(packing.IsProvenLeast);
        }
    }

    [Fact]
    public void The_bound_never_exceeds_the_bars_and_the_same_task_gives_the_same_bars()
    {
        var next = 99u;
        for (var round = 0; round < 20; round++)
        {
            int Below(int n) => (int)((next = (next * 1664525) + 1013904223) >> 8) % n;
            var lengths = Enumerable.Range(0, 80).Select(_ => (long)(50 + Below(350))).ToArray();
            var task = PackingTask.Of(1000, lengths);
            var (first, again) = (BarPacker.Pack(task, PackingEffort.Quick), BarPacker.Pack(task, PackingEffort.Quick));
            AssertWhole(first, lengths);
            Assert.True(first.LowerBound <= first.Bars);
            Assert.Equal(first.Patterns.Select(p => string.Join(',', p.Counts) + "x" + p.Times), again.Patterns.Select(p => string.Join(',', p.Counts) + "x" + p.Times));
        }
    }

    [Fact]
    public void A_batch_of_2000_pieces_is_cut_whole()
    {
        var next = 7u;
        int Below(int n) => (int)((next = (next * 1664525) + 1013904223) >> 8) % n;
        var lengths = Enumerable.Range(0, 2000).Select(_ => 3000L + (100 * Below(300))).ToArray();
        var task = PackingTask.Of(299_700, lengths);
        var packing = BarPacker.Pack(task, PackingEffort.Quick);
        output.WriteLine($"{packing.Bars} bars, at least {packing.LowerBound}");
        AssertWhole(packing, lengths);
    }

    [Fact]
    public void A_piece_longer_than_a_bar_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => BarPacker.Pack(PackingTask.Of(10, [11])));

    internal static void AssertWhole(Packing packing, IEnumerable<long> lengths)
    {
        var task = packing.Task;
        Assert.All(packing.Patterns, p => Assert.True(p.Counts.Select((n, c) => n * task.Pieces[c].Length).Sum() <= task.Capacity));
        var cut = packing.Patterns.SelectMany(p => Enumerable.Range(0, p.Times).SelectMany(_ => p.Counts.SelectMany((n, c) => Enumerable.Repeat(task.Pieces[c].Length, n))));
        Assert.Equal(lengths.Order(), cut.Order());
    }

    // every piece on every open bar or on a new one
    private static int Exhaustive(long[] lengths, long capacity)
    {
        var best = lengths.Length;
        var rooms = new List<long>();
        void Place(int at)
        {
            if (rooms.Count >= best)
            {
                return;
            }

            if (at == lengths.Length)
            {
                best = rooms.Count;
                return;
            }

            for (var b = 0; b < rooms.Count; b++)
            {
                if (rooms[b] >= lengths[at])
                {
                    rooms[b] -= lengths[at];
                    Place(at + 1);
                    rooms[b] += lengths[at];
                }
            }

            rooms.Add(capacity - lengths[at]);
            Place(at + 1);
            rooms.RemoveAt(rooms.Count - 1);
        }

        Place(0);
        return best;
    }
}
