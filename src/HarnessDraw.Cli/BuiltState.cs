using HarnessDraw.Checking;
using HarnessDraw.Comparing;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Frozen;
using HarnessDraw.Writing;

namespace HarnessDraw.Cli;

/// <summary>A state of a harness to compare with: a frozen file, or a description as it would be built.</summary>
internal static class BuiltState
{
    /// <summary>The state, or null when the file has mistakes (all of them have been said). With an order the places of a description's wall chart are told too.</summary>
    public static FrozenHarness? Read(Terminal terminal, string file, DrawOrder? order = null)
    {
        if (!file.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return PlannedFile.Read(terminal, file, RuleSettings.BuiltIn) is not { } planned ? null
                : order is null ? HarnessFreezer.Freeze(planned.Plan) : HarnessCompiler.Freeze(planned, HarnessCompiler.Complete(order, planned));
        }

        if (!File.Exists(file))
        {
            throw new IOException($"there is no file '{file}'{NearFiles.Hint(file)}");
        }

        var files = new DiskFiles();
        var read = FrozenReader.Read(file, files);
        DiagnosticText.Say(terminal, read.Diagnostics, files);
        return read.Failed ? null : read.Value;
    }
}
