using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using HarnessDraw.Cli.Commands;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Cli;

/// <summary>From arguments to an exit code: finds the command, says what is wrong with the usage, runs it.</summary>
public static class CommandLine
{
    private const string About = """
        Plans and draws wire harnesses from a description in YAML: wall chart, connector faces, cut list, checks and circuit traces.
        A drawing is an aid. Follow local codes and have safety-related work done or checked by licensed people.
        """;

    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(terminal);
        var parsed = Root(terminal).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (parsed.Errors.Count > 0 && parsed.Action is not SynchronousCommandLineAction { ClearsParseErrors: true })
        {
            return SayWrongUsage(parsed, terminal);
        }

        try
        {
            using var output = new StreamWriter(terminal.Output, leaveOpen: true);
            parsed.InvocationConfiguration.Output = output;
            parsed.InvocationConfiguration.Error = terminal.Messages;
            // run as it is: the library's own invocation would start threads for signals that this program does not handle
            return parsed.Action is SynchronousCommandLineAction action ? action.Invoke(parsed) : ExitCode.WrongUsage;
        }
        catch (WrongUsageException wrong)
        {
            terminal.SayError(wrong.Message);
            return ExitCode.WrongUsage;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            terminal.SayError(DiagnosticText.Plain(e.Message));
            return ExitCode.Files;
        }
    }

    private static RootCommand Root(Terminal terminal)
    {
        var root = new RootCommand(About)
        {
            DrawCommand.Make(terminal),
            CheckCommand.Make(terminal),
            PlanCommand.Make(terminal),
            CutCommand.Make(terminal),
            ReelsCommand.Make(terminal),
            BuyCommand.Make(terminal),
            KitCommand.Make(terminal),
            FreezeCommand.Make(terminal),
            RecordCommand.Make(terminal),
            CompareCommand.Make(terminal),
            ImportCommand.Make(terminal),
            TraceCommand.Make(terminal),
            DiagnoseCommand.Make(terminal),
            ProcedureCommand.Make(terminal),
            ExerciseCommand.Make(terminal),
            TryCommand.Make(terminal),
            FitCommand.Make(terminal),
            SchemaCommand.Make(terminal),
            NewCommand.Make(terminal),
        };
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExample((HelpAction)help.Action!);
        return root;
    }

    private static int SayWrongUsage(ParseResult parsed, Terminal terminal)
    {
        var command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.UnmatchedTokens is [var typed, ..])
        {
            var hint = NearestName.Hint(typed, command.Subcommands.Select(c => c.Name));
            terminal.SayError($"there is no command '{DiagnosticText.Plain(typed)}'{(hint is null ? "" : $"; {hint}")}");
        }
        else
        {
            foreach (var error in parsed.Errors)
            {
                terminal.SayError(DiagnosticText.Plain(error.Message));
            }
        }

        var name = command is RootCommand ? "harnessdraw" : $"harnessdraw {command.Name}";
        terminal.Say($"'{name} --help' shows how it is used, with an example");
        return ExitCode.WrongUsage;
    }
}
