using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>One of several charts of a harness: its number, how many there are, and the branches each of them shows, the fullest first.</summary>
internal sealed record ChartPart(int Number, ImmutableArray<ImmutableArray<string>> Branches)
{
    public int Of => Branches.Length;
}

/// <summary>
/// Shares a harness that no sheet holds among several charts. A circuit stays whole on one chart, so every wire is followed from end to end without turning a page;
/// circuits whose loads are neighbours round the tree keep together, and the cut falls where fewest loads are divided.
/// </summary>
internal sealed partial record ChartParts
{
    // how far a cut may move from an even share to divide fewer loads, as a part of a share
    private const double Play = 0.3;

    // the same where charts are filled one after the other
    private const double LittlePlay = 0.05;
    private readonly WallChartSubject whole;

    // by card in ascending order, and by row of the pin table: numbers of the circuits that have wires there
    private readonly Dictionary<string, int[]> cards;
    private readonly int[] pins;
    private readonly List<string> circuits;
    private readonly int[] rows;
    private readonly int[] rowsBefore;
    private readonly int[] divided;

    // by circuit, in the order of the circuits: numbers of its wires, and for every end of one the branch of the card it is on
    private readonly int[][] wires;
    private readonly List<string>[] ends;
    private readonly Dictionary<(int From, int To), ImmutableArray<string>> branches = [];

    // the segments of each wire, order of splices and segments in the plan, the segment towards the root from a place
    private readonly int[][] segmentsOf;
    private readonly Dictionary<string, int> spliceNumbers;
    private readonly Dictionary<string, int> segmentNumbers;
    private readonly Dictionary<string, int> above;

