using HarnessDraw.Model;
using HarnessDraw.Writing.CutList;

namespace HarnessDraw.Writing.Frozen;

/// <summary>NAME.as-built.csv, as it is read again: a measurement a row.</summary>
public static class AsBuiltCsvWriter
{
    public static byte[] Write(AsBuilt built)
    {
        ArgumentNullException.ThrowIfNull(built);
        using var csv = new CsvBuilder(new());
        foreach (var head in AsBuilt.Columns)
        {
            csv.Text(head);
        }

        csv.EndLine();
        foreach (var w in built.Wires)
        {
            csv.Text(w.Wire).Text("").Text("").Number(w.CutMm, 1).Text("").Text("").Text("").Text("").EndLine();
        }

        foreach (var r in built.Runs)
        {
            csv.Text("").Text(r.From).Text(r.To).Number(r.LengthMm, 1).Text("").Text("").Text("").Text("").EndLine();
        }

        foreach (var v in built.Volts)
        {
            csv.Text("").Text("").Text("").Text("").Text(v.Pin).Text(v.State).Number(v.Volts, 3).Text("").EndLine();
        }

        foreach (var r in built.Resistances)
        {
            csv.Text(r.Wire).Text("").Text("").Text("").Text("").Text("").Text("").Number(r.Milliohm, 2).EndLine();
        }

        return csv.ToBytes();
    }
}
