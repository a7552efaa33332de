using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Units;

namespace HarnessDraw.Writing.Lists;

/// <summary>The cut list in its views: the same rows and columns in the order that a bench asks for, one row a physical wire.</summary>
public static class CutListTables
{
    /// <summary>Names of the views, as a user asks for them.</summary>
    public static readonly ImmutableArray<string> Views = ["reel", "branch", "connector", "wire"];

    /// <summary>The heads of a view whose rows are wires.</summary>
    public static ImmutableArray<string> Heads => Shape(_ => 1, _ => null, _ => null, []).Heads;

    /// <param name="order">What is made.</param>
    /// <param name="view">One of <see cref="Views"/>.</param>
    /// <param name="cutFrom">What reels or offcuts each wire is cut from, when that was worked out.</param>
    public static ListTable Of(FabricationOrder order, string view, ImmutableDictionary<string, string>? cutFrom = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        var plan = order.Shown;
        if (view == "connector")
        {
            return InsertionTables.ByConnector(plan);
        }

        var (rows, title) = view switch
        {
            "reel" => (CutRows.ByReel(plan), "Cut list by reel, the longest first"),
            "branch" => (CutRows.ByBranch(plan), "Cut list by branch, in the order of laying"),
            "wire" => (CutRows.ByWire(plan), "Cut list by wire"),
            _ => throw new ArgumentException($"no view '{view}'", nameof(view)),
        };
        var facts = new WireFactFinder(plan);
        var lay = LayOrder(plan, facts);
        var laid = BundlePosition.Of(plan);
        var shape = Shape(w => order.QuantityOf(w.Builds), w => cutFrom?.GetValueOrDefault(w.Id), new SpliceParts(plan).Of, CableNotes(plan));
        return shape.Table($"by {view}", title, rows.Select(r => new RowFacts(r, facts.Of(r.Wire), AllowanceShares.Of(r.Wire), lay[r.Wire.Id], laid.GetValueOrDefault(r.Wire.Id))));
    }

    /// <summary>The number of each wire in the laying order of its branch.</summary>
    private static Dictionary<string, int> LayOrder(Plan plan, WireFactFinder facts)
    {
        var order = new Dictionary<string, int>(StringComparer.Ordinal);
        var next = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var row in CutRows.ByBranch(plan))
        {
            var branch = facts.BranchOf(row.Wire) ?? "";
            order[row.Wire.Id] = next[branch] = next.GetValueOrDefault(branch) + 1;
        }

