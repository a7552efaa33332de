using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli;

/// <summary>
/// Makes and writes the files of a run. Pictures are made one after the other on a second thread (they take the most memory),
/// everything else on the first; without pictures the lists go to the second.
/// </summary>
internal static class FileWriting
{
    public static void WriteAll(Terminal terminal, OutputFolder folder, ImmutableArray<OutputFile> files)
    {
        using var progress = new Progress(terminal, files.Length);
        var hasPictures = files.Any(f => f.IsPicture);
        var aside = files.Where(f => hasPictures ? f.IsPicture : f.Name.EndsWith(".csv", StringComparison.Ordinal) || f.Name.EndsWith(".json", StringComparison.Ordinal)).ToImmutableArray();
        var others = files.Except(aside).ToImmutableArray();
        if (aside.Length == 0 || others.Length == 0)
        {
            Write(folder, files, progress);
            return;
        }

        ExceptionDispatchInfo? failed = null;
        var second = new Thread(() =>
        {
            try
            {
                Write(folder, aside, progress);
            }
            catch (Exception e)
            {
                failed = ExceptionDispatchInfo.Capture(e);
            }
        });
        second.Start();
        try
        {
            Write(folder, others, progress);
        }
        finally
        {
            second.Join();
        }

        failed?.Throw();
    }

    private static void Write(OutputFolder folder, ImmutableArray<OutputFile> files, Progress progress)
    {
        foreach (var file in files)
        {
            progress.Step(file.Name);
            folder.Write(file.Name, file.Make());
        }
    }
}
