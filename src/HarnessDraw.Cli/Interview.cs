using System.Collections.Immutable;
using HarnessDraw.Reading;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.Suspects;

namespace HarnessDraw.Cli;

/// <summary>Asks for the complaint, then proposes test after test. Every answer is added to the file of notes at once, so that it can be stopped and resumed.</summary>
internal sealed class Interview(Terminal terminal, Troubleshooter shooter, string file)
{
    private const string Stop = "stop";

    public int Run(ImmutableArray<VehicleNote> notes, ImmutableArray<VehicleNote> given)
    {
        Keep(given);
        terminal.Say($"Answers are kept in {DiagnosticText.Plain(file)}. 'stop' ends; the same command goes on later. An empty answer: it cannot be reached.");
        if (notes.IsEmpty && !Complaint(ref notes))
        {
            return ExitCode.Done;
        }

        while (true)
        {
            var diagnosis = shooter.Diagnose(notes);
            DiagnosticText.Say(terminal, diagnosis.Said, new DiskFiles());
            terminal.Say("");
            terminal.Messages.Write(DiagnosisText.Of(diagnosis));
            if (diagnosis.Next is not { } next)
            {
                return diagnosis.Groups.IsEmpty ? ExitCode.Problems : ExitCode.Done;
            }

            if (Ask(diagnosis.Bench, next) is not { } note)
            {
                return ExitCode.Done;
            }

            Keep([note]);
            notes = notes.Add(note);
        }
    }

    private bool Complaint(ref ImmutableArray<VehicleNote> notes)
    {
        terminal.Say("What is wrong, and what works? A line each ('dead: horns', 'works: main left', 'dim: ...', 'always on: ...'); an empty line when done.");
        while (terminal.Answers.ReadLine() is { } line && line.Trim() != Stop)
        {
            if (line.Trim().Length == 0)
            {
                return !notes.IsEmpty;
            }

            var (read, diagnostics) = NotesReader.Read(line, "answer");
            var said = diagnostics.IsEmpty ? shooter.Diagnose(read).Said : diagnostics;
            DiagnosticText.Say(terminal, said, new DiskFiles());
            if (!said.Any(d => d.Severity == Diagnostics.Severity.Error))
            {
                Keep(read);
                notes = notes.AddRange(read);
            }
        }

        return false;
    }

    /// <param name="bench">The vehicle in the states that were looked at: the test's state is one of them.</param>
    /// <param name="test">What is asked.</param>
    private VehicleNote? Ask(FaultBench bench, NextTest test)
    {
        var state = bench.States[test.State].Id;
        while (true)
        {
            terminal.Messages.Write(test.Kind switch { TestKind.Fuse => "holds or opens? ", TestKind.Look => "works, dim, dead or on? ", _ => "volts? " });
            var answer = terminal.Answers.ReadLine()?.Trim();
            if (answer is null or Stop)
            {
                return null;
            }

            switch (test.Kind)
            {
                case TestKind.Volts or TestKind.Lost when answer.Length == 0:
                    return new(NoteKind.Skip, bench.Points[test.Number].Name, state, 0);
                case TestKind.Volts or TestKind.Lost when NotesReader.TryVolts(answer, out var volts):
                    return new(test.Kind == TestKind.Lost ? NoteKind.Lost : NoteKind.Volts, bench.Points[test.Number].Name, state, volts);
                case TestKind.Fuse when answer is "holds" or "opens":
                    return new(NoteKind.Fuse, bench.Plan.Fuses[test.Number].Id, state, answer == "holds" ? 1 : 0);
                case TestKind.Look when answer is "works" or "dim" or "dead" or "on":
                    return new(answer switch { "works" => NoteKind.Works, "dim" => NoteKind.Dim, "dead" => NoteKind.Dead, _ => NoteKind.AlwaysOn }, bench.Loads[test.Number].Name, state, 0);
                default:
                    terminal.Say($"'{DiagnosticText.Plain(answer)}' is no answer to that; 'stop' ends");
                    break;
            }
        }
    }

    private void Keep(ImmutableArray<VehicleNote> notes)
    {
        if (!notes.IsEmpty)
        {
            File.AppendAllText(file, string.Concat(notes.Select(n => n + "\n")));
        }
    }
}
