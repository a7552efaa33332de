using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// Sizes all wires at once: least size by mechanics, temperature, protection and terminal for each, then loop by loop the drop. Within a
/// loop area follows the root of the current, which costs least copper for a given drop; a size never shrinks for a bigger load.
/// </summary>
internal sealed partial class WireSizer(PlanningOptions options, TerminalChooser terminals, Func<string, double?> ratingOf, HashSet<(string Load, int Case)>? unmet = null)
{
    // share of its limit by which contacts and terminals may keep a loop over it. Common practice, no source: nobody sees a fifth of 3 %
    private const double NearlyMet = 0.2;

    // by load and case: what thin hand-given wires drop that the others do not make up for
    private readonly Dictionary<(string Load, int Case), double> excessV = [];

    /// <summary>Loops that no copper brings within their limit, by load and case; those that are handed in stay so.</summary>
    public HashSet<(string Load, int Case)> Unmet { get; } = unmet is null ? [] : [.. unmet];

    public List<WireRow> WithoutTerminal { get; } = [];
    public List<WireRow> TooSmall { get; } = [];

    public void Size(IReadOnlyList<WireRow> wires, IReadOnlyList<LoopBudget> loops)
    {
        foreach (var wire in wires)
        {
            wire.IsLevelled = false;
            SizeAlone(wire);
        }

        foreach (var wire in wires)
        {
            if (!wire.Alike.IsEmpty && wire.First == wire)
            {
                SizeAlike(wire);
            }
        }

        foreach (var loop in loops.Select((l, i) => (Loop: l, Excess: Excess(l), i)).Where(l => l.Excess > 1).OrderByDescending(l => l.Excess).ThenBy(l => l.i))
        {
            Meet(loop.Loop);
        }

        Thin(loops);
        UnfusedCables.Level(wires, loops, AllowedV, HasTerminal);
        SayWhatDecided(wires);
    }

    /// <summary>Marks the wires that are thicker than everything but the drop asks for.</summary>
    public static void SayWhatDecided(IEnumerable<WireRow> wires)
    {
        foreach (var wire in wires)
        {
            wire.ByDrop = wire.Size > Math.Max(Math.Max(wire.ByMechanics, wire.ByAmpacity), Math.Max(Math.Max(wire.ByProtection, wire.ByTerminal), Math.Max(wire.ByBuilt, wire.ByGivenAlike))) ? wire.Size : 0;
        }
    }

    /// <summary>
    /// What the wires of a loop may drop: what contacts, fuses and kept wiring leave of its limit. Where no copper can meet that, or come near it (<see cref="NearlyMet"/>), the whole limit: the wires by
    /// themselves still satisfy it, as tables of conductor sizes ask (ABYC E-11 as quoted), and the checker says the rest. What a thin hand-given wire drops beyond what it
    /// would in the size its loop asks for is not made up for by the others.
    /// </summary>
    public double AllowedV(LoopBudget loop) => HeldV(loop) + excessV.GetValueOrDefault((loop.Path.Load, loop.Path.Case));

    private double HeldV(LoopBudget loop) => loop.RemainderV > 0 && !Unmet.Contains((loop.Path.Load, loop.Path.Case)) ? loop.RemainderV : loop.Path.LimitV;

    private double Excess(LoopBudget loop) => loop.WiresV / AllowedV(loop);

