using System.Collections.Immutable;
using System.Globalization;
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
internal sealed record ChartParts
{
    // how far a cut may move from an even share to divide fewer loads, as a part of a share
    private const double Play = 0.3;
    private readonly WallChartSubject whole;

    // by card, and by row of the pin table: numbers of the circuits that have wires there
    private readonly Dictionary<string, int[]> cards;
    private readonly int[] pins;
    private readonly List<string> circuits;
    private readonly int[] rows;
    private readonly int[] divided;

    // by circuit, in the order of the circuits: its wires, and for every end of one the branch of the card it is on
    private readonly List<Wire>[] wires;
    private readonly List<string>[] ends;
    private readonly Dictionary<(int From, int To), ImmutableArray<string>> branches = [];

    // order of wires, splices and segments in the plan, the segments of each wire, the segment towards the root from a place
    private readonly Dictionary<string, int> numbers;
    private readonly int[][] segmentsOf;
    private readonly Dictionary<string, int> spliceNumbers;
    private readonly Dictionary<string, int> segmentNumbers;
    private readonly Dictionary<string, int> above;

    public ChartParts(WallChartSubject whole, IReadOnlyList<int> cardOrder)
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
        var byCircuit = plan.Wires.GroupBy(w => w.Circuit, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.ToList(), StringComparer.Ordinal);
        circuits = [.. byCircuit.Keys.OrderBy(c => home.TryGetValue(c, out var at) ? at.Rank : -1).ThenBy(c => c, StringComparer.Ordinal)];
        wires = [.. circuits.Select(c => byCircuit[c])];
        rows = [.. wires.Select(w => w.Count)];
        var at = circuits.Select((c, i) => (c, i)).ToDictionary(c => c.c, c => c.i, StringComparer.Ordinal);
        cards = whole.Cards.ToDictionary(c => c.Key, c => WiresOf(c).Select(w => at[w.Circuit]).ToArray(), StringComparer.Ordinal);
        pins = [.. whole.Pins.Select(p => at[p.Wire.Circuit])];
        divided = Divided();
        var branchOf = whole.Cards.SelectMany(card => BranchOf(card.Node) is { } branch ? WiresOf(card).Select(w => (w.Circuit, branch)) : []).ToLookup(e => e.Circuit, e => e.branch, StringComparer.Ordinal);
        ends = [.. circuits.Select(c => branchOf[c].ToList())];
        numbers = plan.Wires.Select((w, i) => (w.Id, i)).ToDictionary(w => w.Id, w => w.i, StringComparer.Ordinal);
        spliceNumbers = plan.Splices.Select((x, i) => (x.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        segmentNumbers = plan.Tree.Segments.Select((x, i) => (x.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        segmentsOf = [.. plan.Wires.Select(w => w.Segments.Distinct(StringComparer.Ordinal).Select(x => segmentNumbers[x]).ToArray())];
        above = plan.Tree.Segments.Select((x, i) => (x.To, i)).ToDictionary(x => x.To, x => x.i, StringComparer.Ordinal);
    }

    /// <summary>True when named places where no wire of the chart ends or parts are left out: even one circuit may pass more of them than a sheet is wide.</summary>
    public bool IsBare { get; init; }

    /// <summary>The most parts that make sense: one circuit a chart.</summary>
    public int Most => circuits.Count;

    /// <summary>One of the charts that cuts between circuits make (each cut: how many circuits lie before it): from 0.</summary>
    public (WallChartSubject Subject, ChartPart Part) At(IReadOnlyList<int> cuts, int part) => Share(cuts).ElementAt(part);

    /// <summary>The subjects of the charts that cuts between circuits make; each is made when it is asked for.</summary>
    public IEnumerable<(WallChartSubject Subject, ChartPart Part)> Share(IReadOnlyList<int> cuts)
    {
        var chartOf = new int[circuits.Count];
        var chart = 0;
        for (var i = 0; i < circuits.Count; i++)
        {
            while (chart < cuts.Count && i >= cuts[chart])
            {
                chart++;
            }

            chartOf[i] = chart + 1;
        }

        var shown = Enumerable.Range(0, cuts.Count + 1).Select(n => Branches(Ends(n))).ToImmutableArray();
        return Enumerable.Range(0, cuts.Count + 1).Select(n => (Subject(chartOf, n + 1, Ends(n)), new ChartPart(n + 1, shown)));

        (int From, int To) Ends(int n) => (Math.Min(n == 0 ? 0 : cuts[n - 1], circuits.Count), n == cuts.Count ? circuits.Count : Math.Min(cuts[n], circuits.Count));
    }

    /// <summary>Where to halve what lies between two cuts, dividing few loads; null: a single circuit.</summary>
    public int? Middle(int from, int to)
    {
        if (to - from < 2)
        {
            return null;
        }

        var want = rows[from..to].Sum() / 2.0;
        var (before, best) = (0, (Loads: int.MaxValue, Off: double.MaxValue, At: from + 1));
        for (var i = from + 1; i < to; i++)
        {
            before += rows[i - 1];
            var off = Math.Abs(before - want);
            var here = (Loads: off <= Play * want ? divided[i] : int.MaxValue, off, i);
            best = here.CompareTo(best) < 0 ? here : best;
        }

        return best.At;
    }

    private static IEnumerable<Wire> WiresOf(ChartCardSubject card) => card.Rows.Values.Select(r => r.Wire).Concat(card.Stubs.Select(s => s.Wire));

    // loads with wires on both sides of each place between two circuits
    private int[] Divided()
    {
        var open = new int[circuits.Count + 1];
        foreach (var places in cards.Values)
        {
            if (places.Length > 0)
            {
                open[places.Min() + 1]++;
                open[places.Max() + 1]--;
            }
        }

        for (var i = 1; i < open.Length; i++)
        {
            open[i] += open[i - 1];
        }

        return open;
    }

    /// <summary>Cuts that make so many charts, about equally full.</summary>
    public List<int> Cuts(int parts) => Cuts([.. Enumerable.Repeat(1.0, parts)]);

    /// <summary>Cuts that make charts with about these shares of all wires (any scale).</summary>
    public List<int> Cuts(IReadOnlyList<double> shares)
    {
        var (all, sum, cuts) = (rows.Sum(), 0, new List<int>());
        var (share, whole, told) = (all / (double)shares.Count, shares.Sum(), 0.0);
        var before = new int[rows.Length + 1];
        for (var i = 0; i < rows.Length; i++)
        {
            before[i + 1] = sum += rows[i];
        }

        for (var k = 1; k < shares.Count; k++)
        {
            told += shares[k - 1];
            var want = told / whole * all;
            var from = cuts.Count == 0 ? 1 : cuts[^1] + 1;
            var near = Enumerable.Range(from, Math.Max(0, rows.Length - from)).Where(i => Math.Abs(before[i] - want) <= Play * share).ToList();
            cuts.Add(near.Count > 0 ? near.OrderBy(i => divided[i]).ThenBy(i => Math.Abs(before[i] - want)).First() : Math.Min(from, rows.Length));
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
    private Plan PlanOf((int From, int To) part)
    {
        var plan = whole.Plan;
        int[] kept = [.. Enumerable.Range(part.From, part.To - part.From).SelectMany(c => wires[c]).Select(w => numbers[w.Id]).Order()];
        var inside = new SortedDictionary<int, List<string>>();
        var joined = new SortedDictionary<int, List<string>>();
        foreach (var n in kept)
        {
            var wire = plan.Wires[n];
            foreach (var splice in Ends(wire).Where(e => e.IsSplice).Select(e => spliceNumbers[e.At]).Distinct())
            {
                (joined.TryGetValue(splice, out var ids) ? ids : joined[splice] = []).Add(wire.Id);
            }

            foreach (var segment in segmentsOf[n])
            {
                (inside.TryGetValue(segment, out var ids) ? ids : inside[segment] = []).Add(wire.Id);
            }
        }

        var places = kept.SelectMany(n => Ends(plan.Wires[n])).Where(e => !e.IsSplice).Select(e => whole.PlaceOf(e.At));
        var spliced = joined.Keys.Select(x => plan.Tree.Segments[segmentNumbers[plan.Splices[x].Segment]].To);
        var used = inside.Keys.Select(x => plan.Tree.Segments[x].From);
        string[] reached = [whole.Root, .. places, .. spliced, .. used];
        foreach (var place in reached)
        {
            for (var at = place; above.TryGetValue(at, out var segment) && inside.TryAdd(segment, []);)
            {
                at = plan.Tree.Segments[segment].From;
            }
        }

        return plan with
        {
            Wires = [.. kept.Select(n => plan.Wires[n])],
            Splices = [.. joined.Select(x => plan.Splices[x.Key] with { Wires = [.. x.Value] }).Where(x => x.Wires.Length > 1)],
            Tree = plan.Tree with { Segments = [.. inside.Select(x => plan.Tree.Segments[x.Key] with { Wires = [.. x.Value] })] },
        };

        static WireEnd[] Ends(Wire wire) => [wire.From, wire.To];
    }

    private WallChartSubject Subject(int[] chartOf, int chart, (int From, int To) part)
    {
        var subject = new WallChartSubject(PlanOf(part), whole, IsBare);
        foreach (var card in subject.Cards)
        {
            int[] others = [.. cards[card.Key].Select(c => chartOf[c]).Where(c => c != chart)];
            card.Elsewhere = others.Length == 0 ? null : $"{others.Length} more on chart {Listed(others)}";
        }

        for (var p = 0; p < pins.Length; p++)
        {
            if (chartOf[pins[p]] != chart)
            {
                subject.PinsElsewhere.Add((whole.Pins[p].Pin, chartOf[pins[p]]));
            }
        }

        return subject;
    }

    // three and more that follow one another are told by the first and the last
    private static string Listed(int[] charts)
    {
        var sorted = charts.Distinct().Order().ToList();
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
