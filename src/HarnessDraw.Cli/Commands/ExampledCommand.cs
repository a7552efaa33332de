using System.CommandLine;

namespace HarnessDraw.Cli.Commands;

/// <summary>A command that shows how it is used.</summary>
internal sealed class ExampledCommand(string name, string description, params string[] examples) : Command(name, description)
{
    public string[] Examples { get; } = examples;
}
