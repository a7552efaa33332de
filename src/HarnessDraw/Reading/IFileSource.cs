namespace HarnessDraw.Reading;

/// <summary>Where input files come from; tests put their own in. Paths are as named, with '/' between their parts.</summary>
public interface IFileSource
{
    bool Exists(string path);

    /// <summary>True where the path is a folder.</summary>
    bool IsFolder(string path) => false;

    /// <summary>Names of files in a folder, for a hint at what was meant by one that is not there; nothing where they cannot be told.</summary>
    IReadOnlyList<string> NamesIn(string folder) => [];

    /// <summary>The file's text (UTF-8, a byte order mark is dropped). Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/>.</summary>
    string ReadText(string path);

    /// <summary>The file's bytes. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/>.</summary>
    byte[] ReadBytes(string path);

    /// <summary>Size in bytes, asked before reading so that huge files are never loaded.</summary>
    long SizeBytes(string path) => ReadBytes(path).Length;
}

/// <summary>Files on disk.</summary>
public sealed class DiskFiles : IFileSource
{
    private const int MostListed = 200;

    public bool Exists(string path) => File.Exists(path);

    public bool IsFolder(string path) => Directory.Exists(path);

    public IReadOnlyList<string> NamesIn(string folder)
    {
        try
        {
            return [.. Directory.EnumerateFiles(folder.Length == 0 ? "." : folder).Take(MostListed).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    public string ReadText(string path) => File.ReadAllText(path);

    public byte[] ReadBytes(string path) => File.ReadAllBytes(path);

    public long SizeBytes(string path) => new FileInfo(path).Length;
}

/// <summary>Files held in memory, for tests and for what the program makes itself; pictures and fonts may be given as bytes.</summary>
public sealed class MemoryFiles(IReadOnlyDictionary<string, string> files, IReadOnlyDictionary<string, byte[]>? binaries = null) : IFileSource
{
    public bool Exists(string path) => files.ContainsKey(path) || binaries?.ContainsKey(path) == true;

    public byte[] ReadBytes(string path) => binaries is not null && binaries.TryGetValue(path, out var bytes) ? bytes : System.Text.Encoding.UTF8.GetBytes(ReadText(path));

    public string ReadText(string path) => files.TryGetValue(path, out var text) ? text : throw new FileNotFoundException($"no file '{path}'", path);
}
