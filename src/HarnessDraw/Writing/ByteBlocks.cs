using System.Buffers;

namespace HarnessDraw.Writing;

/// <summary>
/// Bytes of a file to be, collected in blocks of shared memory: nothing is copied as the file grows, and no large array is thrown away. Disposing gives the
/// blocks back.
/// </summary>
internal sealed class ByteBlocks : IBufferWriter<byte>, IDisposable
{
    private const int BlockBytes = 64 * 1024;
    private readonly List<(byte[] Block, int Length)> full = [];
    private byte[] block = ArrayPool<byte>.Shared.Rent(BlockBytes);
    private int at;

    public Span<byte> GetSpan(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return block.AsSpan(at);
    }

    public Memory<byte> GetMemory(int sizeHint = 0)
    {
        MakeRoom(sizeHint);
        return block.AsMemory(at);
    }

    public void Advance(int count) => at += count;

    /// <summary>All that was written, with nothing to spare.</summary>
    public byte[] ToArray()
    {
        var all = GC.AllocateUninitializedArray<byte>(full.Sum(f => f.Length) + at);
        var to = all.AsSpan();
        foreach (var (done, length) in full)
        {
            done.AsSpan(0, length).CopyTo(to);
            to = to[length..];
        }

        block.AsSpan(0, at).CopyTo(to);
        return all;
    }

    public void Dispose()
    {
        foreach (var (done, _) in full)
        {
            ArrayPool<byte>.Shared.Return(done);
        }

        full.Clear();
        ArrayPool<byte>.Shared.Return(block);
        (block, at) = ([], 0);
    }

    private void MakeRoom(int bytes)
    {
        if (block.Length - at < Math.Max(1, bytes))
        {
            full.Add((block, at));
            (block, at) = (ArrayPool<byte>.Shared.Rent(Math.Max(BlockBytes, bytes)), 0);
        }
    }
}
