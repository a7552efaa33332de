using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace HarnessDraw.Layout;

/// <summary>
/// Brings loads into their true order on a chart that is packed: one stretch of a bundle after the other is made longer or shorter where that puts more pairs of
/// loads in order, as long as the chart still suits its paper. What a change would gain is first told from the places as they are drawn, all beyond the
/// stretch moved along; only what promises something is packed.
/// </summary>
internal sealed class ChartOrder
{
    /// <summary>Loads that lie a hand's breadth apart along an axis, mm on the vehicle, count in full for the order along it, nearer ones the less (common practice, no source).</summary>
    public const double HandMm = 100;
    private const double StepMm = 10;

    /// <summary>Loads that stood a finger's breadth apart on paper, mm, count in full for the order that is kept, nearer ones the less (common practice, no source).</summary>
    private const double FingerMm = 20;
    private const double StepKeptMm = 4;
    private const int StepsKept = 100;
    private const int Steps = 40;
    private readonly double stepMm;
    private readonly int steps;
    private const int Rounds = 2;
    private const int RoundsKept = 6;

    /// <summary>Lengths that differ less than this give about the same chart.</summary>
    private const int ApartSteps = 2;

    /// <summary>What a load that is new on a chart whose places are kept counts: less than any two that stood there (common practice, no source).</summary>
    private const double NewShare = 0.02;

    /// <summary>What a mm more of line must gain (share of all pairs of loads, common practice, no source): no long stem for one pair.</summary>
    private const double WorthAMm = 1e-5;
    private readonly double worthAMm;
    private readonly ChartProblem problem;
    private readonly ChartLanes lanes;
    private readonly List<Spine> spines;
    private readonly (double X, double Y)[] drawn;

    // true for a chart whose places are kept: the true order is then that of the chart before
    private readonly bool isKept;
    private ChartPacking packing = null!;
    private List<Stretch>? stretches;

    // by pair, each card with those before it: which way the one lies beyond the other along each axis and how much that counts
    private (double X, double Y)[]? truths;
    private double pairsX;
    private double pairsY;

    public ChartOrder(ChartProblem problem, ChartLanes lanes, List<Spine> spines)
    {
        this.problem = problem;
        this.lanes = lanes;
        this.spines = spines;
        drawn = new (double, double)[problem.Cards.Length];
        isKept = problem.Cards.Any(c => c.Kept is not null);
        (worthAMm, stepMm, steps) = isKept ? (WorthAMm / 100, StepKeptMm, StepsKept) : (WorthAMm, StepMm, Steps);
    }

    /// <summary>Where the lanes of each card end, mm, as told last.</summary>
    public IReadOnlyList<(double X, double Y)> Drawn => drawn;

    // the true order, which is the same for every packing
    private void FindTruth()
    {
        if (truths is not null)
        {
            return;
        }

        truths = new (double, double)[drawn.Length * (drawn.Length - 1) / 2];
        for (int i = 0, pair = 0; i < drawn.Length; i++)
        {
            for (var j = 0; j < i; j++, pair++)
            {
                truths[pair] = isKept ? KeptTruth(i, j) : (Truth(NodeOf(i).X - NodeOf(j).X), Truth(NodeOf(i).Y - NodeOf(j).Y));
                pairsX += Math.Abs(truths[pair].X);
                pairsY += Math.Abs(truths[pair].Y);
            }
        }
    }

    /// <summary>From -1 to 1 for each axis, both added: how far the loads that were packed last stand in their true order.</summary>
    public double Of(ChartPacking last)
    {
        packing = last;
        FindTruth();
        Locate();
        return Score();
    }

    /// <summary>Changes the stretches of what was packed last; what does not suit is taken back.</summary>
    public void Settle(ChartPacking last, Predicate<ChartRoom> suits)
    {
        var best = Of(last);
        stretches ??= FindStretches();
        for (var round = 0; round < (isKept ? RoundsKept : Rounds); round++)
        {
            var before = best;
            foreach (var stretch in stretches)
            {
                var kept = stretch.ExtraMm;
                var now = kept;
                foreach (var mm in Promising(stretch))
                {
                    Set(stretch, now = mm);
                    var score = Score();
                    if (score - (Math.Max(0, mm - kept) * worthAMm) > best + 1e-9 && suits(ChartRoom.Of(spines[0])))
                    {
                        (best, kept) = (score, mm);
                        break;
                    }
                }

                if (now != kept)
                {
                    Set(stretch, kept);
                }
            }

            if (best <= before)
            {
                return;
            }
        }
    }

