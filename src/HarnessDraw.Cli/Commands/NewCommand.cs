using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Starter;

namespace HarnessDraw.Cli.Commands;

/// <summary>'new': a commented description and layout to start from.</summary>
internal static class NewCommand
{
    public static Command Make(Terminal terminal)
    {
        var name = new Argument<string>("NAME") { Description = "Name of the vehicle or harness; the files are named after it" };
        var usual = new StarterAnswers("");
        var questions = ImmutableArray.Create(
            new Question("--voltage", "Volts of the battery", StarterAnswers.Voltages, usual.Voltage, (a, v) => a with { Voltage = v }),
            new Question("--ground", "Pole that is joined to the body", StarterAnswers.Grounds, usual.Ground, (a, v) => a with { Ground = v }),
            new Question("--charging", "Charging", StarterAnswers.Chargings, usual.Charging, (a, v) => a with { Charging = v }),
            new Question("--heating", "Heating", StarterAnswers.Heatings, usual.Heating, (a, v) => a with { Heating = v }),
            new Question("--cooling-fan", "Cooling fan", StarterAnswers.CoolingFans, usual.CoolingFan, (a, v) => a with { CoolingFan = v }),
            new Question("--lamps", "Headlamps", StarterAnswers.LampSets, usual.Lamps, (a, v) => a with { Lamps = v }),
            new Question("--firewall", "Connector at the firewall (none: all is built, as on a motorcycle or tractor)", StarterAnswers.Firewalls, usual.Firewall, (a, v) => a with { Firewall = v }));
        var options = questions.Select(q => ListedOption.One(q.Option, q.Text, q.Answers, q.Usual)).ToImmutableArray();
        var output = CommonArguments.Out("usual: this folder");
        var command = new ExampledCommand(
            "new",
            "Write a commented description and layout that draw at once",
            "harnessdraw new my-van",
            "harnessdraw new my-van --voltage 12 --ground negative --charging exciter --heating blower --cooling-fan electric --lamps two")
        {
            name, output,
        };
        foreach (var option in options)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            var answers = questions.Zip(options).Aggregate(new StarterAnswers(SafeName(parsed.GetRequiredValue(name))), (a, q) =>
            {
                var given = parsed.GetResult(q.Second) is { Implicit: false };
                return q.First.Take(a, given || !terminal.CanAsk ? parsed.GetValue(q.Second)! : Ask(terminal, q.First));
            });
            return Write(terminal, answers, new OutputFolder(parsed.GetValue(output) ?? "."));
        });
        return command;
    }

    private static int Write(Terminal terminal, StarterAnswers answers, OutputFolder folder)
    {
        var (description, layout) = ($"{answers.Name}.yaml", $"{answers.Name}-layout.yaml");
        foreach (var file in new[] { description, layout }.Where(f => Path.Exists(folder.Inside(f))))
        {
            throw new IOException($"'{folder.Inside(file)}' is already there; nothing is overwritten");
        }

        folder.Write(layout, Encoding.UTF8.GetBytes(StarterLayout.Write(answers)));
        folder.Write(description, Encoding.UTF8.GetBytes(StarterDescription.Write(answers, layout)));
        var path = Path.GetRelativePath(Environment.CurrentDirectory, folder.Inside(description));
        terminal.Say($"{description} and {layout} written to {folder.Path}");
        terminal.Say($"next: harnessdraw draw {(path.Contains(' ', StringComparison.Ordinal) ? $"\"{path}\"" : path)}");
        return ExitCode.Done;
    }

    private static string Ask(Terminal terminal, Question question)
    {
        while (true)
        {
            terminal.Messages.Write($"{question.Text} ({string.Join(", ", question.Answers)}) [{question.Usual}]: ");
            var answer = terminal.Answers.ReadLine()?.Trim();
            if (string.IsNullOrEmpty(answer))
            {
                return question.Usual;
            }

            if (question.Answers.Contains(answer))
            {
                return answer;
            }

            terminal.Say($"'{DiagnosticText.Plain(answer)}' is none of them");
        }
    }

    private static string SafeName(string name) =>
        name == OutputNames.Safe(name) && name.Trim() == name && name.Length <= 100
            ? name
            : throw new WrongUsageException($"'{DiagnosticText.Plain(name)}' cannot name files; use letters, digits, '-' and blanks, and --out for another folder");

    private sealed record Question(string Option, string Text, ImmutableArray<string> Answers, string Usual, Func<StarterAnswers, string, StarterAnswers> Take);
}
