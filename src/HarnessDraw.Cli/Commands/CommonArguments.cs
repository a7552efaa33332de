using System.CommandLine;

namespace HarnessDraw.Cli.Commands;

/// <summary>The arguments that several commands share.</summary>
internal static class CommonArguments
{
    public static Argument<string> File() => new("FILE") { Description = "The harness description (YAML)" };

    public static Option<string?> Out(string otherwise) => new("--out") { Description = $"Folder for the results; {otherwise}", HelpName = "DIR" };

    public static Option<string?> Rules() => new("--rules") { Description = "Rule file with thresholds and severities of your own (YAML)", HelpName = "FILE" };
}
