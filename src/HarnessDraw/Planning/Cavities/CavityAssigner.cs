using System.Runtime.InteropServices;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning.Cavities;

/// <summary>A wire that must have a cavity of a mate or inline connector, with the places in leaf order that it leads to.</summary>
internal sealed record CavitySeeker(WireRow Wire, bool AtFrom, PinRef Pin, string? Half, LeafSpan Leaf);

/// <summary>The cavity a wire got, and why.</summary>
internal sealed record CavityGiven(CavitySeeker Seeker, string Cavity, string Why);

/// <summary>
/// Gives each wire at a mate its cavity. Fixed ones stay and kept cabin pins decide for their circuits; the rest is dealt out by least total
/// cost: contact size and current, half, then the order of the cavities against leaf order, which leaves the fewest crossings.
/// Unwelcome neighbours are then moved apart. Where cavities run short, wires that no build has together share.
/// </summary>
internal sealed class CavityAssigner(HarnessIndex index, TerminalChooser terminals, WireSizer sizer, NeighbourCosts neighbours, double fuseOverContact)
{
    private const double Impossible = 1e7;
    private const int MostExchanges = 40;

    // what a hundredth of a contact's current weighs of a size that is too large
    private const double LargerContact = 10;
    private const string Dealt = "fewest crossings";

    public List<CavitySeeker> WithoutCavity { get; } = [];

    public List<CavityGiven> Assign(ConnectorPart part, IReadOnlyList<CavitySeeker> seekers)
    {
        var given = new List<CavityGiven>();
        var open = new List<CavitySeeker>();
        foreach (var seeker in seekers.OrderBy(s => s.Leaf.Middle).ThenBy(s => s.Wire.Circuit.Id, StringComparer.Ordinal))
        {
            var set = seeker.AtFrom ? seeker.Wire.FromCavity : seeker.Wire.ToCavity;
            if (set is not null)
            {
                given.Add(new(seeker, set, "fixed by hand"));
            }
            else
            {
                open.Add(seeker);
            }
        }

        TakeKept(part, given, open);
        ShareWhenShort(part, given, open);
        DealOut(part, given, open);
        KeepApart(part, given);
        return given;
    }

    private void TakeKept(ConnectorPart part, List<CavityGiven> given, List<CavitySeeker> open)
    {
        foreach (var seeker in open.ToArray())
        {
            var kept = index.Harness.Kept.Where(k => k.Connector == seeker.Pin.Thing && Comes(k, seeker.Wire.Circuit) && given.TrueForAll(g => g.Cavity != k.Cavity || !Meet(g.Seeker, seeker)))
                .OrderByDescending(k => k.Colour is not null && k.Colour == seeker.Wire.Circuit.Colour)
                .FirstOrDefault(k => part.Cavities.FirstOrDefault(c => c.Name == k.Cavity) is { } cavity && IsHalf(cavity, seeker));
            if (kept is not null)
            {
                given.Add(new(seeker, kept.Cavity, "kept cabin pin"));
                open.Remove(seeker);
            }
        }
    }

    /// <summary>One after another, a wire takes the cavity of one that no build has beside it, while there are more wires than cavities.</summary>
    private static void ShareWhenShort(ConnectorPart part, List<CavityGiven> given, List<CavitySeeker> open)
    {
        foreach (var half in open.Select(s => s.Half).Distinct().ToArray())
        {
            foreach (var seeker in open.Where(s => s.Half == half).ToArray())
            {
                var free = part.Cavities.Count(c => IsHalf(c, seeker) && given.TrueForAll(g => g.Cavity != c.Name));
                if (open.Count(s => s.Half == half) <= free)
                {
                    break;
                }

                var host = given.FirstOrDefault(g => g.Seeker.Half == half && given.Where(o => o.Cavity == g.Cavity).All(o => !Meet(o.Seeker, seeker)));
                if (host is not null)
                {
                    given.Add(new(seeker, host.Cavity, "shared: never in one build"));
                    open.Remove(seeker);
                }
            }
        }
    }

