using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Suspects;

namespace HarnessDraw.Cli.Commands;

/// <summary>'diagnose': from what works, is dead, dim or always on, and readings, to what is likely wrong and the next test.</summary>
internal static class DiagnoseCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        ImmutableArray<(NoteKind Kind, Option<string[]> Option)> noted =
        [
            (NoteKind.Dead, Noted("--dead", "A load that does not work: a load, thing or circuit, with '@ STATE' when it is so in one state")),
            (NoteKind.Dim, Noted("--dim", "A load that is dim, slow or weak")),
            (NoteKind.AlwaysOn, Noted("--always-on", "A load that is on though it should be off")),
            (NoteKind.Works, Noted("--works", "A load that works as it should")),
            (NoteKind.Volts, Noted("--volts", "A reading against the battery's grounded post: 'POINT @ STATE = 11.9 V'")),
            (NoteKind.Lost, Noted("--lost", "A reading from the battery's live post to a point: 'POINT @ STATE = 0.4 V'")),
            (NoteKind.Fuse, Noted("--fuse", "A renewed fuse: 'K11 = holds' or 'K11 = opens'")),
        ];
        var notes = new Option<string?>("--notes") { Description = "A file of notes, a line each ('dead: headlamp left @ night'); an interview goes on with it and adds to it", HelpName = "FILE" };
        var good = new Option<string?>("--good") { Description = "Notes with the readings of the commissioning, to compare with", HelpName = "FILE" };
        var ask = new Option<bool>("--ask") { Description = "Interview: proposes test after test and asks for the readings; needs --notes, can be stopped and resumed" };
        var fitted = new Option<bool>("--just-fitted") { Description = "The harness was just fitted: swapped cavities, terminals not seated and missing fuses come first" };
        var worked = new Option<string?>("--worked-on") { Description = "Thing, wire, circuit or place that was worked on lately: ten times likelier", HelpName = "NAME" };
        var build = CommonArguments.Build();
        var format = ListedOption.One("--format", "Form of the result", ["text", "json"], "text");
        var symptoms = new Option<bool>("--symptoms") { Description = "No diagnosis: the whole symptom table as JSON, what the driver sees of every single fault (the sheet is 'draw --sheets symptom-table')" };
        var output = CommonArguments.Out("usual: the result goes to standard output");
        var command = new ExampledCommand(
            "diagnose",
            "Find a fault: what is likely wrong after what was noted, why, and which test tells most a minute",
            "harnessdraw diagnose examples/brackmere-six.yaml --dead 'dipped left' --works 'main left' --works 'dipped right'",
            "harnessdraw diagnose examples/brackmere-six.yaml --dead horns --volts 'K19 out @ signalling = 12.4 V'",
            "harnessdraw diagnose examples/brackmere-six.yaml --symptoms")
        {
            file, notes, good, ask, fitted, worked, build, format, symptoms, output,
        };
        foreach (var (_, option) in noted)
        {
            command.Add(option);
        }

        command.SetAction(parsed =>
        {
            if (parsed.GetValue(ask) && (parsed.GetValue(notes) is null || !terminal.CanAsk))
            {
                throw new WrongUsageException(terminal.CanAsk ? "--ask needs --notes FILE, where the answers are kept" : "--ask needs a terminal to ask at; give notes with --notes or as options");
            }

            var given = Given(parsed, noted);
            var kept = parsed.GetValue(notes) is { } path && (File.Exists(path) || !parsed.GetValue(ask)) ? FromFile(terminal, path) : [];
            var then = parsed.GetValue(good) is { } goodPath ? FromFile(terminal, goodPath) : [];
            var planned = kept is null || then is null ? null : PlannedFile.Read(terminal, parsed.GetRequiredValue(file), RuleSettings.BuiltIn);
            if (planned is null)
            {
                return ExitCode.Problems;
            }

            var weights = (parsed.GetValue(fitted) ? FaultWeights.JustFitted : FaultWeights.InService) with { WorkedOn = parsed.GetValue(worked) };
            var choice = CommonArguments.BuildOf(parsed, build, planned.Plan);
            if (parsed.GetValue(symptoms))
            {
                Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(planned.Plan.Harness.Id)}.symptoms.json", SymptomJson.Of(planned.Plan, SymptomTable.Of(planned.Plan, choice)));
                return ExitCode.Done;
            }

            var shooter = new Troubleshooter(planned.Plan, choice, weights);
            ImmutableArray<VehicleNote> all = [.. kept!.Value, .. given];
            if (parsed.GetValue(ask))
            {
                return new Interview(terminal, shooter, parsed.GetValue(notes)!).Run(all, given);
            }

            var diagnosis = shooter.Diagnose(all);
            DiagnosticText.Say(terminal, diagnosis.Said, new DiskFiles());
            if (diagnosis.Said.Any(d => d.Severity == Severity.Error))
            {
                return ExitCode.Problems;
            }

            var json = parsed.GetValue(format) == "json";
            var result = json ? DiagnosisJson.Of(diagnosis) : Encoding.UTF8.GetBytes(Changes(then!.Value, all) + DiagnosisText.Of(diagnosis));
            Results.Put(terminal, parsed.GetValue(output), $"{OutputNames.Safe(planned.Plan.Harness.Id)}.diagnosis.{(json ? "json" : "txt")}", result);
            return ExitCode.Done;
        });
        return command;
    }

    private static Option<string[]> Noted(string name, string description) => new(name) { Description = description, HelpName = "NOTE", AllowMultipleArgumentsPerToken = false };

    private static ImmutableArray<VehicleNote> Given(ParseResult parsed, ImmutableArray<(NoteKind Kind, Option<string[]> Option)> noted) =>
    [
        .. noted.SelectMany(n => (parsed.GetValue(n.Option) ?? []).Select(text =>
        {
            var (note, problem) = NotesReader.One(n.Kind, text);
            return note ?? throw new WrongUsageException($"{n.Option.Name}: {problem}");
        })),
    ];

    private static ImmutableArray<VehicleNote>? FromFile(Terminal terminal, string path)
    {
        if (!File.Exists(path))
        {
            throw new IOException($"there is no file '{path}'{NearFiles.Hint(path)}");
        }

        var (notes, diagnostics) = NotesReader.Read(File.ReadAllText(path), path);
        DiagnosticText.Say(terminal, diagnostics, new DiskFiles());
        return diagnostics.IsEmpty ? notes : null;
    }

    private static string Changes(ImmutableArray<VehicleNote> then, ImmutableArray<VehicleNote> now)
    {
        if (then.IsEmpty)
        {
            return "";
        }

        var changed = GoodReadings.Changed(then, now);
        var text = new StringBuilder(changed.IsEmpty ? "No reading has changed since the commissioning by more than a meter is off.\n" : "Changed since the commissioning, most first:\n");
        foreach (var c in changed)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {c.Now.Name} ({c.Now.State}): {c.Then.Value:0.00} V then, {c.Now.Value:0.00} V now\n");
        }

        return text.Append('\n').ToString();
    }
}
