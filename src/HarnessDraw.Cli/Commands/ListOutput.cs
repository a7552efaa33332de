using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Writing;
using HarnessDraw.Writing.CutList;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Cli.Commands;

/// <summary>Puts lists out: as one JSON, or each as a CSV file of its own (into a folder; a single list may go to the output).</summary>
internal static class ListOutput
{
    public static readonly ImmutableArray<string> Formats = ["csv", "json"];

    public static void Put(Terminal terminal, string? folder, string format, CsvOptions csv, FabricationOrder order, string what, ImmutableArray<ListTable> tables)
    {
        var name = OutputNames.Safe(order.Plan.Harness.Id);
        if (format == "json")
        {
            Results.Put(terminal, folder, $"{name}.{what}.json", ListJsonWriter.Write(order.Plan.Harness, order.Words, tables));
            return;
        }

        foreach (var table in folder is null ? tables[..1] : tables)
        {
            Results.Put(terminal, folder, $"{name}.{table.Name.Replace(' ', '-')}.csv", ListCsvWriter.Write(table, csv));
        }
    }
}
