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

    private static readonly (string Name, Func<Terminal, Command> Make)[] Commands =
    [
        ("draw", DrawCommand.Make),
        ("check", CheckCommand.Make),
        ("plan", PlanCommand.Make),
        ("cut", CutCommand.Make),
        ("reels", ReelsCommand.Make),
        ("buy", BuyCommand.Make),
        ("kit", KitCommand.Make),
        ("freeze", FreezeCommand.Make),
        ("record", RecordCommand.Make),
        ("compare", CompareCommand.Make),
        ("import", ImportCommand.Make),
        ("trace", TraceCommand.Make),
        ("diagnose", DiagnoseCommand.Make),
        ("procedure", ProcedureCommand.Make),
        ("exercise", ExerciseCommand.Make),
        ("try", TryCommand.Make),
        ("fit", FitCommand.Make),
        ("schema", SchemaCommand.Make),
        ("new", NewCommand.Make),
    ];

    public static int Run(IReadOnlyList<string> args, Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(args);
        ArgumentNullException.ThrowIfNull(terminal);
        var parsed = Root(args, terminal).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
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
            terminal.SayError(DiagnosticText.Plain(FileTrouble.Of(e)));
            return ExitCode.Files;
        }
    }

    private static RootCommand Root(IReadOnlyList<string> args, Terminal terminal)
    {
        // each command with its options takes time to make: the one that is named is enough; all are told where none is
        var named = args.Count == 0 ? [] : Commands.Where(c => c.Name == args[0]).ToArray();
        var root = new RootCommand(About);
        foreach (var (_, make) in named.Length > 0 ? named : Commands)
        {
            root.Add(make(terminal));
        }

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
            var unknown = parsed.UnmatchedTokens.Where(t => t.StartsWith("--", StringComparison.Ordinal)).ToList();
            foreach (var option in unknown)
            {
                terminal.SayError($"there is no option '{DiagnosticText.Plain(option)}'{(NearOption(option, command) is { } hint ? $"; {hint}" : "")}");
            }

            // what follows an option that is not there has lost its place
            foreach (var error in parsed.Errors.Where(e => unknown.Count == 0 || !parsed.UnmatchedTokens.Any(t => e.Message.Contains($"'{t}'", StringComparison.Ordinal))))
            {
                terminal.SayError(DiagnosticText.Plain(error.Message));
            }
        }

        var name = command is RootCommand ? "harnessdraw" : $"harnessdraw {command.Name}";
        terminal.Say($"'{name} --help' shows how it is used, with an example");
        return ExitCode.WrongUsage;
    }

    private static string? NearOption(string typed, Command command)
    {
        string[] names = [.. command.Options.Select(o => o.Name)];
        return NearestName.Hint(typed, names) ?? (names.FirstOrDefault(n => typed.Length > 4 && typed.Length < n.Length && n.Contains(typed[2..], StringComparison.Ordinal)) is { } holds ? $"did you mean '{holds}'?" : null);
    }
}
