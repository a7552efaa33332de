using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Writing.CutList;

namespace HarnessDraw.Cli.Commands;

/// <summary>The arguments of commands that write lists as CSV: what parts the cells, the decimal mark, the mark at the beginning.</summary>
internal sealed class CsvArguments
{
    private static readonly ImmutableArray<string> Separators = ["comma", "semicolon", "tab"];
    private static readonly ImmutableArray<string> DecimalMarks = ["point", "comma"];

    private readonly Option<string> separator = ListedOption.One("--separator", "What parts the cells of CSV", Separators, "comma");
    private readonly Option<string> mark = ListedOption.One("--decimal", "Decimal mark in CSV", DecimalMarks, "point");
    private readonly Option<bool> bom = new("--mark") { Description = "Begin CSV with a UTF-8 mark, for spreadsheets that need one" };

    public void AddTo(Command command)
    {
        command.Add(separator);
        command.Add(mark);
        command.Add(bom);
    }

    public CsvOptions OptionsOf(ParseResult parsed) => new()
    {
        Separator = parsed.GetValue(separator) switch { "semicolon" => ';', "tab" => '\t', _ => ',' },
        DecimalMark = parsed.GetValue(mark) == "comma" ? ',' : '.',
        ByteOrderMark = parsed.GetValue(bom),
    };
}
