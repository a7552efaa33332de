namespace HarnessDraw.Layout;

/// <summary>A lane of a splice as the other splice of a pair sees it.</summary>
/// <param name="Arrives">True when it comes to the splice from the side of the root; false: a leg beyond the splice.</param>
/// <param name="Far">Place round the tree of its other end.</param>
/// <param name="Passes">True when it passes the other splice.</param>
/// <param name="IsBeyond">True when it lies beyond the other splice with both ends.</param>
internal readonly record struct PairLane(bool Arrives, double Far, bool Passes, bool IsBeyond);

/// <summary>One splice of a pair: the range of places round the tree beyond it, its lanes, and whether it lies beyond the other one.</summary>
internal sealed record PairSplice(double Low, double High, PairLane[] Lanes, bool IsBeyond);

/// <summary>Where the lanes that arrive at one splice of a pair may run: between which of the places that matter to the two.</summary>
internal sealed record PairPlaces(double[] At, int First, int Count, int Arriving)
{
    /// <summary>For each choice of the splice the one of the pair that it belongs to.</summary>
    public int[] Among(SpliceChoices choices)
    {
        var of = new int[choices.Cost.Length];
        var all = choices.Places.Length + 1;
        for (var c = 0; c < of.Length && choices.Arriving > 0; c++)
        {
            for (var (lane, rest, times) = (0, c, 1); lane < Arriving; (lane, rest, times) = (lane + 1, rest / all, times * Count))
            {
                of[c] += times * PlaceOf(choices, rest % all);
            }
        }

        return of;
    }

    private int PlaceOf(SpliceChoices choices, int n)
    {
        if (n == 0)
        {
            return 0;
        }

        var at = Array.BinarySearch(At, choices.Places[n - 1]);
        return (at < 0 ? ~at : at + 1) - First;
    }
}

/// <summary>The fewest crossings of two splices by the choice of the first and then of the second.</summary>
internal sealed record PairCrossings(PairPlaces First, PairPlaces Second, int[] Least)
{
    /// <summary>The same where it is not known where the lanes of either run.</summary>
    public PairCrossings Whatever(bool first, bool second)
    {
        var inSecond = (int)Math.Pow(Second.Count, Second.Arriving);
        var (newFirst, newSecond) = (first ? First with { Arriving = 0 } : First, second ? Second with { Arriving = 0 } : Second);
        var (countFirst, countSecond) = (first ? 1 : Least.Length / inSecond, second ? 1 : inSecond);
        var least = new int[countFirst * countSecond];
        Array.Fill(least, int.MaxValue);
        for (var i = 0; i < Least.Length; i++)
        {
            ref var now = ref least[((first ? 0 : i / inSecond) * countSecond) + (second ? 0 : i % inSecond)];
            now = Math.Min(now, Least[i]);
        }

        return new(newFirst, newSecond, least);
    }
}

/// <summary>
/// The fewest crossings of the lanes of two splices with each other, by where the lanes that arrive at them run: every order of those lanes among all ends of both is
/// tried. A crossing is forced where the ends of two lanes alternate round the tree; a lane that passes the other splice crosses its bar where it runs between the bar's ends.
/// </summary>
internal sealed class SplicePair
{
    private const double MostTried = 300_000;
    private const double MostTriedOfAll = 3_000_000;
    private readonly PairSplice a;
    private readonly PairSplice b;
    private readonly double[] at;

    // by lane of either: where it lies at its splice, and its far end
    private readonly double[] placeA;
    private readonly double[] placeB;
    private readonly double[] farA;
    private readonly double[] farB;

    private readonly int[] arrivingA;
    private readonly int[] arrivingB;
    private readonly bool hasChoice;

