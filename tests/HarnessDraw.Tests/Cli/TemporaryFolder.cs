namespace HarnessDraw.Tests.Cli;

/// <summary>An empty folder that goes when the test is over.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("harnessdraw-").FullName;

    public string File(string name, string? text = null)
    {
        var path = System.IO.Path.Combine(Path, name);
        if (text is not null)
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
            System.IO.File.WriteAllText(path, text);
        }

        return path;
    }

    /// <summary>Every file below, with '/' between the parts, in ordinal order.</summary>
    public IEnumerable<string> Files() =>
        Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories).Select(f => System.IO.Path.GetRelativePath(Path, f).Replace('\\', '/')).Order(StringComparer.Ordinal);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
