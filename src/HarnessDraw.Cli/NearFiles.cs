using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Cli;

/// <summary>What a person may have meant by the name of a file that is not there.</summary>
internal static class NearFiles
{
    public static string Hint(string file)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(file))!;
        if (!Directory.Exists(folder))
        {
            return $"; there is no folder '{Path.GetDirectoryName(file)}' either";
        }

        var names = new DiskFiles().NamesIn(folder);
        var typed = Path.GetFileName(file);
        var nearest = names.FirstOrDefault(n => Path.GetFileNameWithoutExtension(n) == typed && n.EndsWith(".yaml", StringComparison.Ordinal)) ?? NearestName.Of(typed, names);
        return nearest is null ? "" : $"; did you mean '{Path.Combine(Path.GetDirectoryName(file) ?? "", nearest)}'?";
    }
}
