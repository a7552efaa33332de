namespace HarnessDraw.Cli;

/// <summary>
/// The folder that results go to. A file is written beside its final name and then moved over it, so it is there whole or not at all;
/// a name that would lead out of the folder is refused.
/// </summary>
internal sealed class OutputFolder(string path)
{
    public string Path { get; } = System.IO.Path.GetFullPath(path);

    /// <summary>Where results of a description go when nothing is said: a folder named after the file, beside it.</summary>
    public static OutputFolder BesideFile(string descriptionFile)
    {
        var full = System.IO.Path.GetFullPath(descriptionFile);
        var beside = System.IO.Path.GetDirectoryName(full) ?? full;
        return new(System.IO.Path.Combine(beside, System.IO.Path.GetFileNameWithoutExtension(full)));
    }

    /// <param name="name">File name, at the most one folder deep ('build/NAME.pdf').</param>
    /// <param name="content">The whole file.</param>
    public void Write(string name, ReadOnlySpan<byte> content)
    {
        var target = Inside(name);
        var folder = System.IO.Path.GetDirectoryName(target)!;
        Directory.CreateDirectory(folder);
        var half = System.IO.Path.Combine(folder, $".{System.IO.Path.GetFileName(target)}.{Environment.ProcessId}.part");
        try
        {
            using (var file = new FileStream(half, FileMode.CreateNew, FileAccess.Write))
            {
                file.Write(content);
            }

            File.Move(half, target, overwrite: true);
        }
        catch
        {
            File.Delete(half);
            throw;
        }
    }

    /// <summary>The full path of a name in this folder.</summary>
    /// <exception cref="IOException">The name leads out of the folder, or a part of the way is a link.</exception>
    public string Inside(string name)
    {
        var target = System.IO.Path.GetFullPath(System.IO.Path.Combine(Path, name));
        var root = Path.EndsWith(System.IO.Path.DirectorySeparatorChar) ? Path : Path + System.IO.Path.DirectorySeparatorChar;
        if (!target.StartsWith(root, StringComparison.Ordinal))
        {
            throw new IOException($"'{name}' leads out of the folder {Path}");
        }

        for (var at = System.IO.Path.GetDirectoryName(target)!; at.Length > Path.Length; at = System.IO.Path.GetDirectoryName(at)!)
        {
            if (new DirectoryInfo(at).LinkTarget is not null)
            {
                throw new IOException($"'{at}' is a link; results are written only to real folders below {Path}");
            }
        }

        return target;
    }
}