    // the stretches that can be longer: stems of ribs, and what lies before a place; each with the cards beyond it
    private List<Stretch> FindStretches()
    {
        var found = new List<Stretch>();
        var of = new Dictionary<(Spine, int), Stretch>();
        foreach (var spine in spines)
        {
            for (var k = spine.Parent is null ? 0 : -1; k < spine.Stations.Count; k++)
            {
                // the first place of a rib lies behind its stem, beyond cards that stay at its foot the second
                if (k < 0 || (spine.Stations[k].HasEdge && (k > (spine.HasOwnFirst ? 1 : 0) || spine.Parent is null)))
                {
                    var (below, root) = (spine, k);
                    for (; below.Parent is { } parent; below = parent)
                    {
                        root = below.ParentStation;
                    }

                    found.Add(of[(spine, k)] = new(spine, k, root));
                }
            }

            for (var k = 0; k < spine.Stations.Count; k++)
            {
                Beyond(spine, k, spine.Stations[k].Left);
                Beyond(spine, k, spine.Stations[k].Right);
            }

            foreach (var card in spine.EndCards)
            {
                Add(spine, spine.Stations.Count - 1, card);
            }
        }

        found.RemoveAll(s => s.Cards.Count == 0 || s.Cards.Count == drawn.Length);
        return found;

        void Beyond(Spine spine, int station, List<SpineItem> items)
        {
            foreach (var item in items)
            {
                if (item.Card >= 0)
                {
                    Add(spine, station, item.Card);
                }
            }
        }

        void Add(Spine spine, int station, int card)
        {
            for (; ; )
            {
                // cards of the place where a rib leaves stay there
                for (var k = station; k >= (station == 0 && spine.HasOwnFirst ? 0 : -1); k--)
                {
                    if (of.TryGetValue((spine, k), out var stretch))
                    {
                        stretch.Cards.Add(card);
                    }
                }

                if (spine.Parent is not { } parent)
                {
                    return;
                }

                (station, spine) = (spine.ParentStation, parent);
            }
        }
    }

    // lengths that put more pairs in order if all beyond moved along and nothing was pushed: the best first
    private List<double> Promising(Stretch stretch)
    {
        var isX = stretch.Spine.IsHorizontal;
        var heading = stretch.Spine.Dx + stretch.Spine.Dy;
        var least = -(int)(stretch.ExtraMm / stepMm);
        var changes = new double[steps - least + 2];
        var isBeyond = new bool[drawn.Length];
        foreach (var card in stretch.Cards)
        {
            isBeyond[card] = true;
        }

        foreach (var card in stretch.Cards)
        {
            for (var other = 0; other < drawn.Length; other++)
            {
                if (isBeyond[other])
                {
                    continue;
                }

                var (truth, seen) = isX ? (TruthOf(card, other).X, drawn[card].X - drawn[other].X) : (TruthOf(card, other).Y, drawn[card].Y - drawn[other].Y);
                var right = truth * heading;
                // further along the heading than the other from this step on
                var step = Math.Clamp((int)Math.Floor(-seen * heading / stepMm) + 1, least, steps + 1);
                changes[0] -= right;
                changes[step - least] += 2 * right;
            }
        }

        var sums = new double[steps - least + 1];
        var sum = 0.0;
        for (var k = 0; k < sums.Length; k++)
        {
            sums[k] = sum += changes[k];
        }

        var found = new List<(double Gain, int Step)>();
        for (var k = least; k <= steps; k++)
        {
            var gain = ((sums[k - least] - sums[-least]) / (isX ? pairsX : pairsY)) - (Math.Max(0, k) * stepMm * worthAMm);
            if (gain > 1e-9)
            {
                found.Add((gain, k));
            }
        }

        found.Sort((a, b) => a.Gain != b.Gain ? b.Gain.CompareTo(a.Gain) : Math.Abs(a.Step).CompareTo(Math.Abs(b.Step)));
        var tried = new List<int>();
        foreach (var (_, step) in found)
        {
            if (tried.TrueForAll(t => Math.Abs(t - step) >= ApartSteps))
            {
                tried.Add(step);
            }
        }

        return tried.ConvertAll(step => Math.Max(0, stretch.ExtraMm + (step * stepMm)));
    }

