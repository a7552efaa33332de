using System.IO.Hashing;
using System.Runtime.InteropServices;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>The input files of one run: reads them once, reports what is missing, and hashes them all.</summary>
public sealed class InputFiles(IFileSource source, DiagnosticBag bag)
{
    private const int HashCharacters = 10;

    /// <summary>Pictures and fonts: a face with many scripts has 20 MB.</summary>
    private const int LargestBroughtBytes = 40 * 1048576;
    private readonly List<byte[]> _parts = [];

    /// <summary>A file's text; null (with a message at <paramref name="namedAt"/>) when it cannot be read.</summary>
    public string? Read(string path, SourceSpan namedAt)
    {
        var text = Read(path, namedAt, YamlNodeReader.LargestFileChars, source.ReadText);
        if (text is not null)
        {
            _parts.Add(Encoding.UTF8.GetBytes(text.Replace("\r\n", "\n", StringComparison.Ordinal)));
        }

        return text;
    }

    /// <summary>A picture or font whose path stands in <paramref name="file"/>; null when none is named or (with a message) when it cannot be read.</summary>
    public BroughtFile? Bring(string file, InputText? named)
    {
        if (named is null || Read(Beside(file, named.Value), named.At, LargestBroughtBytes, source.ReadBytes) is not { } bytes)
        {
            return null;
        }

        _parts.Add(bytes);
        return new(Beside(file, named.Value), ImmutableCollectionsMarshal.AsImmutableArray(bytes), named.At);
    }

    private T? Read<T>(string path, SourceSpan namedAt, long most, Func<string, T> read)
        where T : class
    {
        try
        {
            if (!source.Exists(path) && source.IsFolder(path))
            {
                bag.Error(DiagnosticCodes.FileMissing, $"'{path}' is a folder; a file is expected", namedAt, $"name a file in it, for instance '{path.TrimEnd('/')}/NAME.yaml'");
                return null;
            }

            if (!source.Exists(path))
            {
                bag.Error(DiagnosticCodes.FileMissing, $"there is no file '{path}'", namedAt, NearestFile(path) is { } near ? $"{near} Files are looked up beside the file that names them" : "files are looked up beside the file that names them");
                return null;
            }

            var size = source.SizeBytes(path);
            if (size > most)
            {
                bag.Error(DiagnosticCodes.FileTooBig, $"'{path}' has {size / 1048576.0:F0} MB; at most {most / 1048576} MB are read", namedAt);
                return null;
            }

            return read(path);
        }
        catch (Exception failed) when (failed is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            bag.Error(DiagnosticCodes.FileUnreadable, $"'{path}' cannot be read: {failed.Message}", namedAt);
            return null;
        }
    }

    private string? NearestFile(string path)
    {
        var at = path.LastIndexOf('/') + 1;
        return NearestName.Hint(path[at..], source.NamesIn(path[..at]));
    }

    /// <summary>A file as a tree of values.</summary>
    public InputNode? ReadYaml(string path, SourceSpan namedAt) =>
        Read(path, namedAt) is { } text ? YamlNodeReader.Read(path, text, bag) : null;

    /// <summary>A path named in a file, seen from where the program runs: beside that file.</summary>
    public static string Beside(string file, string named)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(named);
        if (System.IO.Path.IsPathRooted(named))
        {
            return named;
        }

        var slash = file.Replace('\\', '/').LastIndexOf('/');
        return Straight(slash < 0 ? named : file[..(slash + 1)] + named);
    }

    /// <summary>The first characters of an XXH128 over all files read, line ends of texts made alike, in the order read: it tells one state of them from another.</summary>
    public string Hash()
    {
        var hash = new XxHash128();
        foreach (var part in _parts)
        {
            hash.Append(part);
            hash.Append([0]);
        }

        return Convert.ToHexStringLower(hash.GetCurrentHash())[..HashCharacters];
    }

    // 'a/b/../c' becomes 'a/c'; leading '..' stay
    private static string Straight(string path)
    {
        var parts = new List<string>();
        foreach (var part in path.Replace('\\', '/').Split('/'))
        {
            if (part == ".." && parts.Count > 0 && parts[^1] is not ".." and not "")
            {
                parts.RemoveAt(parts.Count - 1);
            }
            else if (part != "." && (part.Length > 0 || parts.Count == 0))
            {
                parts.Add(part);
            }
        }

        return string.Join('/', parts);
    }
}