    /// <summary>
    /// Takes back what whole sizes gave too much: wire by wire, the one with most copper first, as far down as every loop it is part of and its own least size
    /// allow. After it no single wire can be a size smaller. <paramref name="slack"/>: share of its limit by which a loop may be over, where the states are solved again after.
    /// </summary>
    public void Thin(IReadOnlyList<LoopBudget> loops, double slack = 0)
    {
        var droppedV = new double[loops.Count];
        var allowedV = new double[loops.Count];
        var passes = new Dictionary<WireRow, List<(int Loop, LoopPass Pass)>>();
        for (var l = 0; l < loops.Count; l++)
        {
            droppedV[l] = loops[l].WiresV;
            allowedV[l] = AllowedV(loops[l]) + (slack * loops[l].Path.LimitV);
            foreach (var pass in loops[l].Wires)
            {
                if (!pass.Wire.Given && !pass.Wire.IsLevelled && MayBeThinner(pass.Wire))
                {
                    (passes.TryGetValue(pass.Wire.First, out var list) ? list : passes[pass.Wire.First] = []).Add((l, pass));
                }
            }
        }

        // what is built and needs another size is a wire more to renew: it goes back first, and of those first what would still reach
        foreach (var (wire, at) in passes.OrderByDescending(p => p.Key.BuiltSize >= 0 ? p.Key.BuiltSpareMm : double.MinValue).ThenByDescending(p => p.Key.SizeNow.AreaMm2 * p.Key.AlikeMm))
        {
            var addedV = new double[at.Count];
            while (MayBeThinner(wire))
            {
                for (var i = 0; i < addedV.Length; i++)
                {
                    addedV[i] = at[i].Pass.DropV(wire.Size - 1) - at[i].Pass.DropV(wire.Size);
                }

                if (!LoopsAllow(at, addedV, droppedV, allowedV))
                {
                    break;
                }

                for (var i = 0; i < addedV.Length; i++)
                {
                    droppedV[at[i].Loop] += addedV[i];
                }

                wire.Size--;
            }
        }
    }

    /// <summary>True where a wire a size smaller would bring every loop it is part of over what it may drop by no more than a share of its limit; those that are over already take nothing.</summary>
    public bool MayBear(WireRow wire, IReadOnlyList<LoopBudget> loops, double slack)
    {
        if (wire.Given || wire.IsLevelled || !MayBeThinner(wire))
        {
            return false;
        }

        foreach (var loop in loops)
        {
            var (addedV, passes) = (0.0, false);
            foreach (var pass in loop.Wires)
            {
                if (pass.Wire.First == wire.First)
                {
                    (addedV, passes) = (addedV + pass.DropV(wire.Size - 1) - pass.DropV(wire.Size), true);
                }
            }

            if (passes && loop.WiresV + addedV > AllowedV(loop) + (slack * loop.Path.LimitV))
            {
                return false;
            }
        }

        return true;
    }

    private bool MayBeThinner(WireRow wire) => wire.Size > wire.Least && HasTerminal(wire, wire.Size - 1);

    // passes of one loop stand beside each other; a loop that is over what it may drop takes no more
    private static bool LoopsAllow(List<(int Loop, LoopPass Pass)> at, double[] addedV, double[] droppedV, double[] allowedV)
    {
        for (var i = 0; i < addedV.Length;)
        {
            var loop = at[i].Loop;
            var total = droppedV[loop];
            for (; i < addedV.Length && at[i].Loop == loop; i++)
            {
                total += addedV[i];
            }

            if (total > Math.Max(allowedV[loop], droppedV[loop]) + 1e-9)
            {
                return false;
            }
        }

        return true;
    }

    private void SizeAlone(WireRow wire)
    {
        if (wire.Given)
        {
            wire.OwnAreaMm2 = OwnAreaMm2(wire);
            return;
        }

        wire.ByMechanics = Least(wire, s => wire.Sizes[s].AreaMm2 >= options.SmallestAreaMm2 - 1e-9);
        wire.ByAmpacity = Least(wire, s => wire.DeratedA(s) >= wire.SteadyA - 1e-9);
        var rating = RatingOver(wire);
        wire.ByProtection = rating is null ? 0 : Least(wire, s => wire.DeratedA(s) >= rating - 1e-9);
        var needed = Math.Max(Math.Max(wire.ByMechanics, wire.ByGivenAlike), Math.Max(wire.ByAmpacity, wire.ByProtection));
        if (needed >= wire.Sizes.Length)
        {
            TooSmall.Add(wire);
            needed = wire.Sizes.Length - 1;
        }

        wire.ByTerminal = NextWithOwnTerminal(wire, needed);
        if (wire.ByTerminal < 0)
        {
            WithoutTerminal.Add(wire);
            wire.ByTerminal = 0;
        }

        wire.Size = Math.Max(needed, wire.ByTerminal);
        wire.ByTerminal = wire.Size > needed ? wire.Size : 0;
        wire.ByBuilt = wire.BuiltSize >= 0 && HasTerminal(wire, wire.BuiltSize) ? wire.BuiltSize : 0;
        wire.Size = Math.Max(wire.Size, Math.Max(wire.Floor, wire.ByBuilt));
    }

