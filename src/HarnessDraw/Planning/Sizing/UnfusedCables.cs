namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// Cables that the description declares unfused and that one current passes, as from battery to starter switch to starter, are of one size: no fuse would save
/// the thinner one in a short that the thicker one bears (common practice, no source). So are the battery's ground cable and the engine strap, by which the starter's current
/// returns: the way back carries what the way out does.
/// </summary>
internal static class UnfusedCables
{
    /// <summary>Brings the cables of each chain to the size of its thickest, then takes the chain down together as far as its loops allow.</summary>
    public static void Level(IReadOnlyList<WireRow> wires, IReadOnlyList<LoopBudget> loops, Func<LoopBudget, double> allowedV, Func<WireRow, int, bool> hasTerminal)
    {
        foreach (var chain in Chains(loops))
        {
            var inChain = chain.Select(w => w.First).ToHashSet();
            var passed = Passing(loops, inChain);
            TrySize(chain, chain.Max(w => w.SizeNow.AreaMm2), hasTerminal);
            while (true)
            {
                var before = chain.Select(w => w.Size).ToArray();
                var dropsV = passed.ConvertAll(l => l.WiresV);
                var smaller = chain.Where(w => w.Size > 0).Select(w => w.Sizes[w.Size - 1].AreaMm2).DefaultIfEmpty(0).Max();
                if (smaller > 0 && TrySize(chain, smaller, hasTerminal) && passed.Select((l, i) => l.WiresV <= Math.Max(allowedV(l), dropsV[i]) + 1e-9).All(fits => fits))
                {
                    continue;
                }

                for (var i = 0; i < before.Length; i++)
                {
                    chain[i].Size = before[i];
                }

                break;
            }

            foreach (var wire in chain)
            {
                wire.IsLevelled = true;
            }
        }

        Follow(wires, hasTerminal);
    }

    /// <summary>Straps that no starting current passes as the network is, or that go on from thinner cables: they are as thick as the thickest cable at a starter, where their terminals take that.</summary>
    private static void Follow(IReadOnlyList<WireRow> wires, Func<WireRow, int, bool> hasTerminal)
    {
        var straps = wires.Where(w => w is { IsStrap: true, Given: false }).ToList();
        if (straps.Count == 0)
        {
            return;
        }

        var feedMm2 = wires.Where(w => w.FeedsStarter).Select(w => w.SizeNow.AreaMm2).DefaultIfEmpty(0).Max();
        foreach (var strap in straps)
        {
            if (strap.SizeNow.AreaMm2 < feedMm2 - 1e-9 && TrySize([strap], feedMm2, hasTerminal))
            {
                strap.IsLevelled = true;
            }
        }
    }

    private static List<LoopBudget> Passing(IReadOnlyList<LoopBudget> loops, HashSet<WireRow> inChain)
    {
        var passing = new List<LoopBudget>();
        for (var l = 0; l < loops.Count; l++)
        {
            foreach (var pass in loops[l].Wires)
            {
                if (inChain.Contains(pass.Wire.First))
                {
                    passing.Add(loops[l]);
                    break;
                }
            }
        }

        return passing;
    }

    // chains of more than one cable, by the last loop that passes them
    private static IEnumerable<List<WireRow>> Chains(IReadOnlyList<LoopBudget> loops)
    {
        var chainOf = new Dictionary<WireRow, Chain>();
        var (cables, met) = (new List<WireRow>(), new List<Chain>());
        for (var l = 0; l < loops.Count; l++)
        {
            cables.Clear();
            met.Clear();
            foreach (var pass in loops[l].Wires)
            {
                if (IsUnfused(pass.Wire) && !cables.Contains(pass.Wire))
                {
                    cables.Add(pass.Wire);
                    if (chainOf.TryGetValue(pass.Wire, out var other) && !met.Contains(other))
                    {
                        met.Add(other);
                    }
                }
            }

            if (cables.Count > 0)
            {
                Join(cables, met, chainOf).LastLoop = l;
            }
        }

        return chainOf.Values.Distinct().Where(c => c.Cables.Count > 1).OrderBy(c => c.LastLoop).Select(c => c.Cables);
    }

    // the chains that a loop meets become one, with what else the loop passes behind them
    private static Chain Join(List<WireRow> cables, List<Chain> met, Dictionary<WireRow, Chain> chainOf)
    {
        met.Sort((a, b) => a.LastLoop.CompareTo(b.LastLoop));
        var chain = met.Count == 1 ? met[0] : new Chain();
        foreach (var other in met)
        {
            if (other != chain)
            {
                chain.Cables.AddRange(other.Cables);
                other.Cables.ForEach(c => chainOf[c] = chain);
            }
        }

        foreach (var cable in cables)
        {
            if (chainOf.TryAdd(cable, chain))
            {
                chain.Cables.Add(cable);
            }
        }

        return chain;
    }

    private sealed class Chain
    {
        public List<WireRow> Cables { get; } = [];
        public int LastLoop { get; set; }
    }

    private static bool IsUnfused(WireRow wire) => !wire.Given && (wire.IsStrap || (!wire.Circuit.IsReturn && wire.Circuit.UnfusedBecause is not null));

    // all to the least size of at least that area, never under what each needs by itself; false when one cannot be smaller than it is
    private static bool TrySize(List<WireRow> chain, double areaMm2, Func<WireRow, int, bool> hasTerminal)
    {
        var changed = false;
        foreach (var wire in chain)
        {
            var size = wire.SizeOfAtLeast(areaMm2);
            if (size < wire.Least || !hasTerminal(wire, size))
            {
                return false;
            }

            changed |= size != wire.Size;
            wire.Size = size;
        }

        return changed;
    }
}