    private SplicePair(PairSplice a, PairSplice b)
    {
        (this.a, this.b) = (a, b);
        hasChoice = Array.Exists(a.Lanes, l => l.Passes) || Array.Exists(b.Lanes, l => l.Passes);
        at = new double[a.Lanes.Length + b.Lanes.Length + 4];
        (at[0], at[1], at[2], at[3]) = (a.Low, a.High, b.Low, b.High);
        for (var i = 4; i < at.Length; i++)
        {
            at[i] = i - 4 < a.Lanes.Length ? a.Lanes[i - 4].Far : b.Lanes[i - 4 - a.Lanes.Length].Far;
        }

        Array.Sort(at);
        var different = 1;
        for (var i = 1; i < at.Length; i++)
        {
            at[different] = at[i];
            different += at[i] != at[different - 1] ? 1 : 0;
        }

        Array.Resize(ref at, different);
        (placeA, farA) = (Array.ConvertAll(a.Lanes, _ => Rank(a.Low)), Array.ConvertAll(a.Lanes, l => Rank(l.Far)));
        (placeB, farB) = (Array.ConvertAll(b.Lanes, _ => Rank(b.Low)), Array.ConvertAll(b.Lanes, l => Rank(l.Far)));
        (arrivingA, arrivingB) = (Arriving(a), Arriving(b));
    }

    /// <summary>Null where there are too many orders to try; the more pairs there are, the fewer may be tried for each.</summary>
    public static PairCrossings? Least(PairSplice a, PairSplice b, int pairs)
    {
        var pair = new SplicePair(a, b);
        var (placesA, placesB) = (pair.PlacesOf(a), pair.PlacesOf(b));
        return Choices(placesA) * Choices(placesB) > Math.Min(MostTriedOfAll / pairs, MostTried) ? null
            : new(placesA, placesB, pair.ByChoice(placesA, placesB));
    }

    private static double Choices(PairPlaces places) => Math.Pow(places.Count, places.Arriving);

    private PairPlaces PlacesOf(PairSplice splice)
    {
        // where no lane passes the other splice nothing depends on places
        var (low, high) = ((int)Rank(splice.Low), (int)Rank(splice.High) + 1);
        return new(at, low, high - low + 1, !hasChoice ? 0 : splice == a ? arrivingA.Length : arrivingB.Length);
    }

    private double Rank(double place) => Array.BinarySearch(at, place);

    // every order of the lanes that arrive at b, and for each of them every order of those at a
    private int[] ByChoice(PairPlaces placesA, PairPlaces placesB)
    {
        if (!hasChoice)
        {
            var crossings = 0;
            for (var i = 0; i < farA.Length; i++)
            {
                crossings += AtOther(i);
            }

            return [crossings];
        }

        var (choicesA, choicesB) = ((int)Choices(placesA), (int)Choices(placesB));
        var least = new int[choicesA * choicesB];
        Array.Fill(least, int.MaxValue);
        double legsLow = double.MaxValue, legsHigh = double.MinValue;
        for (var i = 0; i < farA.Length; i++)
        {
            (legsLow, legsHigh) = a.Lanes[i].Arrives ? (legsLow, legsHigh) : (Math.Min(legsLow, farA[i]), Math.Max(legsHigh, farA[i]));
        }

        PutB(0, 0, 1);
        return least;

        void PutB(int n, int choice, int times)
        {
            if (n == arrivingB.Length)
            {
                OfB(choice);
                return;
            }

            for (var gap = 0; gap < placesB.Count; gap++)
            {
                foreach (var place in Among(placesB, gap, arrivingB.AsSpan(0, n)))
                {
                    placeB[arrivingB[n]] = place;
                    PutB(n + 1, choice + (gap * times), times * placesB.Count);
                }
            }
        }

        void OfB(int choiceB)
        {
            var places = new List<(double Place, int Gap)>();
            for (var gap = 0; gap < placesA.Count; gap++)
            {
                foreach (var place in Among(placesA, gap, arrivingB))
                {
                    places.Add((place, gap));
                }
            }

            var fix = 0;
            var cost = new int[arrivingA.Length, places.Count];
            for (var i = 0; i < farA.Length; i++)
            {
                var n = Array.IndexOf(arrivingA, i);
                for (var k = 0; k < (n < 0 ? 1 : places.Count); k++)
                {
                    placeA[i] = n < 0 ? placeA[i] : places[k].Place;
                    var crossings = AtOther(i);
                    fix += n < 0 ? crossings : 0;
                    if (n >= 0)
                    {
                        cost[n, k] = crossings;
                    }
                }
            }

            PutA(0, 0, 1, fix, legsLow, legsHigh);

            void PutA(int n, int choice, int times, int sum, double low, double high)
            {
                if (n == arrivingA.Length)
                {
                    ref var now = ref least[(choice * choicesB) + choiceB];
                    now = Math.Min(now, sum + InBar(low, high));
                    return;
                }

                for (var k = 0; k < places.Count; k++)
                {
                    PutA(n + 1, choice + (places[k].Gap * times), times * placesA.Count, sum + cost[n, k], Math.Min(low, places[k].Place), Math.Max(high, places[k].Place));
                }
            }
        }
    }