    // the least that every one of them bears by itself and has a terminal for
    private void SizeAlike(WireRow wire)
    {
        var needed = Math.Min(wire.Least, wire.Sizes.Length - 1);
        wire.Size = Math.Max(needed, NextWithTerminal(wire, needed));
        if (wire.Size > needed)
        {
            foreach (var other in wire.Alike)
            {
                other.ByTerminal = wire.Size;
            }
        }
    }

    // what a hand-given wire would have by mechanics, temperature and protection
    private double OwnAreaMm2(WireRow wire)
    {
        double Bears(WireSize size) => Ampacity.DeratedA(size, wire.Type.MaxC, wire.AmbientC, wire.Loaded, wire.Type.Bundles);
        var needs = wire.Type.Sizes.FirstOrDefault(s => s.AreaMm2 >= options.SmallestAreaMm2 - 1e-9 && Bears(s) >= Math.Max(wire.SteadyA, RatingOver(wire) ?? 0) - 1e-9);
        return needs?.AreaMm2 ?? wire.SizeNow.AreaMm2;
    }

    /// <summary>What must pass the wire before a fuse opens: the rating of <see cref="FuseOver"/>, or less where a load in series lets no more pass; null when neither is known.</summary>
    public double? RatingOver(WireRow wire) => FuseOver(wire) is { } fuse && ratingOf(fuse) is { } rating ? Math.Min(rating, wire.SeriesA ?? rating) : null;

    /// <summary>The nearest protection; where there is none, of those beyond it the one with the largest rating.</summary>
    public string? FuseOver(WireRow wire) =>
        wire.ProtectedBy.IsEmpty ? wire.FusesBeyond.OrderByDescending(f => ratingOf(f) ?? 0).FirstOrDefault() : wire.ProtectedBy[0];

    private static int Least(WireRow wire, Func<int, bool> holds)
    {
        for (var s = 0; s < wire.Sizes.Length; s++)
        {
            if (holds(s))
            {
                return s;
            }
        }

        return wire.Sizes.Length;
    }

    private void Meet(LoopBudget loop)
    {
        var allowedV = HeldV(loop);
        if (loop.WiresV <= AllowedV(loop))
        {
            return;
        }

        int[] before = [.. loop.Wires.Select(w => w.Wire.Size)];
        if (Reach(loop, allowedV) || allowedV >= loop.Path.LimitV)
        {
            return;
        }

        // what pins keep from its limit is no reason for thick wires elsewhere, nor to give up the copper that brings it near
        Put(loop, before);
        if (Reach(loop, allowedV + (NearlyMet * loop.Path.LimitV)))
        {
            return;
        }

        Put(loop, before);
        Unmet.Add((loop.Path.Load, loop.Path.Case));
        if (loop.WiresV > loop.Path.LimitV)
        {
            Reach(loop, loop.Path.LimitV);
        }
    }

    /// <summary>Thickens the wires until they drop no more than that; false where their terminals do not let them.</summary>
    private bool Reach(LoopBudget loop, double allowedV)
    {
        var key = (loop.Path.Load, loop.Path.Case);
        var excess = Scale(loop, allowedV);
        if (excess > 0)
        {
            excessV[key] = excess;
        }
        else
        {
            excessV.Remove(key);
        }

        return OneByOne(loop, allowedV + excess);
    }

