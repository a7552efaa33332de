using System.CommandLine;
using System.Globalization;
using System.Text;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;
using HarnessDraw.Units;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw.Cli.Commands;

/// <summary>'record': writes what was measured into the file beside a description, where later runs use it.</summary>
internal static class RecordCommand
{
    public static Command Make(Terminal terminal)
    {
        var file = CommonArguments.File();
        var lengths = Measured("--length", "A wire as it was cut: 'E07=1240 mm'");
        var ways = Measured("--way", "A path of the layout as measured: 'battery tray > starter=820 mm'");
        var volts = Measured("--volts", "Volts at a pin in a state, to the grounded pole: 'headlamp left.56b=12.3 V in running'");
        var ohms = Measured("--ohms", "A wire read from end to end: 'E07=41 mohm'");
        var output = CommonArguments.Out("usual: beside the description, where later runs find it");
        var command = new ExampledCommand(
            "record",
            "Write down lengths and readings as built; later runs use the lengths and hold the readings against what is expected",
            "harnessdraw record examples/brackmere-six.yaml --length 'E01=1240 mm' --out bench",
            "harnessdraw record examples/brackmere-six.yaml --volts 'headlamp left.56b=12.3 V in night and rain' --ohms 'E01=35 mohm' --out bench")
        {
            file, lengths, ways, volts, ohms, output,
        };
        command.SetAction(parsed =>
        {
            var description = parsed.GetRequiredValue(file);
            if (PlannedFile.Read(terminal, description, RuleSettings.BuiltIn) is not { } planned)
            {
                return ExitCode.Problems;
            }

            var newer = new AsBuilt(
                [.. All(parsed, lengths).Select(t => (t.Name, Value: t.Number("--length", QuantityKind.Length))).Select(l => new MeasuredWire(l.Name, l.Value, null))],
                [.. All(parsed, ways).Select(t => Way(t))],
                [.. All(parsed, volts).Select(t => Volts(t))],
                [.. All(parsed, ohms).Select(t => new ResistanceRead(t.Name, t.Number("--ohms", QuantityKind.Resistance) * 1000, null))]);
            if (newer is { Wires: [], Runs: [], Volts: [], Resistances: [] })
            {
                throw new WrongUsageException("nothing is measured: name a --length, --way, --volts or --ohms");
            }

            return Write(terminal, planned.Plan, newer, new OutputFolder(parsed.GetValue(output) ?? System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(description))!));
        });
        return command;
    }

    private static int Write(Terminal terminal, Planning.Plan plan, AsBuilt newer, OutputFolder folder)
    {
        var ids = plan.Wires.Select(w => w.Id).ToArray();
        foreach (var wire in newer.Wires.Select(w => w.Wire).Concat(newer.Resistances.Select(r => r.Wire)).Where(w => !ids.Contains(w)))
        {
            throw new WrongUsageException($"there is no wire '{DiagnosticText.Plain(wire)}'{(NearestName.Hint(wire, ids) is { } hint ? $"; {hint}" : "")}");
        }

        var name = OutputNames.Safe(plan.Harness.Id) + HarnessCompiler.AsBuiltEnding;
        EnsureNothingIsLost(folder.Inside(name));
        var content = AsBuiltCsvWriter.Write(plan.Harness.Measured.With(newer));

        // what is written must be read again: names of places, pins and states are checked by the reader
        var again = AsBuiltReader.Read(name, new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { [name] = Encoding.UTF8.GetString(content) }), plan.Harness);
        if (again.Failed)
        {
            foreach (var wrong in again.Diagnostics)
            {
                terminal.SayError($"{DiagnosticText.Plain(wrong.Message)}{(wrong.Hint is null ? "" : $"; {DiagnosticText.Plain(wrong.Hint)}")}");
            }

            terminal.Say("nothing is written");
            return ExitCode.Problems;
        }

        folder.Write(name, content);
        terminal.Say($"{name} written to {DiagnosticText.Plain(folder.Path)}");
        return ExitCode.Done;
    }

    // a file with columns of the owner's own is left alone
    private static void EnsureNothingIsLost(string path)
    {
        if (!File.Exists(path))
        {
            return;
        }

        var grid = CsvGridReader.Read(path, File.ReadAllText(path), new DiagnosticBag());
        if (grid?.Heads.Cells.FirstOrDefault(c => c.Text.Trim().Length > 0 && !AsBuilt.Columns.Add("cut_mm").Contains(c.Text.Trim())) is { } own)
        {
            throw new IOException($"'{path}' has a column '{own.Text}' that would be lost; write the row into it by hand, or take the column out");
        }
    }

    private static Option<string[]> Measured(string name, string description) => new(name) { Description = description + "; may be given several times", HelpName = "NAME=VALUE" };

    private static IEnumerable<Told> All(ParseResult parsed, Option<string[]> option) => (parsed.GetValue(option) ?? []).Select(t => Told.Of(option.Name, t));

    private static MeasuredRun Way(Told told) => told.Name.Split('>', StringSplitOptions.TrimEntries) is [var from, var to]
        ? new(from, to, told.Number("--way", QuantityKind.Length), null)
        : throw new WrongUsageException($"--way: '{DiagnosticText.Plain(told.Name)}' is not of the form 'PLACE > PLACE=LENGTH'");

    private static VoltsRead Volts(Told told)
    {
        var at = told.Value.IndexOf(" in ", StringComparison.Ordinal);
        var text = at < 0 ? "" : told.Value[..at].Trim();
        var factor = text.EndsWith("mV", StringComparison.Ordinal) ? 0.001 : 1;
        return at > 0 && text.EndsWith('V') && double.TryParse(text.TrimEnd('V', 'm').Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
            ? new(told.Name, told.Value[(at + 4)..].Trim(), number * factor, null)
            : throw new WrongUsageException($"--volts: '{DiagnosticText.Plain(told.Value)}' is not of the form '12.3 V in STATE'");
    }

    private sealed record Told(string Name, string Value)
    {
        public static Told Of(string option, string text) => text.Split('=', 2, StringSplitOptions.TrimEntries) is [{ Length: > 0 } name, { Length: > 0 } value]
            ? new(name, value)
            : throw new WrongUsageException($"{option}: '{DiagnosticText.Plain(text)}' is not of the form NAME=VALUE");

        public double Number(string option, QuantityKind kind) => Quantity.TryParse(Value, kind, out var quantity, out var problem) && quantity.Value > 0
            ? quantity.Value
            : throw new WrongUsageException($"{option}: '{DiagnosticText.Plain(Value)}' is not {kind.Title} in {kind.UnitsInWords()}{(problem is null ? "" : $": {problem}")}");
    }
}
