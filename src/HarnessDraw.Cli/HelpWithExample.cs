using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using HarnessDraw.Cli.Commands;

namespace HarnessDraw.Cli;

/// <summary>The usual help, then an example that can be typed.</summary>
internal sealed class HelpWithExample(HelpAction usual) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        var examples = parseResult.CommandResult.Command is ExampledCommand command ? command.Examples : ["harnessdraw draw examples/brackmere-six.yaml"];
        output.Write(examples.Length == 1 ? "Example:\n" : "Examples:\n");
        foreach (var example in examples)
        {
            output.Write($"  {example}\n");
        }

        output.Flush();
        return ExitCode.Done;
    }
}