    private void DealOut(ConnectorPart part, List<CavityGiven> given, List<CavitySeeker> open)
    {
        var taken = given.Select(g => g.Cavity).ToHashSet(StringComparer.Ordinal);
        var free = part.Cavities.Where(c => !taken.Contains(c.Name)).ToArray();
        if (open.Count == 0)
        {
            return;
        }

        // those in leaf order that cost nothing else, as a start
        var sizes = SizesOf(part);
        var columns = free.Length + open.Count;
        var cost = new double[open.Count][];
        var spread = new double[open.Count][];
        for (var i = 0; i < open.Count; i++)
        {
            cost[i] = Array.ConvertAll(free, c => CostOf(open[i], c, sizes));
            spread[i] = new double[columns];
            var middle = (i + 0.5) * free.Length / open.Count;
            for (var c = 0; c < columns; c++)
            {
                spread[i][c] = c < free.Length ? cost[i][c] + ((c + 0.5 - middle) * (c + 0.5 - middle) / columns / columns / open.Count) : 10 * Impossible;
            }
        }

        var dealt = LinearAssignment.Solve(spread);
        for (var i = open.Count - 1; i >= 0; i--)
        {
            if (dealt[i] >= free.Length || cost[i][dealt[i]] >= Impossible)
            {
                WithoutCavity.Add(open[i]);
                open.RemoveAt(i);
                (dealt, cost) = ([.. dealt[..i], .. dealt[(i + 1)..]], [.. cost[..i], .. cost[(i + 1)..]]);
            }
        }

        given.AddRange(InOrder(part, given, open, [.. dealt.Select(d => free[d].Name)], (i, cavity) => Array.FindIndex(free, f => f.Name == cavity) is >= 0 and var c ? cost[i][c] : Impossible));
    }

    // of all ways that cost no more, the one with the fewest crossings on the chart
    private static IEnumerable<CavityGiven> InOrder(ConnectorPart part, List<CavityGiven> given, List<CavitySeeker> open, string[] dealt, Func<int, string, double> costOf)
    {
        var number = part.Cavities.Select((c, n) => (c.Name, n)).ToDictionary(c => c.Name, c => c.n, StringComparer.Ordinal);
        CavityGiven[] known = [.. given.Where(g => number.ContainsKey(g.Cavity))];
        var cost = new double[known.Length + open.Count][];
        for (var i = 0; i < cost.Length; i++)
        {
            cost[i] = Array.ConvertAll(part.Cavities.ToArray(), c => i < known.Length ? 0 : costOf(i - known.Length, c.Name) is var v && v < Impossible ? v : double.PositiveInfinity);
        }

        var best = CavitySearch.Best(cost, [.. known.Select(g => g.Seeker).Concat(open).Select(s => new CavityWire(s.Leaf.Low, s.Leaf.High))],
            [.. known.Select(g => number[g.Cavity]), .. dealt.Select(d => number[d])], [.. cost.Select((_, i) => i >= known.Length)]);
        return open.Select((s, i) => new CavityGiven(s, part.Cavities[best[known.Length + i]].Name, Dealt));
    }

    private double CostOf(CavitySeeker seeker, CavityPart cavity, List<string> sizes)
    {
        if (!IsHalf(cavity, seeker) || index.Harness.Kept.Any(k => k.Connector == seeker.Pin.Thing && k.Cavity == cavity.Name && k.ComesFrom is not null && !Comes(k, seeker.Wire.Circuit)))
        {
            return Impossible;
        }

        var candidates = terminals.For(seeker.Pin, cavity.Name);
        var wire = seeker.Wire;
        var (from, to) = (wire.FromCavity, wire.ToCavity);
        (wire.FromCavity, wire.ToCavity) = seeker.AtFrom ? (cavity.Name, to) : (from, cavity.Name);
        var fitting = sizer.NextWithTerminal(wire, wire.Size);
        (wire.FromCavity, wire.ToCavity) = (from, to);
        var contactA = candidates.IsEmpty ? double.PositiveInfinity : TerminalChooser.Fitting(candidates, wire.Sizes[Math.Max(fitting, wire.Size)])?.CurrentA ?? candidates.Max(t => t.CurrentA);
        // a contact is judged by the most that it carries, while cranking too, unless the circuit is live for a moment alone
        var mostA = wire.Circuit.Duty == Duty.Momentary ? wire.SteadyA : Math.Max(wire.SteadyA, wire.CaseA.Length == 0 ? 0 : wire.CaseA.Max());
        // at half of its current a contact stays cool (common practice, no source): beyond it a larger one is worth more than any crossing
        var heat = mostA > contactA ? 2e5 : mostA > 0.8 * contactA ? 2e3 : LargerContact * Math.Ceiling(Math.Max(0, 100 * ((mostA / contactA) - 0.5)));
        // a contact that its fuse would outlive is as good as one that runs warm
        var fused = wire.ProtectedBy.IsEmpty || sizer.RatingOver(wire) is not { } rating || rating <= (fuseOverContact * contactA) + 1e-9 ? 0 : 2e3;
        // else the smallest that carries it, before any crossing: large contacts stay free for heavy wires to come (common practice, no source)
        return Math.Max(heat, fused) + (fitting < 0 ? 1e5 : 5e3 * (fitting - wire.Size)) + sizes.IndexOf(cavity.Size);
    }

