namespace HarnessDraw.Tests.Planning;

/// <summary>
/// What the wires of a connector must cost at least, whichever cavities they have, from the words of the rules alone and by trying them all: cavity after cavity, each left empty or given to a wire. Wires that
/// cost the same in every cavity sit in the order of their places (in another they cross no less), so how many of each kind sit so far says which ones, and what a wire crosses of the unspliced ones is known
/// when it sits down. Crossings between two spliced wires alone are left out: with one of them, or none, the bound is the optimum. What two kinds must cross of each other anyway says early
/// which beginnings cost too much.
/// </summary>
internal sealed class CavityBound
{
    private const int Never = int.MaxValue / 4;
    private readonly CavityCase some;
    private readonly int count;

    // open unspliced wires of the same costs, by their places; every other wire is a kind of its own
    private readonly List<int[]> kinds = [];

    // by kind: where the number that sit stands among the bits of a state
    private readonly int[] shift;
    private readonly (int Kind, int Number, double Place)[] unspliced;

    // by spliced wire and gap between unspliced ones: what its bar crosses, beyond what it always does
    private readonly int[][] bar;
    private readonly (int One, int Other)[] pairs;

    // by pair, cavity and how many of each sit: what the others must cross of the pair
    private readonly int[][][] left;
    private int always;

    private CavityBound(CavityCase some)
    {
        this.some = some;
        count = some.Cost[0].Length;
        foreach (var wire in Enumerable.Range(0, some.Wires.Length).OrderBy(IsSpliced).ThenBy(w => some.Wires[w].Low))
        {
            if (kinds.FindIndex(k => IsAlike(k[0], wire)) is >= 0 and var at)
            {
                kinds[at] = [.. kinds[at], wire];
            }
            else
            {
                kinds.Add([wire]);
            }
        }

        shift = new int[kinds.Count + 1];
        for (var k = 0; k < kinds.Count; k++)
        {
            shift[k + 1] = shift[k] + int.Log2(kinds[k].Length) + 1;
        }

        Assert.True(shift[^1] <= 64, $"{kinds.Count} kinds");
        unspliced = [.. kinds.SelectMany((wires, k) => wires.Select((w, i) => (Kind: k, Number: i, Place: some.Wires[w].Low))).Where(u => !IsSpliced(kinds[u.Kind][0])).OrderBy(u => u.Place)];
        bar = [.. Enumerable.Range(0, some.Wires.Length).Select(w => IsSpliced(w) ? Bars(w) : [])];
        pairs = [.. Enumerable.Range(0, kinds.Count).SelectMany(k => Enumerable.Range(0, k).Select(o => (k, o)))];
        left = Array.ConvertAll(pairs, p => Left(p.One, p.Other));
    }

    /// <summary>The least cost there is, crossings between spliced wires left out, or <paramref name="enough"/> where that is as much or more.</summary>
    public static int Of(CavityCase some, int enough) => new CavityBound(some).Search(enough);

