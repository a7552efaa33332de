using System.CommandLine;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Reading;
using HarnessDraw.Tracing;

namespace HarnessDraw.Cli.Commands;

/// <summary>'trace': one circuit or load from source to load to return, as text.</summary>
internal static class TraceCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var what = new Argument<string>("CIRCUIT-or-LOAD") { Description = "A circuit ('dipped beam') or a load ('headlamp left')" };
        var build = new Option<string?>("--build") { Description = "One build only: option=choice, more with a comma between", HelpName = "CHOICES" };
        var command = new ExampledCommand(
            "trace",
            "Follow a circuit from source to load to return: places, cavities, colours, sizes, lengths, volts lost at each hop",
            "harnessdraw trace examples/brackmere-six.yaml horns")
        {
            file, what, build,
        };
        command.SetAction(parsed =>
        {
            var planned = PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var plan = parsed.GetValue(build) is { } text ? planned.Plan.For(BuildChoice.Read(text, planned.Plan.Harness)) : planned.Plan;
            var trace = CircuitTracer.Trace(plan, parsed.GetRequiredValue(what));
            DiagnosticText.Say(terminal, trace.Diagnostics, new DiskFiles());
            if (trace.Failed)
            {
                return ExitCode.WrongUsage;
            }

            terminal.Put(Encoding.UTF8.GetBytes(TraceTextWriter.Write(trace.Value!)));
            return ExitCode.Done;
        });
        return command;
    }
}
