using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Reading;

namespace HarnessDraw.Cli;

/// <summary>From a file's name to a checked plan, with everything said on the way.</summary>
internal static class PlannedFile
{
    /// <summary>The plan, or null when the description has mistakes (all of them have been said).</summary>
    /// <exception cref="IOException">The file itself is not there or cannot be read.</exception>
    public static CheckedPlan? Read(Terminal terminal, string descriptionFile, RuleSettings rules)
    {
        EnsureReadable(descriptionFile);
        var files = new DiskFiles();
        var outcome = HarnessCompiler.Plan(descriptionFile, files, rules);
        DiagnosticText.Say(terminal, outcome.Diagnostics, files);
        if (outcome.Failed)
        {
            var errors = outcome.Diagnostics.Count(d => d.Severity == Diagnostics.Severity.Error);
            terminal.Say($"{errors} {(errors == 1 ? "mistake" : "mistakes")}; nothing is written");
        }

        return outcome.Failed ? null : outcome.Value;
    }

    private static void EnsureReadable(string file)
    {
        if (Directory.Exists(file))
        {
            throw new IOException($"'{file}' is a folder; a description file is expected");
        }

        if (!File.Exists(file))
        {
            throw new IOException(new StringBuilder($"there is no file '{file}'").Append(NearFiles.Hint(file)).ToString());
        }
    }
}
