using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.Suspects;

namespace HarnessDraw.Cli.Commands;

/// <summary>'exercise': a fault set at random from a seed; the learner asks for readings, the key shows the shortest way.</summary>
internal static class ExerciseCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var seed = new Option<ulong>("--seed") { Description = "Number of the exercise: the same number sets the same fault", HelpName = "N", DefaultValueFactory = _ => 1 };
        var read = new Option<string[]>("--read") { Description = "A reading to ask for: 'POINT @ STATE', against the battery's grounded post", HelpName = "POINT" };
        var answer = new Option<string?>("--answer") { Description = "The part that is said to be at fault, as 'diagnose' words it", HelpName = "PART" };
        var key = new Option<bool>("--key") { Description = "For the teacher: the fault and the shortest way to it" };
        var build = CommonArguments.Build();
        var command = new ExampledCommand(
            "exercise",
            "Set a fault at random for a class: complaint, readings on demand, answer key",
            "harnessdraw exercise examples/brackmere-six.yaml --seed 7",
            "harnessdraw exercise examples/brackmere-six.yaml --seed 7 --key")
        {
            file, seed, read, answer, key, build,
        };
        command.SetAction(parsed => CommonArguments.Tell(terminal, parsed, file, build, (plan, choice) =>
        {
            var number = parsed.GetValue(seed);
            var exercise = new FaultExercise(plan, number, choice);
            var told = new StringBuilder(ProcedureText.Of(exercise, number, parsed.GetValue(key)));
            foreach (var asked in parsed.GetValue(read) ?? [])
            {
                told.Append(Reading(exercise, asked));
            }

            if (parsed.GetValue(answer) is { } part)
            {
                told.Append(exercise.IsRight(part) ? $"'{part}' is right.\n" : $"'{part}' is not it.\n");
            }

            return told.ToString();
        }));
        return command;
    }

    private static string Reading(FaultExercise exercise, string asked)
    {
        var parts = asked.Split('@', 2, StringSplitOptions.TrimEntries);
        var state = parts.Length > 1 ? parts[1] : exercise.Bench.States[0].Id;
        if (exercise.Read(parts[0], state) is { } volts)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{parts[0]} @ {state}: {volts:0.00} V\n");
        }

        ImmutableArray<string> points = [.. exercise.Bench.Points.Select(p => p.Called)];
        throw new WrongUsageException(exercise.Bench.Points.Any(p => PointWords.Names(parts[0], p.Name))
            ? $"--read: state '{state}' is not one of the complaint; ask in {string.Join(", ", exercise.Bench.States.Select(s => $"'{s.Id}'"))}"
            : $"--read: there is no point '{DiagnosticText.Plain(parts[0])}'{(NearestName.Hint(parts[0], points) is { } hint ? $"; {hint}" : "")}");
    }
}
