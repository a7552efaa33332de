namespace HarnessDraw;

/// <summary>
/// Pieces of work that do not touch one another, done by whoever asks for them and by threads that are free. A caller waits for pieces that are being done and for nothing else:
/// <see cref="Parallel"/> has it wait for every helper that it called, also for one that is busy with something longer and has not come. Never more threads help than there are
/// processors beside the caller's, and they go where work was asked for last: what was begun for later does not hold up what is waited for now.
/// </summary>
public static class SideBySide
{
    /// <summary>Works of which pieces are still to be given out, the newest last; also what is locked while threads come and go.</summary>
    internal static readonly List<SharedWork> Open = [];

    private const int LingerMs = 2;
    private const int LooksBeforeYielding = 100;
    private static SharedWork? newest;
    private static int helpers;

    /// <summary>Does pieces 0 to <paramref name="count"/> less one, each once and in any order. What one throws ends the work and is thrown here.</summary>
    public static void For(int count, Action<int> piece) => For(count, () => piece);

    /// <summary>The same for pieces that need tools.</summary>
    /// <param name="count">How many pieces there are.</param>
    /// <param name="worker">Asked once by each thread that takes part: makes its tools and hands back what does a piece with them.</param>
    /// <param name="atMost">How many threads may take part; 0: as many as there are processors.</param>
    public static void For(int count, Func<Action<int>> worker, int atMost = 0) => Begin(count, worker, atMost, isAwaited: true).Finish();

    /// <summary>Hands the pieces out and goes on; <see cref="SharedWork.Finish"/> takes part and waits for what is not done then.</summary>
    public static SharedWork Begin(int count, Func<Action<int>> worker, int atMost = 0) => Begin(count, worker, atMost, isAwaited: false);

    private static SharedWork Begin(int count, Func<Action<int>> worker, int atMost, bool isAwaited)
    {
        ArgumentNullException.ThrowIfNull(worker);
        var work = new SharedWork(count, worker, atMost > 0 ? atMost : Environment.ProcessorCount);
        // who waits takes a piece by himself
        var shared = isAwaited ? count - 1 : count;
        if (shared <= 0 || Environment.ProcessorCount == 1)
        {
            return work;
        }

        int called;
        lock (Open)
        {
            Open.Add(work);
            newest = work;
            called = Math.Min(Environment.ProcessorCount - 1 - helpers, shared);
            helpers += called;
        }

        for (; called > 0; called--)
        {
            _ = ThreadPool.UnsafeQueueUserWorkItem(static _ => Help(), null);
        }

        return work;
    }

    /// <summary>True where something was asked for after the given work.</summary>
    internal static bool IsOutdated(SharedWork work) => Volatile.Read(ref newest) is { } now && now != work;

    /// <summary>Nothing is left to give out; asked with <see cref="Open"/> locked.</summary>
    internal static void Close(SharedWork work)
    {
        _ = Open.Remove(work);
        newest = Open is [.., var last] ? last : null;
    }

    private static void Help()
    {
        for (; Next(isLeaving: false) is { } work || (work = Awaited()) is not null;)
        {
            work.TakePart(isHelping: true);
        }
    }

    // the next work is mostly asked for within a millisecond or two; a thread that went to sleep takes as long to come back
    private static SharedWork? Awaited()
    {
        var until = Environment.TickCount64 + LingerMs;
        while (Environment.TickCount64 <= until)
        {
            for (var look = 0; look < LooksBeforeYielding; look++)
            {
                if (Volatile.Read(ref newest) is not null && Next(isLeaving: false) is { } work)
                {
                    return work;
                }

                Thread.SpinWait(1);
            }

            _ = Thread.Yield();
        }

        return Next(isLeaving: true);
    }

    private static SharedWork? Next(bool isLeaving)
    {
        lock (Open)
        {
            var work = Open.FindLast(w => w.Enter(isHelping: true));
            helpers -= work is null && isLeaving ? 1 : 0;
            return work;
        }
    }
}
