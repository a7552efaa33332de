using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Writing.CutList;

/// <summary>
/// The cut list of everything as CSV: one row a physical wire, by reel and longest first, units in the heads, numbers plain, unknown values empty.
/// </summary>
public static class CutListCsvWriter
{
    /// <summary>The heads of the file in order.</summary>
    public static ImmutableArray<string> Heads => CutListTables.Heads;

    /// <summary>The whole file; the same plan and options give the same bytes.</summary>
    public static byte[] Write(Plan plan, CsvOptions? options = null) => ListCsvWriter.Write(CutListTables.Of(FabricationOrder.Everything(plan), "reel"), options);
}