    // every place in a gap among those lanes of b that lie there; where neither splice lies beyond the other their places lie apart
    private List<double> Among(PairPlaces places, int gap, ReadOnlySpan<int> lanesOfB)
    {
        var middle = places.First + gap - 0.5;
        if (!a.IsBeyond && !b.IsBeyond)
        {
            return [middle + (gap == 0 ? 0.2 : gap == places.Count - 1 ? -0.2 : 0)];
        }

        var there = new List<double>();
        foreach (var lane in lanesOfB)
        {
            if (Math.Abs(placeB[lane] - middle) < 0.5)
            {
                there.Add(placeB[lane]);
            }
        }

        if (there.Count == 0)
        {
            return [middle];
        }

        there.Sort();
        var among = new List<double> { there[0] - 0.02 };
        for (var i = 1; i < there.Count; i++)
        {
            among.Add((there[i - 1] + there[i]) / 2);
        }

        among.Add(there[^1] + 0.02);
        return among;
    }

    // crossings of one lane of a with those of b, wherever the others of a run
    private int AtOther(int i)
    {
        var count = a.Lanes[i].Passes && IsInside(a.IsBeyond ? placeA[i] : farA[i], b, placeB, farB) ? 1 : 0;
        for (var j = 0; j < farB.Length; j++)
        {
            count += Cross(i, j) ? 1 : 0;
        }

        return count;
    }

    private int InBar(double low, double high)
    {
        var count = 0;
        for (var j = 0; j < farB.Length; j++)
        {
            var key = b.IsBeyond ? placeB[j] : farB[j];
            count += b.Lanes[j].Passes && key > low && key < high ? 1 : 0;
        }

        return count;
    }

    private static bool IsInside(double key, PairSplice of, double[] place, double[] far)
    {
        double low = double.MaxValue, high = double.MinValue;
        for (var i = 0; i < far.Length; i++)
        {
            var end = of.Lanes[i].Arrives ? place[i] : far[i];
            (low, high) = (Math.Min(low, end), Math.Max(high, end));
        }

        return key > low && key < high;
    }

    private static int[] Arriving(PairSplice splice)
    {
        var arriving = new List<int>();
        for (var i = 0; i < splice.Lanes.Length; i++)
        {
            if (splice.Lanes[i].Arrives)
            {
                arriving.Add(i);
            }
        }

        return [.. arriving];
    }

    // a leg lies within what is beyond its splice, a lane that arrives outside it; what passes a leg's splice crosses its bar, if anything
    private bool Cross(int i, int j)
    {
        var (x, y) = (a.Lanes[i], b.Lanes[j]);
        return x.Arrives != y.IsBeyond && y.Arrives != x.IsBeyond
            && Alternate(x.Arrives ? placeA[i] : Outside(a), farA[i], y.Arrives ? placeB[j] : Outside(b), farB[j]);
    }

    private double Outside(PairSplice splice) => Rank(splice.Low) - 0.75;

    private static bool Alternate(double from, double to, double other, double otherTo)
    {
        var (low, high) = (Math.Min(from, to), Math.Max(from, to));
        return (other > low && other < high) != (otherTo > low && otherTo < high);
    }
}
