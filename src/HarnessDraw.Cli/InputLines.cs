using HarnessDraw.Reading;

namespace HarnessDraw.Cli;

/// <summary>Single lines of the input files, for messages; each file is read once at the most.</summary>
internal static class InputLines
{
    private const long LargestShown = 4_000_000;

    public static Func<string, int, string?> Of(IFileSource files)
    {
        var known = new Dictionary<string, string[]>(StringComparer.Ordinal);
        return (file, line) =>
        {
            if (!known.TryGetValue(file, out var lines))
            {
                known[file] = lines = Read(files, file);
            }

            return line >= 1 && line <= lines.Length ? lines[line - 1].TrimEnd('\r') : null;
        };
    }

    private static string[] Read(IFileSource files, string file)
    {
        try
        {
            return files.Exists(file) && files.SizeBytes(file) <= LargestShown ? files.ReadText(file).Split('\n') : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
