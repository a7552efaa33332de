using System.Collections.Immutable;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli;

/// <summary>Makes and writes the files of a run, as many at a time as there are processors; documents, which take longest, are begun first.</summary>
internal static class FileWriting
{
    // more pictures at a time take memory and save little
    private const int MostAtOnce = 4;

    /// <exception cref="IOException">A file cannot be written; what was written before stays.</exception>
    public static void WriteAll(Terminal terminal, OutputFolder folder, ImmutableArray<OutputFile> files)
    {
        using var progress = new Progress(terminal, files.Length);
        OutputFile[] queue = [.. files.OrderBy(f => f.Name.EndsWith(".pdf", StringComparison.Ordinal) ? 0 : f.IsPicture ? 1 : 2)];
        SideBySide.For(queue.Length, () => Write, Math.Min(Environment.ProcessorCount, MostAtOnce));

        void Write(int f)
        {
            var file = queue[f];
            progress.Step(file.Name);
            folder.Write(file.Name, file.MakeTelling is { } make ? make(share => progress.Share(file.Name, share)) : file.Make());
        }
    }
}