    /// <param name="whole">The chart of the whole harness.</param>
    /// <param name="cardOrder">Its cards as they follow each other round the tree.</param>
    /// <param name="before">The charts of before, where circuits stay on theirs and new ones join their neighbours; null: there are none.</param>
    public ChartParts(WallChartSubject whole, IReadOnlyList<int> cardOrder, FrozenChart? before = null)
    {
        this.whole = whole;
        var rank = new int[whole.Cards.Count];
        for (var i = 0; i < cardOrder.Count; i++)
        {
            rank[cardOrder[i]] = i;
        }

        var home = new Dictionary<string, (int Rows, int Rank)>(StringComparer.Ordinal);
        for (var c = 0; c < rank.Length; c++)
        {
            var here = (Rows: WiresOf(whole.Cards[c]).Count(), Rank: rank[c]);
            foreach (var wire in WiresOf(whole.Cards[c]))
            {
                home[wire.Circuit] = home.TryGetValue(wire.Circuit, out var best) && best.CompareTo(here) < 0 ? best : here;
            }
        }

        var plan = whole.Plan;
        var byCircuit = plan.Wires.Select((w, i) => (w.Circuit, i)).GroupBy(w => w.Circuit, w => w.i, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToArray(), StringComparer.Ordinal);
        circuits = [.. byCircuit.Keys.OrderBy(c => home.TryGetValue(c, out var at) ? at.Rank : -1).ThenBy(c => c, StringComparer.Ordinal)];
        (circuits, KeptCuts) = before is null ? (circuits, null) : AsBefore(circuits, before);
        wires = [.. circuits.Select(c => byCircuit[c])];
        rows = [.. wires.Select(w => w.Length)];
        rowsBefore = new int[rows.Length + 1];
        for (var i = 0; i < rows.Length; i++)
        {
            rowsBefore[i + 1] = rowsBefore[i] + rows[i];
        }

        var at = circuits.Select((c, i) => (c, i)).ToDictionary(c => c.c, c => c.i, StringComparer.Ordinal);
        cards = whole.Cards.ToDictionary(c => c.Key, c => WiresOf(c).Select(w => at[w.Circuit]).Order().ToArray(), StringComparer.Ordinal);
        pins = [.. whole.Pins.Select(p => at[p.Wire.Circuit])];
        divided = Divided();
        var branchOf = whole.Cards.SelectMany(card => BranchOf(card.Node) is { } branch ? WiresOf(card).Select(w => (w.Circuit, branch)) : []).ToLookup(e => e.Circuit, e => e.branch, StringComparer.Ordinal);
        ends = [.. circuits.Select(c => branchOf[c].ToList())];
        spliceNumbers = plan.Splices.Select((x, i) => (x.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        segmentNumbers = plan.Tree.Segments.Select((x, i) => (x.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        segmentsOf = SegmentsOf(plan);
        above = plan.Tree.Segments.Select((x, i) => (x.To, i)).ToDictionary(x => x.To, x => x.i, StringComparer.Ordinal);
    }

    /// <summary>True when named places where no wire of the chart ends or parts are left out: even one circuit may pass more of them than a sheet is wide.</summary>
    public bool IsBare { get; init; }

    /// <summary>The most parts that make sense: one circuit a chart.</summary>
    public int Most => circuits.Count;

    /// <summary>Wires of the circuits from one place between two to another.</summary>
    public int Rows(int from, int to) => rowsBefore[to] - rowsBefore[from];

    /// <summary>One of the charts that cuts between circuits make (each cut: how many circuits lie before it): from 0.</summary>
    public (WallChartSubject Subject, ChartPart Part) At(IReadOnlyList<int> cuts, int part) => Share(cuts)[part]();

    /// <summary>The subjects of the charts that cuts between circuits make; each is made when it is asked for.</summary>
    public ImmutableArray<Func<(WallChartSubject Subject, ChartPart Part)>> Share(IReadOnlyList<int> cuts)
    {
        int[] bounds = [0, .. cuts.Select(c => Math.Min(c, circuits.Count)), circuits.Count];
        var shown = Enumerable.Range(0, cuts.Count + 1).Select(n => Branches((bounds[n], bounds[n + 1]))).ToImmutableArray();
        return [.. Enumerable.Range(0, cuts.Count + 1).Select<int, Func<(WallChartSubject, ChartPart)>>(n => () => (Subject(bounds, n), new ChartPart(n + 1, shown)))];
    }

    /// <summary>Where a chart ends that begins at a place and takes so many wires at the most, dividing few loads; at least one circuit.</summary>
    public int End(int from, double most)
    {
        if (Rows(from, circuits.Count) <= most)
        {
            return circuits.Count;
        }

        var best = from + 1;
        for (var i = from + 1; i < circuits.Count && Rows(from, i) <= most; i++)
        {
            best = Rows(from, i) < most * (1 - LittlePlay) || divided[i] <= divided[best] ? i : best;
        }

        return best;
    }

    /// <summary>Where to halve what lies between two cuts, dividing few loads; null: a single circuit.</summary>
    public int? Middle(int from, int to)
    {
        if (to - from < 2)
        {
            return null;
        }

        var want = Rows(from, to) / 2.0;
        var best = (Loads: int.MaxValue, Off: double.MaxValue, At: from + 1);
        for (var i = from + 1; i < to; i++)
        {
            var off = Math.Abs(Rows(from, i) - want);
            var here = (Loads: off <= Play * want ? divided[i] : int.MaxValue, off, i);
            best = here.CompareTo(best) < 0 ? here : best;
        }

        return best.At;
    }

    private static IEnumerable<Wire> WiresOf(ChartCardSubject card) => card.Rows.Values.Select(r => r.Wire).Concat(card.Stubs.Select(s => s.Wire));

    private int[][] SegmentsOf(Plan plan)
    {
        var found = new int[plan.Wires.Length][];
        var lastOn = new int[plan.Tree.Segments.Length];
        for (var w = 0; w < found.Length; w++)
        {
            var on = new List<int>(plan.Wires[w].Segments.Length);
            foreach (var id in plan.Wires[w].Segments)
            {
                var segment = segmentNumbers[id];
                if (lastOn[segment] != w + 1)
                {
                    lastOn[segment] = w + 1;
                    on.Add(segment);
                }
            }

            found[w] = [.. on];
        }

        return found;
    }

    // loads with wires on both sides of each place between two circuits
    private int[] Divided()
    {
        var open = new int[circuits.Count + 1];
        foreach (var places in cards.Values)
        {
            if (places.Length > 0)
            {
                open[places[0] + 1]++;
                open[places[^1] + 1]--;
            }
        }

        for (var i = 1; i < open.Length; i++)
        {
            open[i] += open[i - 1];
        }

        return open;
    }

    /// <summary>Cuts from a chart's end on, each behind as many wires as that chart holds.</summary>
    public IEnumerable<int> Cuts(int from, int to)
    {
        var each = Rows(from, to);
        for (var end = to; end < circuits.Count; end = End(end, each))
        {
            yield return end;
        }
    }

    /// <summary>Cuts that make charts with about these shares of all wires (any scale).</summary>
    public List<int> Cuts(IReadOnlyList<double> shares)
    {
        var (all, cuts) = (rowsBefore[^1], new List<int>());
        var (share, whole, told) = (all / (double)shares.Count, shares.Sum(), 0.0);
        for (var k = 1; k < shares.Count; k++)
        {
            told += shares[k - 1];
            var want = told / whole * all;
            var from = cuts.Count == 0 ? 1 : cuts[^1] + 1;
            var near = Enumerable.Range(from, Math.Max(0, rows.Length - from)).Where(i => Math.Abs(rowsBefore[i] - want) <= Play * share).ToList();
            cuts.Add(near.Count > 0 ? near.OrderBy(i => divided[i]).ThenBy(i => Math.Abs(rowsBefore[i] - want)).First() : Math.Min(from, rows.Length));
        }

        return cuts;
    }

    private ImmutableArray<string> Branches((int From, int To) part)
    {
        if (!branches.TryGetValue(part, out var told))
        {
            branches[part] = told =
            [
                .. Enumerable.Range(part.From, part.To - part.From).SelectMany(c => ends[c]).GroupBy(b => b, StringComparer.Ordinal)
                    .OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key),
            ];
        }

        return told;
    }

    private string? BranchOf(int node)
    {
        for (var n = node; n >= 0; n = whole.NodeParents[n])
        {
            if (!string.IsNullOrWhiteSpace(whole.PlaceAt(n).Branch))
            {
                return whole.PlaceAt(n).Branch;
            }
        }

        return null;
    }

    // what a chart takes from the plan, at the cost of what it shows: its wires and splices, and the segments on the way from them and their ends to the roots of plan and chart
    private Plan PlanOf(int from, int to)
    {
        var plan = whole.Plan;
        int[] kept = [.. wires[from..to].SelectMany(w => w).Order()];
        var inside = new List<string>?[plan.Tree.Segments.Length];
        var joined = new SortedDictionary<int, List<string>>();
        Reach(whole.Root);
        foreach (var n in kept)
        {
            var wire = plan.Wires[n];
            foreach (var segment in segmentsOf[n])
            {
                (inside[segment] ??= []).Add(wire.Id);
            }

            foreach (var end in (ReadOnlySpan<WireEnd>)[wire.From, wire.To])
            {
                if (!end.IsSplice)
                {
                    Reach(whole.PlaceOf(end.At));
                }
                else if (!joined.TryGetValue(spliceNumbers[end.At], out var ids))
                {
                    joined[spliceNumbers[end.At]] = [wire.Id];
                    Reach(plan.Tree.Segments[segmentNumbers[plan.Splices[spliceNumbers[end.At]].Segment]].To);
                }
                else if (ids[^1] != wire.Id)
                {
                    ids.Add(wire.Id);
                }
            }
        }

        // a wire's way may begin anywhere: from its segments too the tree is shown to the root
        for (var segment = 0; segment < inside.Length; segment++)
        {
            if (inside[segment] is not null)
            {
                Reach(plan.Tree.Segments[segment].From);
            }
        }

        var segments = ImmutableArray.CreateBuilder<Segment>();
        for (var segment = 0; segment < inside.Length; segment++)
        {
            if (inside[segment] is { } ids)
            {
                segments.Add(plan.Tree.Segments[segment] with { Wires = [.. ids] });
            }
        }

        return plan with
        {
            Wires = [.. kept.Select(n => plan.Wires[n])],
            Splices = [.. joined.Select(x => plan.Splices[x.Key] with { Wires = [.. x.Value] }).Where(x => x.Wires.Length > 1)],
            Tree = plan.Tree with { Segments = segments.ToImmutable() },
        };

        void Reach(string place)
        {
            for (var at = place; above.TryGetValue(at, out var segment) && inside[segment] is null;)
            {
                inside[segment] = [];
                at = plan.Tree.Segments[segment].From;
            }
        }
    }

    // bounds: where each chart begins, and the end of the last
    private WallChartSubject Subject(int[] bounds, int chart)
    {
        var subject = new WallChartSubject(PlanOf(bounds[chart], bounds[chart + 1]), whole, IsBare);
        foreach (var card in subject.Cards)
        {
            card.Elsewhere = Elsewhere(cards[card.Key], bounds, chart);
        }

        for (var p = 0; p < pins.Length; p++)
        {
            if (pins[p] < bounds[chart] || pins[p] >= bounds[chart + 1])
            {
                subject.PinsElsewhere.Add((whole.Pins[p].Pin, ChartOf(pins[p], bounds) + 1));
            }
        }

        return subject;
    }

    // what other charts show of a card whose circuits are given in ascending order; null: nothing
    private static string? Elsewhere(int[] places, int[] bounds, int chart)
    {
        var others = 0;
        var charts = new List<int>();
        for (var i = 0; i < places.Length;)
        {
            var here = ChartOf(places[i], bounds);
            var end = FirstFrom(places, bounds[here + 1]);
            if (here != chart)
            {
                others += end - i;
                charts.Add(here + 1);
            }

            i = end;
        }

        return others == 0 ? null : $"{others} more on chart{(charts.Count > 1 ? "s" : "")} {Listed(charts)}";
    }

    // the chart that holds a circuit: of charts without any that begin with it the last
    private static int ChartOf(int circuit, int[] bounds) => FirstFrom(bounds, circuit + 1) - 1;

    // place of the first number that is not below the least, among ascending ones
    private static int FirstFrom(int[] sorted, int least)
    {
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = sorted[middle] < least ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    // three and more that follow one another are told by the first and the last
    private static string Listed(List<int> sorted)
    {
        var told = new List<string>();
        for (var i = 0; i < sorted.Count;)
        {
            var j = i;
            while (j + 1 < sorted.Count && sorted[j + 1] == sorted[j] + 1)
            {
                j++;
            }

            j = j - i < 2 ? i : j;
            told.Add(j > i ? FormattableString.Invariant($"{sorted[i]} to {sorted[j]}") : sorted[i].ToString(CultureInfo.InvariantCulture));
            i = j + 1;
        }

        return string.Join(", ", told);
    }
}
