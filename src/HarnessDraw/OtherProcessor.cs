using System.Runtime.InteropServices;

namespace HarnessDraw;

/// <summary>
/// Takes a new helper off the processor of whoever called it. In a virtual machine Linux holds a processor that stands still for one that its host has taken away, and leaves both threads on
/// one: for as long as 35 of 100 ms the other processor had nothing to do. Elsewhere, and where it cannot be done, threads stay where the system puts them.
/// </summary>
internal static partial class OtherProcessor
{
    // processors that a set of them can hold, as glibc's cpu_set_t(3)
    private const int MostProcessors = 1024;

    /// <summary>The processor that this thread is on; -1 where that is not known.</summary>
    public static int Here()
    {
        try
        {
            return OperatingSystem.IsLinux() ? GetCpu() : -1;
        }
        catch (TypeLoadException)
        {
            return -1;
        }
    }

    /// <summary>Moves this thread away from a processor; it may come back there as it may go anywhere else.</summary>
    public static void GoFrom(int processor)
    {
        var allowed = new ulong[MostProcessors / 64];
        if (processor is < 0 or >= MostProcessors || GetAffinity(0, MostProcessors / 8, allowed) < 0)
        {
            return;
        }

        ulong[] others = [.. allowed];
        others[processor / 64] &= ~(1UL << (processor % 64));
        if (others.Any(o => o != 0) && SetAffinity(0, MostProcessors / 8, others) == 0)
        {
            _ = SetAffinity(0, MostProcessors / 8, allowed);
        }
    }

    [LibraryImport("libc", EntryPoint = "sched_getcpu")]
    private static partial int GetCpu();

    [LibraryImport("libc", EntryPoint = "sched_getaffinity")]
    private static partial int GetAffinity(int thread, nint bytes, [Out] ulong[] set);

    [LibraryImport("libc", EntryPoint = "sched_setaffinity")]
    private static partial int SetAffinity(int thread, nint bytes, ulong[] set);
}
