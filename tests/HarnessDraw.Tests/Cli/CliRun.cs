using System.Text;
using HarnessDraw.Cli;

namespace HarnessDraw.Tests.Cli;

/// <summary>One run of the command line in memory: its exit code, what went to the output and what was said.</summary>
internal sealed record CliRun(int Code, string Output, string Messages)
{
    public static CliRun Of(params string[] args) => With("", args);

    public static CliRun With(string answers, params string[] args)
    {
        using var output = new MemoryStream();
        using var messages = new StringWriter { NewLine = "\n" };
        var terminal = new Terminal(output, messages, new StringReader(answers)) { CanAsk = answers.Length > 0 };
        var code = CommandLine.Run(args, terminal);
        return new(code, Encoding.UTF8.GetString(output.ToArray()), messages.ToString());
    }
}
