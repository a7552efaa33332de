using System.Collections.Immutable;
using System.Runtime.ExceptionServices;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli;

/// <summary>
/// Makes and writes the files of a run. Pictures are made one after the other on a second thread (they take the most memory),
/// everything else on the first.
/// </summary>
internal static class FileWriting
{
    public static void WriteAll(Terminal terminal, OutputFolder folder, ImmutableArray<OutputFile> files)
    {
        using var progress = new Progress(terminal, files.Length);
        var pictures = files.Where(f => f.IsPicture).ToImmutableArray();
        var others = files.Where(f => !f.IsPicture).ToImmutableArray();
        if (pictures.Length == 0 || others.Length == 0)
        {
            Write(folder, files, progress);
            return;
        }

        ExceptionDispatchInfo? failed = null;
        var second = new Thread(() =>
        {
            try
            {
                Write(folder, pictures, progress);
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
