namespace HarnessDraw.Cli;

/// <summary>What went wrong with a file, in words: the published program carries none of the runtime's own, only their keys ('IO_FileExists_Name, /tmp/a').</summary>
internal static class FileTrouble
{
    public static string Of(Exception e)
    {
        ArgumentNullException.ThrowIfNull(e);
        var (key, path) = e.Message.Split(", ", 2) is [var a, var b] ? (a, $"'{b}'") : (e.Message, "the file");
        if (!IsKey(key))
        {
            return e.Message;
        }

        return key switch
        {
            _ when key.Contains("FileExists", StringComparison.Ordinal) || key.Contains("AlreadyExists", StringComparison.Ordinal) => $"{path} is a file, and a folder is needed there",
            _ when e is UnauthorizedAccessException => $"no permission to read or write {path}",
            FileTooLong => $"{path} is too long a name",
            _ when e is FileNotFoundException or DirectoryNotFoundException => $"{path} is not there and cannot be made",
            _ => $"{path} cannot be read or written",
        };
    }

    private const string FileTooLong = "IO_PathTooLong_Path";

    // one word with an underscore, as no sentence of ours begins
    private static bool IsKey(string text) => text.Contains('_', StringComparison.Ordinal) && !text.Contains(' ', StringComparison.Ordinal) && !text.Contains('\'', StringComparison.Ordinal);
}
