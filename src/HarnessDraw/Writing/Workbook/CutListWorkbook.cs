using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Fabrication.Cutting;
using HarnessDraw.Fabrication.Kits;
using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Model;
using HarnessDraw.Writing.Lists;

namespace HarnessDraw.Writing.Workbook;

/// <summary>Everything a fabricator cuts, crimps, labels and buys in one workbook, with a sheet that says which build and revision it is of.</summary>
public static class CutListWorkbook
{
    public static byte[] Write(FabricationOrder order, ReelStock? stock = null, PriceList? prices = null, ImmutableSortedDictionary<string, double>? times = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        var tables = Tables(order, stock ?? new(), prices, times);
        var harness = order.Plan.Harness;
        return WorkbookWriter.Write([ReadMe(order, tables), .. tables], $"{harness.Title}, {harness.Vehicle}, {Revision(harness)}, {order.Words}");
    }

    /// <summary>All lists of an order, in the order of the work.</summary>
    public static ImmutableArray<ListTable> Tables(FabricationOrder order, ReelStock stock, PriceList? prices = null, ImmutableSortedDictionary<string, double>? times = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        var reels = ReelPlanner.Plan(order, stock);
        var shown = order.Shown;
        return
        [
            .. CutListTables.Views.Select(v => CutListTables.Of(order, v, reels.CutFrom)),
            InsertionTables.Splices(shown),
            InsertionTables.Cables(order),
            InsertionTables.Builds(order.Plan),
            SupplyTables.Crimps(order),
            InsertionTables.Labels(order),
            SupplyTables.Bags(order),
            SupplyTables.Coverings(shown),
            SupplyTables.Reels(reels),
            SupplyTables.ReelNeeds(reels),
            SupplyTables.Purchase(PurchaseList.Of(order, reels, null, prices)),
            SupplyTables.Times(TimeEstimate.Of(order, times ?? ImmutableSortedDictionary<string, double>.Empty)),
        ];
    }

    private static ListTable ReadMe(FabricationOrder order, ImmutableArray<ListTable> tables)
    {
        var harness = order.Plan.Harness;
        (string What, string Says)[] rows =
        [
            ("harness", harness.Title), ("vehicle", harness.Vehicle), ("drawing number", harness.Drawing.Number ?? ""), ("revision", Revision(harness)),
            ("made from", $"source {harness.SourceHash}"), ("build", order.Words), ("harnesses", order.Harnesses.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            .. tables.Select(t => ($"sheet '{WorkbookWriter.SheetName(t)}'", t.Title)),
            ("lengths", "exact_mm is route_mm plus every for_..._mm once; cut_mm and cut_in are each rounded up once from it; empty means unknown"),
            ("tolerance", "longer_by_mm: a finished length may be so much longer, never shorter (IPC/WHMA-A-620 as quoted)"),
            ("pull test", "least_pull_N: commercial values as reprinted by terminal makers (the UL 486A set); test pieces, not harness wires"),
            ("caution", "Check colour and id, not colour alone. Seals, boots and sleeves go on before the crimp. An aid, not an approval: local codes win."),
        ];
        return new TableShape<(string What, string Says)>().Text("what", r => r.What).Text("says", r => r.Says).Table("read me", "What this workbook is", rows);
    }

    private static string Revision(Harness harness) => harness.Drawing.Revisions.IsDefaultOrEmpty ? "no revision" : $"revision {harness.Drawing.Revisions[^1].Rev}";
}
