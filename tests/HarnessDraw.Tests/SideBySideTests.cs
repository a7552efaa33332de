using System.Collections.Concurrent;

namespace HarnessDraw.Tests;

/// <summary>Work in pieces: each is done once, whoever does it, and nobody waits for a thread that has not come.</summary>
public class SideBySideTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(1000)]
    public void Each_piece_is_done_once(int count)
    {
        var done = new int[count];
        SideBySide.For(count, i => Interlocked.Increment(ref done[i]));
        Assert.All(done, d => Assert.Equal(1, d));
    }

    [Fact]
    public void Pieces_may_ask_for_work_themselves()
    {
        var done = new int[20 * 30];
        SideBySide.For(20, i => SideBySide.For(30, k => Interlocked.Increment(ref done[(i * 30) + k])));
        Assert.All(done, d => Assert.Equal(1, d));
    }

    [Fact]
    public void Tools_are_made_once_a_thread()
    {
        var made = new ConcurrentBag<int>();
        SideBySide.For(200, () =>
        {
            made.Add(Environment.CurrentManagedThreadId);
            return _ => Thread.SpinWait(100);
        });
        Assert.InRange(made.Count, 1, Environment.ProcessorCount);
        Assert.Equal(made.Count, made.Distinct().Count());
    }

    [Fact]
    public void No_more_threads_take_part_than_are_allowed()
    {
        var (inside, most) = (0, 0);
        SideBySide.For(50, () => _ =>
        {
            var now = Interlocked.Increment(ref inside);
            InterlockedMax(ref most, now);
            Thread.SpinWait(10_000);
            Interlocked.Decrement(ref inside);
        }, atMost: 1);
        Assert.Equal(1, most);
    }

    [Fact]
    public void What_a_piece_throws_is_thrown_by_whoever_waits_for_it()
    {
        var thrown = Assert.Throws<InvalidOperationException>(() => SideBySide.For(100, i => _ = i == 40 ? throw new InvalidOperationException("piece 40") : 0));
        Assert.Equal("piece 40", thrown.Message);

        // and the helpers go on
        Each_piece_is_done_once(100);
    }

    [Fact]
    public async Task Nobody_waits_for_a_helper_that_is_busy_elsewhere()
    {
        // every helper there is holds on to a piece until the work behind it is done
        using var gate = new ManualResetEventSlim();
        var held = SideBySide.Begin(Environment.ProcessorCount * 2, () => _ => gate.Wait(TestContext.Current.CancellationToken));
        var done = new int[100];
        await Task.Run(() => SideBySide.For(done.Length, i => Interlocked.Increment(ref done[i])), TestContext.Current.CancellationToken).WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
        Assert.All(done, d => Assert.Equal(1, d));
        Assert.False(held.IsDone);
        gate.Set();
        held.Finish();
        Assert.True(held.IsDone);
    }

    [Fact]
    public void What_was_begun_for_later_is_done_when_it_is_asked_for()
    {
        var done = new int[50];
        var later = SideBySide.Begin(done.Length, () => i => Interlocked.Increment(ref done[i]));
        SideBySide.For(10, _ => Thread.SpinWait(100));
        later.Finish();
        Assert.True(later.IsDone);
        Assert.All(done, d => Assert.Equal(1, d));
        later.Finish();
        Assert.All(done, d => Assert.Equal(1, d));
    }

    private static void InterlockedMax(ref int most, int now)
    {
        for (var seen = Volatile.Read(ref most); seen < now && Interlocked.CompareExchange(ref most, now, seen) is var found && found != seen;)
        {
            seen = found;
        }
    }
}
