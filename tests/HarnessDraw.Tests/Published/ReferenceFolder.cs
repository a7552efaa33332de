namespace HarnessDraw.Tests.Published;

/// <summary>The folder of published data sets; tests that need it are skipped, with the reason, where it is missing.</summary>
internal static class ReferenceFolder
{
    /// <summary>Full path of a file or folder in it.</summary>
    public static string Find(string name)
    {
        var root = Environment.GetEnvironmentVariable("HARNESSDRAW_REFERENCE") ?? Beside();
        var path = root is null ? null : System.IO.Path.Combine(root, name);
        if (path is null || !(File.Exists(path) || Directory.Exists(path)))
        {
            Assert.Skip($"no reference data: set HARNESSDRAW_REFERENCE to the folder that holds {name}");
        }

        return path!;
    }

    private static string? Beside()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(System.IO.Path.Combine(folder.FullName, "HarnessDraw.sln")))
            {
                return System.IO.Path.Combine(folder.FullName, "..", "shared", "reference");
            }
        }

        return null;
    }
}
