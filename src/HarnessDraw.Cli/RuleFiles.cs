using HarnessDraw.Checking;
using HarnessDraw.Reading;

namespace HarnessDraw.Cli;

/// <summary>Rule files as the user names them.</summary>
internal static class RuleFiles
{
    /// <summary>The settings, or null when the file has mistakes (all of them have been said).</summary>
    /// <exception cref="IOException">The file is not there.</exception>
    public static RuleSettings? Read(Terminal terminal, string? file)
    {
        if (file is null)
        {
            return RuleSettings.BuiltIn;
        }

        if (!File.Exists(file))
        {
            throw new IOException($"there is no file '{file}'{NearFiles.Hint(file)}");
        }

        var files = new DiskFiles();
        var read = RuleFileReader.Read(file, files);
        var settings = read.Failed ? null : RuleFileResolver.Resolve(read.Value!);
        DiagnosticText.Say(terminal, [.. read.Diagnostics, .. settings?.Diagnostics ?? []], files);
        return settings?.Value;
    }
}
