using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Reading;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Cli.Commands;

/// <summary>'schema': the JSON Schemas that editors complete keys from, and that of the plan's JSON.</summary>
internal static class SchemaCommand
{
    private static readonly ImmutableArray<string> Kinds = ["description", "layout", "catalogue", "plan"];

    public static Command Make(Terminal terminal)
    {
        var kind = new Argument<string>("KIND") { Description = $"Which one: {string.Join(", ", Kinds)}" }.AcceptOnlyFromAmong([.. Kinds]);
        var output = CommonArguments.Out("usual: the schema goes to standard output");
        var command = new ExampledCommand(
            "schema",
            "Print the JSON Schema of a kind of file",
            "harnessdraw schema description > harness.schema.json",
            "harnessdraw schema plan --out schemas")
        {
            kind, output,
        };
        command.SetAction(parsed =>
        {
            var asked = parsed.GetRequiredValue(kind);
            var text = asked switch
            {
                "description" => SchemaWriter.Description(),
                "layout" => SchemaWriter.Layout(),
                "catalogue" => SchemaWriter.Catalogue(),
                _ => PlanSchema.Text,
            };
            Results.Put(terminal, parsed.GetValue(output), $"{asked}.schema.json", Encoding.UTF8.GetBytes(text));
            return ExitCode.Done;
        });
        return command;
    }
}