    private void Set(Stretch stretch, double mm)
    {
        stretch.ExtraMm = mm;
        var rib = stretch.Spine;
        for (; rib.Parent is { } parent; rib = parent)
        {
            rib.IsPacked = false;
        }

        packing.Pack(rib, stretch.RootStation);
        Locate();
    }

    // where the lanes of each card end
    private void Locate()
    {
        foreach (var spine in spines)
        {
            spine.TakeOrigin();
            foreach (var station in spine.Stations)
            {
                Locate(spine, station.Left);
                Locate(spine, station.Right);
            }

            foreach (var card in spine.EndCards)
            {
                var rows = lanes.CardRows[card];
                drawn[card] = spine.At(spine.EndCardT, rows.Count == 0 ? 0 : (spine.EndTracks[rows[0]].U + spine.EndTracks[rows[^1]].U) / 2);
            }
        }
    }

    private void Locate(Spine spine, List<SpineItem> items)
    {
        foreach (var item in items)
        {
            if (item.Card >= 0)
            {
                drawn[item.Card] = spine.At((item.T + packing.FirstRow(spine, problem.Cards[item.Card]) + item.LastLaneT) / 2, item.EdgeU);
            }
        }
    }

    // from -1 to 1: how far the drawn order is the true one, both axes alike
    private double Score()
    {
        // both axes at once: a pair in its true order counts for it, one against it against it
        var sum = Vector128<double>.Zero;
        var places = MemoryMarshal.Cast<(double, double), Vector128<double>>(drawn);
        var pairs = MemoryMarshal.Cast<(double, double), Vector128<double>>(truths);
        for (var i = 0; i < places.Length; i++)
        {
            var here = places[i];
            var before = places[..i];
            var truth = pairs[..i];
            pairs = pairs[i..];
            for (var j = 0; j < before.Length && j < truth.Length; j++)
            {
                sum += (Vector128.GreaterThan(here, before[j]) & truth[j]) - (Vector128.LessThan(here, before[j]) & truth[j]);
            }
        }

        var (x, y) = (sum[0], sum[1]);
        return (pairsX == 0 ? 0 : x / pairsX) + (pairsY == 0 ? 0 : y / pairsY);
    }

    // which way the one lies beyond the other
    private (double X, double Y) TruthOf(int card, int other)
    {
        var (later, earlier) = card > other ? (card, other) : (other, card);
        var (x, y) = truths![(later * (later - 1) / 2) + earlier];
        return card > other ? (x, y) : (-x, -y);
    }

    // as the two stood before; a load that is new takes its true place as far as that costs no other its own
    private (double X, double Y) KeptTruth(int card, int other) => (problem.Cards[card].Kept, problem.Cards[other].Kept) is ({ } one, { } two)
        ? (OnPaper(one.Was.X - two.Was.X), OnPaper(one.Was.Y - two.Was.Y))
        : (NewShare * Truth(NodeOf(card).X - NodeOf(other).X), NewShare * Truth(NodeOf(card).Y - NodeOf(other).Y));

    private static double OnPaper(double apartMm) => Math.Clamp(apartMm / FingerMm, -1, 1);

    private static double Truth(double distance) => Math.Clamp(distance / HandMm, -1, 1);

    private ChartNode NodeOf(int card) => problem.Nodes[problem.Cards[card].Node];

    /// <summary>The free stretch before a place of a spine (-1: its stem), with the cards that lie beyond it; a place of the root's spine is packed anew with all behind it.</summary>
    private sealed record Stretch(Spine Spine, int Station, int RootStation)
    {
        public List<int> Cards { get; } = [];

        public double ExtraMm
        {
            get => Station < 0 ? Spine.LiftMm : Spine.Stations[Station].HoldMm;
            set
            {
                if (Station < 0)
                {
                    Spine.LiftMm = value;
                }
                else
                {
                    Spine.Stations[Station].HoldMm = value;
                }
            }
        }
    }
}
