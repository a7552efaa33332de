using System.Runtime.ExceptionServices;

namespace HarnessDraw;

/// <summary>Work that was handed out in pieces by <see cref="SideBySide"/>.</summary>
public sealed class SharedWork
{
    // a piece takes a millisecond at the most, mostly: who waits for one looks again before going to sleep
    private const int MostLooks = 50;

    private readonly int count;
    private readonly int atMost;
    private readonly Func<Action<int>> worker;
    private int next;
    private int inside;
    private int helping;
    private ExceptionDispatchInfo? failed;

    internal SharedWork(int count, Func<Action<int>> worker, int atMost)
    {
        this.count = count;
        this.worker = worker;
        this.atMost = atMost;
    }

    /// <summary>True when all pieces are done.</summary>
    public bool IsDone => IsGivenOut && Volatile.Read(ref inside) == 0;

    private bool IsGivenOut => Volatile.Read(ref next) >= count;

    /// <summary>Takes part, and waits for the pieces that others have begun. What a piece threw is thrown here.</summary>
    public void Finish()
    {
        lock (SideBySide.Open)
        {
            _ = Enter(isHelping: false);
        }

        TakePart(isHelping: false);
        for (var wait = default(SpinWait); !IsDone && wait.Count < MostLooks;)
        {
            wait.SpinOnce(sleep1Threshold: -1);
        }

        lock (SideBySide.Open)
        {
            while (!IsDone)
            {
                _ = Monitor.Wait(SideBySide.Open);
            }
        }

        failed?.Throw();
    }

    /// <summary>Counts a thread in; a helper may be one too many. Asked with the open works locked.</summary>
    internal bool Enter(bool isHelping)
    {
        // one place is the caller's
        if (isHelping && (IsGivenOut || helping >= atMost - 1))
        {
            return false;
        }

        helping += isHelping ? 1 : 0;
        inside++;
        return true;
    }

    /// <summary>Does pieces until none is left; a helper goes where something newer is asked for.</summary>
    internal void TakePart(bool isHelping)
    {
        try
        {
            var piece = IsGivenOut ? null : worker();
            while (piece is not null && Interlocked.Increment(ref next) - 1 is var i && i < count)
            {
                piece(i);
                if (isHelping && SideBySide.IsOutdated(this))
                {
                    break;
                }
            }
        }
        catch (Exception e)
        {
            // told to whoever waits for the work; what is left of it is not begun
            _ = Interlocked.CompareExchange(ref failed, ExceptionDispatchInfo.Capture(e), null);
            Volatile.Write(ref next, count);
        }
        finally
        {
            lock (SideBySide.Open)
            {
                helping -= isHelping ? 1 : 0;
                inside--;
                if (IsGivenOut)
                {
                    SideBySide.Close(this);
                    Monitor.PulseAll(SideBySide.Open);
                }
            }
        }
    }
}
