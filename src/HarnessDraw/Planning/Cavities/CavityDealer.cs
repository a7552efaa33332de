namespace HarnessDraw.Planning.Cavities;

/// <summary>
/// Deals out the cavities of some kinds of wires exactly while all others keep theirs: cavity after cavity, the least by how many wires of each kind have one by then, those of a kind in the order of
/// their places. Its tables are used again from one dealing to the next.
/// </summary>
/// <param name="cost">By wire and cavity.</param>
/// <param name="crossing">What a crossing weighs, in units of cost.</param>
internal sealed class CavityDealer(double[][] cost, double crossing)
{
    private readonly int count = cost.Length == 0 ? 0 : cost[0].Length;
    private readonly bool[] isTaken = new bool[cost.Length == 0 ? 0 : cost[0].Length];
    private readonly int[] change = new int[cost.Length == 0 ? 0 : cost[0].Length];
    // what stays: where it runs and its cavity
    private readonly (double Place, int Cavity)[] staying = new (double, int)[cost.Length];
    private int[] digits = [];
    private double[] crossed = [];
    private double[] alone = [];
    private double[] least = [];
    private sbyte[] chosen = [];

    /// <summary>Gives the wires of the kinds their cavities; they stay as they are where that cannot be.</summary>
    /// <returns>What these wires cost now, with their crossings; infinite where they could not be dealt out. And whether any has another cavity.</returns>
    public (double Cost, bool IsChanged) Deal(CavityOrder order, int[] cavities, List<List<int>> kinds)
    {
        var sorted = kinds.ConvertAll(k => Sorted(order, k));
        var isDealt = new bool[cavities.Length];
        foreach (var wires in sorted)
        {
            Array.ForEach(wires, w => isDealt[w] = true);
        }

        Array.Clear(isTaken);
        var stay = 0;
        for (var i = 0; i < cavities.Length; i++)
        {
            if (!isDealt[i])
            {
                isTaken[cavities[i]] = true;
                staying[stay++] = (order.Places[i], cavities[i]);
            }
        }

        // a step of each kind in the number of a state
        var (steps, first) = (new int[kinds.Count], new int[kinds.Count]);
        var (states, all) = (1, 0);
        for (var k = 0; k < steps.Length; k++)
        {
            (steps[k], first[k]) = (states, all);
            (states, all) = (states * (sorted[k].Length + 1), all + sorted[k].Length);
        }

        FindDigits(sorted, steps, states);
        FindCrossed(order, sorted, states);
        FindAlone(order, staying.AsSpan(0, stay), sorted, all);
        Grow(ref least, states);
        Grow(ref chosen, states * count);
        Array.Fill(least, double.PositiveInfinity, 0, states);
        Array.Fill(chosen, (sbyte)-1, 0, states * count);
        least[0] = 0;
        for (var c = 0; c < count; c++)
        {
            if (!isTaken[c])
            {
                Take(c, steps, first, states);
            }
        }

        var isChanged = false;
        if (double.IsPositiveInfinity(least[states - 1]))
        {
            return (double.PositiveInfinity, isChanged);
        }

        for (var (c, state) = (count - 1, states - 1); c >= 0; c--)
        {
            if (chosen[(c * states) + state] is >= 0 and var k)
            {
                var wire = sorted[k][digits[(k * states) + state] - 1];
                isChanged |= cavities[wire] != c;
                cavities[wire] = c;
                state -= steps[k];
            }
        }

        return (least[states - 1], isChanged);
    }

    private static int[] Sorted(CavityOrder order, List<int> kind)
    {
        var (wires, places) = (kind.ToArray(), new (double, int)[kind.Count]);
        for (var i = 0; i < wires.Length; i++)
        {
            places[i] = (order.Places[wires[i]], i);
        }

        Array.Sort(places, wires);
        return wires;
    }

    // larger states first: a state is reached from the one without the wire, as it was before this cavity
    private void Take(int cavity, int[] steps, int[] first, int states)
    {
        var reached = least.AsSpan(0, states);
        var taken = chosen.AsSpan(cavity * states, states);
        var number = digits.AsSpan(0, steps.Length * states);
        var beside = crossed.AsSpan(0, steps.Length * states);
        var half = crossing / 2;
        for (var state = states - 1; state > 0; state--)
        {
            var best = reached[state] - half;
            for (int k = 0, row = 0; k < steps.Length; k++, row += states)
            {
                var n = number[row + state];
                if (n > 0 && state - steps[k] is var without && reached[without] + alone[((first[k] + n - 1) * count) + cavity] + beside[row + without] is var now && now < best)
                {
                    (reached[state], taken[state], best) = (now, (sbyte)k, now - half);
                }
            }
        }
    }

    // by kind and state: how many wires of the kind have a cavity
    private void FindDigits(List<int[]> sorted, int[] steps, int states)
    {
        Grow(ref digits, sorted.Count * states);
        for (var k = 0; k < sorted.Count; k++)
        {
            for (var state = 0; state < states; state++)
            {
                digits[(k * states) + state] = state / steps[k] % (sorted[k].Length + 1);
            }
        }
    }

    // by kind and state: what the crossings weigh of the kind's next wire with those that have a cavity by then and a place behind its own
    private void FindCrossed(CavityOrder order, List<int[]> sorted, int states)
    {
        Grow(ref crossed, sorted.Count * states);
        Array.Clear(crossed, 0, sorted.Count * states);
        for (var k = 0; k < sorted.Count; k++)
        {
            for (var o = 0; o < sorted.Count; o++)
            {
                if (o == k)
                {
                    continue;
                }

                // by wire of the kind: how many of the other have a place not behind its own
                var (upTo, ahead) = (new int[sorted[k].Length], 0);
                for (var next = 0; next < upTo.Length; next++)
                {
                    while (ahead < sorted[o].Length && order.Places[sorted[o][ahead]] <= order.Places[sorted[k][next]])
                    {
                        ahead++;
                    }

                    upTo[next] = ahead;
                }

                for (var state = 0; state < states; state++)
                {
                    var next = digits[(k * states) + state];
                    if (next < upTo.Length && digits[(o * states) + state] - upTo[next] is > 0 and var behind)
                    {
                        crossed[(k * states) + state] += crossing * behind;
                    }
                }
            }
        }
    }

    // what a wire costs in each cavity, with its crossings with those that stay
    private void FindAlone(CavityOrder order, ReadOnlySpan<(double Place, int Cavity)> staying, List<int[]> sorted, int all)
    {
        Grow(ref alone, all * count);
        var at = 0;
        foreach (var wires in sorted)
        {
            foreach (var wire in wires)
            {
                var (crossings, place) = (0, order.Places[wire]);
                Array.Clear(change);
                foreach (var (other, cavity) in staying)
                {
                    var isBefore = other < place ? 1 : 0;
                    crossings += isBefore;
                    change[cavity] += (other > place ? 1 : 0) - isBefore;
                }

                var own = alone.AsSpan(at, count);
                var ofWire = cost[wire];
                for (var c = 0; c < own.Length; c++)
                {
                    own[c] = isTaken[c] ? double.PositiveInfinity : ofWire[c] + (crossing * crossings);
                    crossings += change[c];
                }

                at += count;
            }
        }
    }

    private static void Grow<T>(ref T[] room, int length)
    {
        if (room.Length < length)
        {
            room = new T[length];
        }
    }
}