        return order;
    }

    /// <summary>What is to be done with each cable, by its id; its conductors say it in their rows.</summary>
    private static Dictionary<string, string> CableNotes(Plan plan) =>
        CableRows.Of(plan).ToDictionary(c => c.Cable.Id, c => $"cable {c.Cable.Id}: {CableWords.Of(c, mm => $"{NumberText.Brief(mm)} mm")}", StringComparer.Ordinal);

    private static TableShape<RowFacts> Shape(Func<Wire, int> quantity, Func<Wire, string?> cutFrom, Func<WireEnd, string?> joinedBy, Dictionary<string, string> cables)
    {
        var shape = new TableShape<RowFacts>()
            .Number("no", 0, x => x.Row.Number)
            .Text("wire", x => x.Wire.Id)
            .Text("only_with", x => x.Wire.Builds.ToString())
            .Text("function", x => x.Wire.Circuit)
            .Text("net", x => x.Wire.Net)
            .Text("branch", x => x.Facts.Branch)
            .Number("lay_order", 0, x => x.LayOrder)
            .Text("bundle_position", x => x.Laid)
            .Text("colour", x => x.Wire.Colour)
            .Text("colour_words", x => WireColour.TryParse(x.Wire.Colour)?.Words ?? x.Wire.Colour)
            .Number("size_mm2", 3, x => x.Wire.AreaMm2)
            .Text("size_awg", x => x.Wire.Awg)
            .Text("not_thinner_than_B258", x => GaugeEquivalent.NotThinner(x.Wire.AreaMm2))
            .Text("wire_type", x => x.Wire.WireType)
            .Number("wire_max_degC", 1, x => x.Facts.MaxC)
            .Number("outside_mm", 2, x => x.Wire.OutsideMm)
            .Number("cut_mm", 1, x => x.Wire.CutLengthMm)
            .Number("cut_in", 2, x => x.Row.CutIn)
            .Number("longer_by_mm", 0, x => x.Wire.CutLengthMm is { } cutMm ? LengthTolerance.PlusMm(cutMm) : null)
            .Number("exact_mm", 1, x => x.Row.ExactMm)
            .Number("route_mm", 1, x => x.Wire.PathLengthMm)
            .Number("allowance_mm", 1, x => x.Row.AllowanceMm)
            .Text("allowance_for", x => string.Join("; ", x.Wire.Allowances.Select(a => $"{a.What} {NumberText.Brief(Math.Round(a.LengthMm, 1))} mm")));
        foreach (var kind in AllowanceShares.Kinds)
        {
            shape.Number($"for_{kind.Replace(' ', '_').Replace('-', '_')}_mm", 1, x => x.Shares[kind]);
        }

        return shape
            .Text("length_known", x => x.Wire.CutLengthMm is null ? "unknown" : x.Wire.Estimated ? "estimated" : "measured")
            .With(EndShape("end_a", joinedBy), x => x.Wire.From)
            .With(EndShape("end_b", joinedBy), x => x.Wire.To)
            .Text("splice", x => string.Join("; ", x.Facts.Splices))
            .Number("splice_station_mm", 0, x => x.Facts.SpliceStationMm)
            .Text("twisted_with", x => x.Wire.Cable)
            .Text("label_a", x => $"{x.Wire.Id} {x.Wire.From}")
            .Text("label_b", x => $"{x.Wire.Id} {x.Wire.To}")
            .Text("fuse", x => string.Join("; ", x.Wire.ProtectedBy))
            .Text("segments", x => string.Join("; ", x.Wire.Segments))
            .Text("worst_state", x => x.Wire.Worst?.State)
            .Number("worst_current_A", 3, x => x.Wire.Worst?.CurrentA)
            .Number("worst_drop_V", 3, x => x.Wire.Worst?.DropV)
            .Number("worst_conductor_degC", 1, x => x.Wire.Worst?.TemperatureC)
            .Number("ampacity_A", 2, x => x.Wire.AmpacityA)
            .Text("size_decided_by", x => x.Wire.DecidedBy)
            .Number("size_margin_percent", 1, x => x.Wire.Margin * 100)
            .Text("given_by_hand", x => x.Wire.ByHand ? "yes" : "no")
            .Number("qty", 0, x => quantity(x.Wire))
            .Text("cut_from", x => cutFrom(x.Wire))
            .Ticks("tick_cut", "tick_strip_a", "tick_crimp_a", "tick_strip_b", "tick_crimp_b", "tick_tested")
            .Text("note", x => string.Join("; ", new[] { x.Shares["cut at the car"] > 0 ? "LONG: cut at the car" : null, cables.GetValueOrDefault(x.Wire.Cable ?? "") }.OfType<string>()));
    }

    private static TableShape<WireEnd> EndShape(string prefix, Func<WireEnd, string?> joinedBy) => new TableShape<WireEnd>()
        .Text(prefix, e => e.At)
        .Text(prefix + "_cavity", e => e.Pin)
        .Text(prefix + "_terminal", e => e.Terminal ?? (e.IsSplice ? joinedBy(e) ?? "splice" : null))
        .Text(prefix + "_seal", e => e.Seal)
        .Number(prefix + "_strip_mm", 1, e => e.StripMm)
        .Text(prefix + "_boot", e => string.Join("; ", e.ThreadOnFirst.Where(IsBoot)))
        .Text(prefix + "_thread_on_first", e => string.Join("; ", e.ThreadOnFirst));

    private static bool IsBoot(string item) => item.Contains("boot", StringComparison.OrdinalIgnoreCase);

    private sealed record RowFacts(CutRow Row, WireFacts Facts, AllowanceShares Shares, int LayOrder, string? Laid)
    {
        public Wire Wire => Row.Wire;
    }
}
