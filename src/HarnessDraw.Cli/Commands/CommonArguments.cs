using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Planning;

namespace HarnessDraw.Cli.Commands;

/// <summary>The arguments that several commands share.</summary>
internal static class CommonArguments
{
    public static Argument<string> File() => new("FILE") { Description = "The harness description (YAML)" };

    public static Option<string?> Out(string otherwise) => new("--out") { Description = $"Folder for the results; {otherwise}", HelpName = "DIR" };

    public static Option<string?> Build(string words = "One build") => new("--build") { Description = $"{words}: option=choice, more with a comma between; the rest as usual", HelpName = "CHOICES" };

    /// <summary>The build that was asked for, or null when none was.</summary>
    public static ImmutableSortedDictionary<string, string>? BuildOf(ParseResult parsed, Option<string?> build, Plan plan) =>
        parsed.GetValue(build) is { } text ? BuildChoice.Read(text, plan.Harness) : null;

    /// <summary>The one way of the commands that tell something of a plan in a build, or in the usual one: read, plan, tell.</summary>
    public static int Tell(Terminal terminal, ParseResult parsed, Argument<string> file, Option<string?> build, Func<Plan, ImmutableSortedDictionary<string, string>?, string> tell)
    {
        if (PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn)?.Plan is not { } plan)
        {
            return ExitCode.Problems;
        }

        terminal.Put(Encoding.UTF8.GetBytes(tell(plan, BuildOf(parsed, build, plan))));
        return ExitCode.Done;
    }

    public static Option<string?> Rules() => new("--rules") { Description = "Rule file with thresholds and severities of your own (YAML)", HelpName = "FILE" };
}
