using System.Collections.Immutable;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>How hard the packer looks, in steps of its own (never in seconds: the same task gives the same answer on every machine).</summary>
public sealed record PackingEffort
{
    /// <summary>Steps of the pattern search; 0 leaves it out.</summary>
    public long PatternSteps { get; init; } = 400_000_000;

    /// <summary>Steps of each complete search.</summary>
    public long SearchSteps { get; init; } = 300_000;

    /// <summary>Times that a whole number of bars is sought from the linear programme.</summary>
    public int Dives { get; init; } = 12;

    /// <summary>Enough for the reels of a harness; answers in milliseconds.</summary>
    public static PackingEffort Quick => new() { PatternSteps = 20_000_000, SearchSteps = 20_000, Dives = 3 };
}

/// <summary>Lays pieces on the fewest bars of one length and proves a bound below which nobody can go.</summary>
public static class BarPacker
{
    /// <summary>Bars with their pieces, and a proven lower bound; every piece must fit on a bar.</summary>
    public static Packing Pack(PackingTask task, PackingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(task);
        if (task.Pieces.IsEmpty)
        {
            return new(task, [], 0, "nothing to cut");
        }

        if (task.Pieces.Any(p => p.Length <= 0 || p.Length > task.Capacity))
        {
            throw new ArgumentException("a piece is longer than a bar or has no length", nameof(task));
        }

        return new Run(task, effort ?? new()).Pack();
    }

    private sealed class Run(PackingTask given, PackingEffort effort)
    {
        private readonly PackingTask task = given.Reduced(out _);
        private List<int[]> best = [];
        private int bound;
        private string provenBy = "";

        public Packing Pack()
        {
            best = PackingStarts.Fit(task, fullest: false);
            Raise(PackingBounds.ByLength(task), "total length");
            Raise(PackingBounds.ByHalves(task), "pieces longer than half a reel");
            Offer(() => PackingStarts.Fit(task, fullest: true));
            if ((long)best.Count * task.Pieces.Length * Math.Min(task.Capacity, 200_000) < 500_000_000)
            {
                Offer(() => PackingStarts.Fill(task));
            }

            if (best.Count > bound && task.Capacity <= 200_000)
            {
                ByPatterns();
            }

            while (best.Count > bound)
            {
                var search = new BarSearch(task, bound, effort.SearchSteps);
                if (search.Find() is { } found)
                {
                    best = found;
                }
                else if (search.Complete)
                {
                    Raise(bound + 1, "every way of cutting looked at");
                }
                else
                {
                    break;
                }
            }

            return new(given, Grouped(best), bound, provenBy);
        }

        private void Raise(int to, string by)
        {
            if (to > bound)
            {
                (bound, provenBy) = (to, by);
            }
        }

        private void Offer(Func<List<int[]>> make)
        {
            if (best.Count > bound && make() is var bars && bars.Count < best.Count)
            {
                best = bars;
            }
        }

        private void ByPatterns()
        {
            var programme = new PatternProgramme(task, effort.PatternSteps);
            programme.Know(best.Distinct(SamePattern.Instance));
            int[] demand = [.. task.Pieces.Select(p => p.Count)];
            var (used, worth) = programme.Solve(demand);
            Raise(programme.Bound(worth, demand), "best mix of lengths on a reel");
            for (var dive = 0; dive < effort.Dives && best.Count > bound && !programme.Exhausted; dive++)
            {
                Dive(programme, demand, used, dive);
            }
        }

        // whole parts of the programme's answer are kept, then its largest part is rounded up; the rest is solved again
        private void Dive(PatternProgramme programme, int[] demand, List<(int[] Pattern, double Times)> used, int dive)
        {
            int[] left = [.. demand];
            var bars = new List<int[]>();
            for (var round = 0; left.Any(n => n > 0) && bars.Count < best.Count && !programme.Exhausted; round++)
            {
                if (round > 0)
                {
                    used = programme.Solve(left).Used;
                }

                var ranked = used.OrderByDescending(u => Math.Floor(u.Times + 1e-6) >= 1).ThenByDescending(u => u.Times - Math.Floor(u.Times)).ToList();
                var skip = round == dive - 1 && ranked.Count > 1 ? 1 : 0;
                var before = bars.Count;
                foreach (var (pattern, times) in used.Where(u => u.Times >= 1 - 1e-6 && skip == 0))
                {
                    Take(pattern, (int)Math.Floor(times + 1e-6), left, bars);
                }

                if (bars.Count == before)
                {
                    Take(ranked[skip].Pattern, 1, left, bars);
                }

                if (left.Sum() is var rest and > 0 && rest <= 45)
                {
                    Finish(left, bars);
                    return;
                }
            }

            if (left.All(n => n <= 0) && bars.Count < best.Count)
            {
                best = bars;
            }
        }

        // few pieces are left: all ways are looked at
        private void Finish(int[] left, List<int[]> bars)
        {
            int[] classes = [.. Enumerable.Range(0, left.Length).Where(c => left[c] > 0)];
            var rest = new PackingTask(task.Capacity, [.. classes.Select(c => task.Pieces[c] with { Count = left[c] })]);
            for (var more = Math.Max(PackingBounds.ByHalves(rest), bound - bars.Count); bars.Count + more < best.Count; more++)
            {
                if (new BarSearch(rest, more, effort.SearchSteps).Find() is { } found)
                {
                    best = [.. bars, .. found.Select(b => Spread(b, classes, left.Length))];
                    return;
                }
            }
        }

        private static int[] Spread(int[] bar, int[] classes, int length)
        {
            var spread = new int[length];
            for (var i = 0; i < classes.Length; i++)
            {
                spread[classes[i]] = bar[i];
            }

            return spread;
        }

        private static void Take(int[] pattern, int times, int[] left, List<int[]> bars)
        {
            for (var t = 0; t < times; t++)
            {
                int[] bar = [.. pattern.Select((n, c) => Math.Min(n, left[c]))];
                if (bar.All(n => n == 0))
                {
                    return;
                }

                for (var c = 0; c < bar.Length; c++)
                {
                    left[c] -= bar[c];
                }

                bars.Add(bar);
            }
        }

        // equal bars once with their number, those with the longest pieces first
        private static ImmutableArray<CutPattern> Grouped(List<int[]> bars) =>
        [
            .. bars.GroupBy(b => b, SamePattern.Instance)
                .Select(g => new CutPattern([.. g.Key], g.Count()))
                .OrderByDescending(p => p.Counts, Comparer<ImmutableArray<int>>.Create((a, b) => a.AsSpan().SequenceCompareTo(b.AsSpan()))),
        ];
    }

    private sealed class SamePattern : IEqualityComparer<int[]>
    {
        public static readonly SamePattern Instance = new();

        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(int[] obj)
        {
            var hash = new HashCode();
            foreach (var n in obj)
            {
                hash.Add(n);
            }

            return hash.ToHashCode();
        }
    }
}