    private int Search(int enough)
    {
        var now = new Dictionary<ulong, int> { [0] = always };
        var sitting = new int[kinds.Count];
        for (var c = 0; c < count; c++)
        {
            var next = new Dictionary<ulong, int>();
            foreach (var (state, cost) in now)
            {
                for (var k = 0; k < kinds.Count; k++)
                {
                    sitting[k] = (int)(state >> shift[k]) & ((1 << (shift[k + 1] - shift[k])) - 1);
                }

                Keep(next, c + 1, state, cost);
                for (var k = 0; k < kinds.Count; k++)
                {
                    if (sitting[k] < kinds[k].Length && CostOf(kinds[k][0], c) is < Never and var own)
                    {
                        var crossed = Crossed(kinds[k][sitting[k]]);
                        sitting[k]++;
                        Keep(next, c + 1, state + (1UL << shift[k]), cost + own + crossed);
                        sitting[k]--;
                    }
                }
            }

            now = next;
        }

        return now.Count == 0 ? enough : now.Values.Single();

        void Keep(Dictionary<ulong, int> into, int cavity, ulong state, int cost)
        {
            var least = cost;
            for (var p = 0; p < pairs.Length && least < enough; p++)
            {
                least += left[p][cavity][(sitting[pairs[p].One] * (kinds[pairs[p].Other].Length + 1)) + sitting[pairs[p].Other]];
            }

            if (least < enough)
            {
                into[state] = Math.Min(into.GetValueOrDefault(state, Never), cost);
            }
        }

        // of two unspliced wires the later one tells; a spliced one takes the gap in which it crosses least, its bar with it
        int Crossed(int wire)
        {
            var crossed = 0;
            foreach (var (kind, number, place) in unspliced)
            {
                crossed += number < sitting[kind] && (IsSpliced(wire) || place > some.Wires[wire].Low) ? 1 : 0;
            }

            if (!IsSpliced(wire))
            {
                return crossed;
            }

            // from gap to gap: it no longer crosses a wire that sits, and does one that does not
            var best = crossed + bar[wire][0];
            for (var g = 0; g < unspliced.Length; g++)
            {
                crossed += unspliced[g].Number < sitting[unspliced[g].Kind] ? -1 : 1;
                best = Math.Min(best, crossed + bar[wire][g + 1]);
            }

            return best;
        }
    }

    private bool IsSpliced(int wire) => some.Wires[wire].Low < some.Wires[wire].High;

    private bool IsAlike(int one, int other) =>
        !IsSpliced(one) && !IsSpliced(other) && some.IsOpen[one] && some.IsOpen[other] && some.Cost[one].AsSpan().SequenceEqual(some.Cost[other]);

    private int CostOf(int wire, int cavity) => !some.IsOpen[wire]
        ? some.Start[wire] == cavity ? 0 : Never
        : double.IsFinite(some.Cost[wire][cavity]) ? CavityOptimum.CostWeight * (int)some.Cost[wire][cavity] : Never;

    // what lies between the gap and both ends
    private int[] Bars(int wire)
    {
        var (low, high) = (some.Wires[wire].Low, some.Wires[wire].High);
        int[] bars = [.. Enumerable.Range(0, unspliced.Length + 1).Select(g => unspliced.Where((u, i) => (u.Place > low || i >= g) && (u.Place < high || i < g)).Count())];
        var least = bars.Min();
        always += least;
        return Array.ConvertAll(bars, b => b - least);
    }

    // two kinds by themselves, from the last cavity back
    private int[][] Left(int one, int other)
    {
        var (ones, others) = (kinds[one].Length + 1, kinds[other].Length + 1);
        var tables = new int[count + 1][];
        tables[count] = [.. Enumerable.Repeat(Never, (ones * others) - 1), 0];
        for (var c = count - 1; c >= 0; c--)
        {
            tables[c] = [.. tables[c + 1]];
            for (var n = 0; n < ones; n++)
            {
                for (var m = 0; m < others; m++)
                {
                    ref var least = ref tables[c][(n * others) + m];
                    if (n + 1 < ones && CostOf(kinds[one][0], c) < Never)
                    {
                        least = Math.Min(least, CrossedOf(one, n, other, m) + tables[c + 1][((n + 1) * others) + m]);
                    }

                    if (m + 1 < others && CostOf(kinds[other][0], c) < Never)
                    {
                        least = Math.Min(least, CrossedOf(other, m, one, n) + tables[c + 1][(n * others) + m + 1]);
                    }
                }
            }
        }

        return tables;
    }

    private int CrossedOf(int kind, int number, int other, int sitting) => IsSpliced(kinds[kind][0]) || IsSpliced(kinds[other][0])
        ? 0
        : kinds[other].Take(sitting).Count(o => some.Wires[o].Low > some.Wires[kinds[kind][number]].Low);
}