    /// <summary>Contact sizes of a body by what their contacts carry at the most.</summary>
    private List<string> SizesOf(ConnectorPart part)
    {
        var mostA = index.Harness.Catalogue.Terminals.Where(t => part.TerminalFamilies.Contains(t.Family)).GroupBy(t => t.Size, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(t => t.CurrentA), StringComparer.Ordinal);
        return [.. part.Cavities.Select(c => c.Size).Distinct(StringComparer.Ordinal).OrderBy(s => mostA.GetValueOrDefault(s)).ThenBy(s => s, StringComparer.Ordinal)];
    }

    /// <summary>Exchanges that take away unwelcome neighbours at no other cost, each time the one that leaves least of them and then the fewest crossings.</summary>
    private void KeepApart(ConnectorPart part, List<CavityGiven> given)
    {
        var beside = CavityNeighbours.Of(part);
        var sizes = SizesOf(part);
        var pairs = new int[given.Count, given.Count];
        for (var i = 0; i < given.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                pairs[i, j] = pairs[j, i] = neighbours.Of(part, given[i].Seeker, given[j].Seeker);
            }
        }

        var numbers = part.Cavities.Select((c, n) => (c.Name, n)).ToDictionary(c => c.Name, c => c.n, StringComparer.Ordinal);
        var costs = new Dictionary<(int Wire, string Cavity), double>();
        var order = new CavityOrder([.. given.Select(g => new CavityWire(g.Seeker.Leaf.Low, g.Seeker.Leaf.High))]);
        for (var (unwelcome, passes) = (Unwelcome(given), 0); unwelcome > 0 && passes < MostExchanges; passes++)
        {
            order.Settle(Numbers(given));
            (int Unwelcome, int Crossings, List<CavityGiven>? Given) best = (unwelcome, 0, null);
            for (var i = 0; i < given.Count; i++)
            {
                if (given[i].Why != Dealt || Of(given, i) == 0)
                {
                    continue;
                }

                foreach (var cavity in part.Cavities)
                {
                    var tried = given.ToList();
                    if (Swap(cavity.Name, tried, i, CostOfOne) && Unwelcome(tried) is var now && now < unwelcome && now <= best.Unwelcome
                        && order.Crossings(Numbers(tried)) is var crossings && (now, crossings).CompareTo((best.Unwelcome, best.Given is null ? int.MaxValue : best.Crossings)) < 0)
                    {
                        best = (now, crossings, tried);
                    }
                }
            }

            if (best.Given is null)
            {
                break;
            }

            unwelcome = best.Unwelcome;
            given.Clear();
            given.AddRange(best.Given);
        }

        int Unwelcome(List<CavityGiven> all) => Enumerable.Range(0, all.Count).Sum(i => Of(all, i)) / 2;

        int Of(List<CavityGiven> all, int i)
        {
            var sum = 0;
            for (var j = 0; j < all.Count; j++)
            {
                sum += pairs[i, j] > 0 && beside.Contains((all[i].Cavity, all[j].Cavity)) ? pairs[i, j] : 0;
            }

            return sum;
        }

        double CostOfOne(int i, string cavity)
        {
            ref var cost = ref CollectionsMarshal.GetValueRefOrAddDefault(costs, (i, cavity), out var known);
            return known ? cost : cost = CostOf(given[i].Seeker, part.Cavities[numbers[cavity]], sizes);
        }

        // a cavity that the body does not have stands behind all others
        int[] Numbers(List<CavityGiven> all) => [.. all.Select(g => numbers.GetValueOrDefault(g.Cavity, numbers.Count))];
    }

    /// <summary>Moves one wire to a cavity, and what was there to its old one, where neither costs more than it did.</summary>
    private static bool Swap(string to, List<CavityGiven> given, int i, Func<int, string, double> costOf)
    {
        var other = given.FindIndex(g => g.Cavity == to);
        var old = given[i].Cavity;
        if (other == i || (other >= 0 && given[other].Why != Dealt) || given.Count(g => g.Cavity == old) > 1
            || costOf(i, to) > costOf(i, old) || (other >= 0 && costOf(other, old) > costOf(other, to)))
        {
            return false;
        }

        if (other >= 0)
        {
            given[other] = given[other] with { Cavity = old };
        }

        given[i] = given[i] with { Cavity = to };
        return true;
    }

    private static bool IsHalf(CavityPart cavity, CavitySeeker seeker) => seeker.Half is null || cavity.Half is null || cavity.Half == seeker.Half;

    private static bool Meet(CavitySeeker a, CavitySeeker b) => a.Wire.Draft.Builds.MayMeet(b.Wire.Draft.Builds);

    private static bool Comes(KeptPin kept, Circuit circuit) => kept.ComesFrom is { } source
        && (CircuitSwitching.Names(circuit.From, source) || circuit.Feeds.Any(f => CircuitSwitching.Names(f, source)));
}
