using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Comparing;
using HarnessDraw.Reading;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw.Cli.Commands;

/// <summary>'compare': what to add, cut, move and remove, by wire.</summary>
internal static class CompareCommand
{
    private static readonly ImmutableArray<string> Formats = ["text", "json"];

    public static Command Make(Terminal terminal)
    {
        var old = new Argument<string>("OLD") { Description = "The built state: a frozen file (.frozen.json) or a description" };
        var now = new Argument<string>("NEW") { Description = "The state to reach: a description or a frozen file" };
        var format = ListedOption.One("--format", "Form of the changes", Formats, "text");
        var output = CommonArguments.Out("usual: the changes go to standard output");
        var command = new ExampledCommand(
            "compare",
            "What to add, cut, move and remove, wire by wire; refuses halves of different revisions",
            "harnessdraw compare examples/brackmere-six.yaml examples/brackmere-six.yaml")
        {
            old, now, format, output,
        };
        command.SetAction(parsed =>
        {
            if (BuiltState.Read(terminal, parsed.GetRequiredValue(old)) is not { } before || BuiltState.Read(terminal, parsed.GetRequiredValue(now)) is not { } after)
            {
                return ExitCode.Problems;
            }

            var compared = HarnessComparer.Compare(before, after);
            DiagnosticText.Say(terminal, compared.Diagnostics, new DiskFiles());
            if (compared.Failed)
            {
                return ExitCode.Problems;
            }

            var (ending, content) = parsed.GetValue(format) == "json"
                ? ("json", FrozenJsonWriter.Changes(compared.Value!))
                : ("txt", Encoding.UTF8.GetBytes(FrozenJsonWriter.Text(compared.Value!)));
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(after.Harness)}.changes.{ending}", content);
            return ExitCode.Done;
        });
        return command;
    }
}
