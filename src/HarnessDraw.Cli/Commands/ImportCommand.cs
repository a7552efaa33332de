using System.Collections.Immutable;
using System.CommandLine;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Import;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Imported;

namespace HarnessDraw.Cli.Commands;

/// <summary>'import': a from-to wire list becomes a description and a layout to go on from.</summary>
internal static class ImportCommand
{
    private const long LargestFile = 20 * 1024 * 1024;

    public static Command Make(Terminal terminal)
    {
        var file = new Argument<string>("LIST") { Description = "The wire list: .csv (comma, semicolon or tab) or .xlsx" };
        var columns = new Option<string[]>("--columns") { Description = $"What a column is, where its head does not say: 'from=End 1'. Known: {string.Join(", ", WireListReader.Keys)}", HelpName = "KEY=HEAD" };
        var map = new Option<string?>("--map") { Description = "The same from a small file, KEY=HEAD a line", HelpName = "FILE" };
        var yes = new Option<bool>("--yes") { Description = "Take the columns as they are understood, without asking" };
        var output = CommonArguments.Out("usual: this folder");
        var command = new ExampledCommand(
            "import",
            "Make a description and a layout from a from-to wire list; ids are kept, and what found no place is said",
            "harnessdraw import examples/wire-list.csv --out bench")
        {
            file, columns, map, yes, output,
        };
        command.SetAction(parsed =>
        {
            var path = parsed.GetRequiredValue(file);
            var bag = new DiagnosticBag();
            var grid = Grid(path, bag);
            var read = grid is null ? null : WireListReader.Read(grid, Told([.. Mapped(parsed.GetValue(map)), .. parsed.GetValue(columns) ?? []]));
            DiagnosticText.Say(terminal, [.. bag.ToSorted(), .. read?.Diagnostics ?? [], .. read?.Value?.NotPlaced ?? []], new DiskFiles());
            if (read is null || read.Failed || bag.HasErrors)
            {
                terminal.Say("nothing is written");
                return ExitCode.Problems;
            }

            var list = read.Value!;
            foreach (var column in list.Columns)
            {
                terminal.Say($"taken as {DiagnosticText.Plain(column)}");
            }

            if (!parsed.GetValue(yes) && parsed.GetValue(map) is null && parsed.GetValue(columns) is null or [] && !Confirmed(terminal))
            {
                terminal.Say("nothing is written; name the columns with --columns or --map");
                return ExitCode.Problems;
            }

            return Write(terminal, OutputNames.Safe(Path.GetFileNameWithoutExtension(path)), list, new OutputFolder(parsed.GetValue(output) ?? "."));
        });
        return command;
    }

    // where nobody can be asked, what was said is all there is
    private static bool Confirmed(Terminal terminal)
    {
        if (!terminal.CanAsk)
        {
            return true;
        }

        terminal.Messages.Write("Are the columns understood right? (yes, no) [yes]: ");
        return terminal.Answers.ReadLine()?.Trim() is null or "" or "yes" or "y";
    }

    private static IEnumerable<string> Mapped(string? file) =>
        file is null ? []
            : File.Exists(file) ? File.ReadLines(file).Take(200).Select(l => l.Trim()).Where(l => l.Length > 0 && l[0] != '#')
            : throw new IOException($"there is no file '{file}'{NearFiles.Hint(file)}");

    private static int Write(Terminal terminal, string name, Model.WireList list, OutputFolder folder)
    {
        var (description, layout) = ($"{name}.yaml", $"{name}-layout.yaml");
        foreach (var file in new[] { description, layout }.Where(f => Path.Exists(folder.Inside(f))))
        {
            throw new IOException($"'{folder.Inside(file)}' is already there; nothing is overwritten");
        }

        folder.Write(layout, Encoding.UTF8.GetBytes(ImportedDescription.Layout(list, name)));
        folder.Write(description, Encoding.UTF8.GetBytes(ImportedDescription.Description(list, name, layout)));
        terminal.Say($"{description} and {layout} written to {DiagnosticText.Plain(folder.Path)}: {list.Wires.Length} wires, {list.NotPlaced.Length} rows or values without a place");
        return ExitCode.Done;
    }

    private static CellGrid? Grid(string path, DiagnosticBag bag)
    {
        if (!File.Exists(path))
        {
            throw new IOException($"there is no file '{path}'{NearFiles.Hint(path)}");
        }

        if (path.EndsWith(".xlsx", StringComparison.OrdinalIgnoreCase))
        {
            return new FileInfo(path).Length > LargestFile
                ? throw new IOException($"'{path}' is larger than 20 MB; a wire list is not")
                : WorkbookGridReader.Read(path, File.ReadAllBytes(path), bag);
        }

        return new InputFiles(new DiskFiles(), bag).Read(path, new(path, 1, 1)) is { } text ? CsvGridReader.Read(path, text, bag) : null;
    }

    private static ImmutableDictionary<string, string> Told(string[] columns)
    {
        var told = ImmutableDictionary<string, string>.Empty;
        foreach (var column in columns)
        {
            told = column.Split('=', 2, StringSplitOptions.TrimEntries) is [var key, var head] && WireListReader.Keys.Contains(key)
                ? told.SetItem(key, head)
                : throw new WrongUsageException($"--columns: '{DiagnosticText.Plain(column)}' is not of the form KEY=HEAD with one of {string.Join(", ", WireListReader.Keys)}");
        }

        return told;
    }
}
