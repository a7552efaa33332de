namespace HarnessDraw;

/// <summary>
/// Pieces of work that do not touch one another, done by whoever asks for them and by helpers: one thread for each processor beside the caller's. A caller waits for pieces that are being
/// done and for nothing else; Parallel.For has it wait for every helper that it called, also for one that is busy with something longer and has not come. Helpers go where work was
/// asked for last: what was begun for later does not hold up what is waited for now. They are no threads of the pool, of which several take turns at the caller's processor.
/// </summary>
public static class SideBySide
{
    // the next work is mostly asked for within a millisecond or two; a thread that went to sleep takes as long to come back
    private const int LingerMs = 2;
    private const int LooksBeforeYielding = 100;
    private static readonly int MostHelpers = Environment.ProcessorCount - 1;
    private static SharedWork? newest;
    private static int helpers;

    /// <summary>Works of which pieces are still to be given out, the newest last; also what is locked while threads come and go.</summary>
    internal static List<SharedWork> Open { get; } = [];

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
        var work = new SharedWork(count, worker, atMost > 0 ? atMost : MostHelpers + 1);
        // who waits takes a piece by himself
        var shared = isAwaited ? count - 1 : count;
        if (shared <= 0 || MostHelpers == 0)
        {
            return work;
        }

        lock (Open)
        {
            Open.Add(work);
            newest = work;
            for (var here = helpers < Math.Min(shared, MostHelpers) ? OtherProcessor.Here() : -1; helpers < Math.Min(shared, MostHelpers); helpers++)
            {
                new Thread(() => Help(here)) { IsBackground = true, Name = "helper" }.Start();
            }

            Monitor.PulseAll(Open);
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

    private static void Help(int callersProcessor)
    {
        OtherProcessor.GoFrom(callersProcessor);
        while (true)
        {
            (Next() ?? Looked() ?? Woken()).TakePart(isHelping: true);
        }
    }

    private static SharedWork? Next()
    {
        lock (Open)
        {
            return Open.FindLast(w => w.Enter(isHelping: true));
        }
    }

    private static SharedWork? Looked()
    {
        for (var until = Environment.TickCount64 + LingerMs; Environment.TickCount64 <= until;)
        {
            for (var look = 0; look < LooksBeforeYielding; look++)
            {
                if (Volatile.Read(ref newest) is not null && Next() is { } work)
                {
                    return work;
                }

                Thread.SpinWait(1);
            }

            _ = Thread.Yield();
        }

        return null;
    }

    private static SharedWork Woken()
    {
        lock (Open)
        {
            SharedWork? work;
            while ((work = Next()) is null)
            {
                _ = Monitor.Wait(Open);
            }

            return work;
        }
    }
}
