namespace HarnessDraw.Tests.Conventions;

/// <summary>The folders of the repository as the tests find them on disk.</summary>
internal static class Repository
{
    public static string Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Every C# file below a folder, generated ones left out, in ordinal order.</summary>
    public static IEnumerable<string> Sources(params string[] folder) =>
        Directory.EnumerateFiles(PathOf(folder), "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal);

    public static string Relative(string file) => Path.GetRelativePath(Root, file).Replace('\\', '/');

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "HarnessDraw.sln")))
            {
                return at.FullName;
            }
        }

        throw new DirectoryNotFoundException($"HarnessDraw.sln is not above {AppContext.BaseDirectory}");
    }
}
