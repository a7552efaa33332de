using System.CommandLine;
using HarnessDraw.Checking;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw.Cli.Commands;

/// <summary>'freeze': takes down what is built, so that later edits keep it.</summary>
internal static class FreezeCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var again = new Option<bool>("--again") { Description = "Replace what was frozen before" };
        var output = CommonArguments.Out("usual: beside the description, where later runs find it");
        var command = new ExampledCommand(
            "freeze",
            "Take down cavities, wire ids, lengths and splices of a built harness; later runs keep them, and 'draw --since' its wall chart",
            "harnessdraw freeze examples/brackmere-six.yaml --out bench")
        {
            file, again, output,
        };
        command.SetAction(parsed =>
        {
            var description = parsed.GetRequiredValue(file);
            var planned = PlannedFile.Read(terminal, description, RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var folder = new OutputFolder(parsed.GetValue(output) ?? Path.GetDirectoryName(Path.GetFullPath(description))!);
            var name = OutputNames.Safe(planned.Plan.Harness.Id) + HarnessCompiler.FrozenEnding;
            if (Path.Exists(folder.Inside(name)) && !parsed.GetValue(again))
            {
                throw new IOException($"'{folder.Inside(name)}' is already there; '--again' replaces it");
            }

            folder.Write(name, FrozenJsonWriter.Write(HarnessCompiler.Freeze(planned, new())));
            terminal.Say($"{name} written to {DiagnosticText.Plain(folder.Path)}");
            return ExitCode.Done;
        });
        return command;
    }
}