    /// <summary>Where the first wires have no larger terminal, the others one by one; none of them where even that is not enough.</summary>
    private bool OneByOne(LoopBudget loop, double allowedV)
    {
        int[] before = [.. loop.Wires.Select(w => w.Wire.Size)];
        while (loop.WiresV > allowedV)
        {
            // where most volts are saved for the copper that it costs
            var next = loop.Wires.Select(w => w.Wire).DistinctBy(w => w.First).Where(w => !w.Given && !HasStud(w) && w.Size < w.Sizes.Length - 1 && NextWithTerminal(w, w.Size + 1) >= 0)
                .Select(w => (Wire: w, To: NextWithTerminal(w, w.Size + 1))).OrderByDescending(n => SavedPerMm3(loop, n.Wire, n.To)).FirstOrDefault();
            if (next.Wire is null)
            {
                Put(loop, before);
                return false;
            }

            next.Wire.Size = next.To;
        }

        return true;
    }

    private static void Put(LoopBudget loop, int[] sizes)
    {
        for (var i = 0; i < sizes.Length; i++)
        {
            loop.Wires[i].Wire.Size = sizes[i];
        }
    }

    private static double SavedPerMm3(LoopBudget loop, WireRow wire, int to) =>
        (loop.WiresV - loop.WiresVWithAlike(wire, to)) / ((wire.Sizes[to].AreaMm2 - wire.SizeNow.AreaMm2) * wire.AlikeMm);

    /// <summary>Area with the root of the current, as little of it as meets the volts; what hand-given wires drop beyond what they would in that size is handed back.</summary>
    private double Scale(LoopBudget loop, double allowedV)
    {
        var (most, mostOfAll) = (0.0, 0.0);
        var wires = new LoopWire[loop.Wires.Length];
        for (var i = 0; i < wires.Length; i++)
        {
            var pass = loop.Wires[i];
            wires[i] = new(pass, this);
            if (!pass.Wire.Given)
            {
                most = Math.Max(most, MostPerRootA(pass.Wire, pass.CurrentA));
                mostOfAll = Math.Max(mostOfAll, pass.Wire.Sizes[^1].AreaMm2 / Math.Sqrt(Math.Max(pass.CurrentA, 1e-9)));
            }
        }

        most = most > 0 ? most : mostOfAll;
        var (low, high) = (0.0, most);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = DropAt(wires, middle) > allowedV ? (middle, high) : (low, middle);
        }

        // all are chosen before any is set: a wire may pass the loop twice, and keeps the larger size
        var sizes = Array.ConvertAll(wires, w => w.SizeAt(high));
        for (var i = 0; i < wires.Length; i++)
        {
            wires[i].Wire.Size = Math.Max(wires[i].Wire.Size, sizes[i]);
        }

        return wires.Sum(w => w.ExcessAt(high));
    }

    /// <summary>
    /// How far a loop is thickened, as area over the root of the current: until the last of its wires with push-on pins is as large as its
    /// terminals take. Wires between studs set no end of their own where such a wire is in the loop.
    /// </summary>
    private double MostPerRootA(WireRow wire, double currentA)
    {
        var largest = wire.Sizes.Length - 1;
        while (largest > wire.Size && !HasTerminal(wire, largest))
        {
            largest--;
        }

        return largest < wire.Sizes.Length - 1 && !HasStud(wire) ? wire.Sizes[largest].AreaMm2 / Math.Sqrt(Math.Max(currentA, 1e-9)) : 0;
    }

    private static double DropAt(LoopWire[] wires, double areaPerRootA)
    {
        var sum = 0.0;
        foreach (var wire in wires)
        {
            sum += wire.DropAt(areaPerRootA);
        }

        return sum;
    }
}
