using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace HarnessDraw.Cli;

/// <summary>
/// Memory for a whole run of usual size, taken before it begins: nothing is collected until it is used up. On Linux it comes in large pages where the system has them, or every
/// four kilobytes first touched would cost a fault of some microseconds.
/// </summary>
internal static unsafe partial class RoomAhead
{
    /// <summary>Bytes: what the wall chart of a hundred wires leaves behind, and a third more.</summary>
    private const long Bytes = 128L << 20;

    private const int UseHugePages = 14; // MADV_HUGEPAGE of madvise(2)

    /// <summary>Takes the room; without it (too little memory, a limit on the heap) the run goes as any other.</summary>
    public static void Take()
    {
        if (!OperatingSystem.IsLinux())
        {
            return;
        }

        // before the room is taken: two megabytes of which a byte was touched stay small pages
        var somewhere = new object();
        nint heap = *(nint*)Unsafe.AsPointer(ref somewhere), page = Environment.SystemPageSize;
        _ = Advise((heap - (2 * (nint)Bytes)) / page * page, (nuint)(4 * Bytes), UseHugePages); // advice alone: what it answers changes nothing
        try
        {
            _ = GC.TryStartNoGCRegion(Bytes);
        }
        catch (ArgumentOutOfRangeException)
        {
            // less is to be had: memory is collected as in any other run
        }
    }

    [LibraryImport("libc", EntryPoint = "madvise")]
    private static partial int Advise(nint start, nuint length, int advice);
}
