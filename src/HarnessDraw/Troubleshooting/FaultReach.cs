using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Troubleshooting;

/// <summary>
/// Which faults can have to do with what is complained of: those of parts that are joined to it without a load between, up through its fuses to the source and
/// down to ground, with the coils that work its contacts. Solving the others would change nothing that was noted.
/// </summary>
internal sealed class FaultReach(FaultBench bench)
{
    // amperes: what carries less does nothing
    private const double LeastA = 1e-4;

    // at a source or the body everything meets
    private readonly HashSet<int> ends = Ends(bench);

    // the pins of a bar are one to the network: what hangs on one hangs on all
    private readonly ILookup<int, int> nodesOfRow = bench.Network.Network.Branches.SelectMany(b => new[] { b.A, b.B }).Distinct().ToLookup(bench.Network.Solver.RowOf);

    /// <summary>Faults that reach enough of the complaints; all of them where nothing is complained of.</summary>
    /// <param name="faults">All faults.</param>
    /// <param name="evidence">What was noted.</param>
    /// <param name="leastShare">Share of what the fault reaches that reaches most: half leaves room for wrong answers. 0: any complaint is enough.</param>
    public ImmutableArray<Fault> Of(ImmutableArray<Fault> faults, Evidence evidence, double leastShare = 0.5)
    {
        var complaints = Complaints(evidence);
        if (complaints.Count == 0)
        {
            return faults;
        }

        var hits = new int[faults.Length];
        foreach (var complaint in complaints)
        {
            var reached = Walk(complaint.Nodes);
            var series = Series(complaint);
            for (var f = 0; f < faults.Length; f++)
            {
                var along = series.Count > 0 && faults[f].Kind is FaultKind.Open or FaultKind.HighResistance;
                hits[f] += along ? (faults[f].Variants.Any(v => v.Network.Branches.Any(series.Contains)) ? 1 : 0) : Touches(faults[f], reached, series) ? 1 : 0;
            }
        }

        var most = hits.Max();
        return [.. faults.Where((_, f) => hits[f] > 0 && hits[f] >= leastShare * most)];
    }

    /// <summary>Nodes of loads that are not as they should be, and of points that read otherwise than they should.</summary>
    private List<Complaint> Complaints(Evidence evidence)
    {
        var branches = bench.Network.Network.Branches;
        List<Complaint> found =
        [
            .. evidence.Answers.Where(a => a.Seen is not (LoadClass.Works or LoadClass.Off)).GroupBy(a => a.Load).Select(l => (Branch: bench.Loads[l.Key].Branch, WorksTooMuch: l.Any(a => a.Seen == LoadClass.OnWrongly)))
                .Select(l => new Complaint([branches[l.Branch].A, branches[l.Branch].B], l.WorksTooMuch ? -1 : l.Branch)),
        ];
        if (found.Count == 0)
        {
            var sound = bench.WithoutFault;
            found = [.. evidence.Readings.Where(r => SuspectGroup.Parts(r.Volts, r.ToLive ? sound.LiveV[r.State] - sound.Volts[r.State][r.Point] : sound.Volts[r.State][r.Point]))
                .Select(r => new Complaint([bench.Points[r.Point].Node], -1))];
        }

        return found;
    }

    private bool Touches(Fault fault, (HashSet<int> Branches, HashSet<int> Rows) reached, HashSet<int> series) => fault.Variants.Any(v =>
        v.Build is not null || v.Network.Weak.Length > 0
        || v.Network.Branches.Any(b => reached.Branches.Contains(b) || series.Contains(b))
        || (v.Network.TiedNode >= 0 && reached.Rows.Contains(bench.Network.Solver.RowOf(v.Network.TiedNode)))
        || (v.Swap is { } swap && (reached.Branches.Contains(bench.Network.BranchOf(swap.WireA)) || reached.Branches.Contains(bench.Network.BranchOf(swap.WireB)))));

    /// <summary>
    /// Branches that current passes on its way to the complaint or from it while all is well, in any state, with those on the way of the coils that work
    /// contacts among them: what can be open or bad. Of a load that does too little, the way of its own current: to the end where it enters, from the end where it leaves.
    /// </summary>
    private HashSet<int> Series(Complaint complaint)
    {
        var network = bench.Network.Network;
        var found = new HashSet<int>();
        foreach (var circuit in bench.Sound)
        {
            var waiting = new Stack<(int Node, bool Up)>();
            var seen = new HashSet<(int, bool)>();
            void Push(int node, bool up)
            {
                if (seen.Add((node, up)))
                {
                    waiting.Push((node, up));
                }
            }

            void PushWayOf(int branch)
            {
                found.Add(branch);
                var (b, amperes) = (network.Branches[branch], circuit.Solution.Amperes[branch]);
                if (Math.Abs(amperes) >= LeastA)
                {
                    Push(amperes > 0 ? b.A : b.B, true);
                    Push(amperes > 0 ? b.B : b.A, false);
                }

                // a starter's motor has its current from its solenoid
                if (b.Kind == BranchKind.Load && network.CoilOver(branch) is >= 0 and var solenoid)
                {
                    PushWayOf(solenoid);
                }
            }

            if (complaint.Load >= 0)
            {
                PushWayOf(complaint.Load);
            }
            else
            {
                foreach (var node in complaint.Nodes)
                {
                    Push(node, true);
                    Push(node, false);
                }
            }

            while (waiting.TryPop(out var at))
            {
                foreach (var (node, i) in BranchesAt(at.Node))
                {
                    var b = network.Branches[i];
                    var leaves = b.A == node ? circuit.Solution.Amperes[i] : -circuit.Solution.Amperes[i];
                    if (Math.Abs(leaves) < LeastA || leaves > 0 == at.Up)
                    {
                        continue;
                    }

                    found.Add(i);
                    if (b.Kind is not (BranchKind.Load or BranchKind.Source))
                    {
                        Push(b.A == node ? b.B : b.A, at.Up);
                    }

                    if (b.Kind == BranchKind.Contact && network.CoilOver(i) is >= 0 and var coil)
                    {
                        PushWayOf(coil);
                    }
                }
            }
        }

        return found;
    }

    private IEnumerable<(int Node, int Branch)> BranchesAt(int node)
    {
        var row = bench.Network.Solver.RowOf(node);
        var nodes = ends.Contains(row) ? [node] : nodesOfRow[row];
        return nodes.SelectMany(n => bench.Network.Network.BranchesAt(n).Select(i => (n, i)));
    }

    // behind an alternator's exciter terminal lie its output and the battery: the output of one beside a battery is no end
    private static HashSet<int> Ends(FaultBench bench) =>
        bench.Network.Network.Branches.Where(b => b.Kind == BranchKind.Source && (b.Source?.Kind != SourceKind.Alternator || bench.Plan.Harness.Power.Sources.All(s => s.Kind != SourceKind.Battery))).SelectMany(b => new[] { b.A, b.B }).Append(bench.Network.Body).Append(0).Select(bench.Network.Solver.RowOf).ToHashSet();

    /// <summary>Everything joined to the nodes without a load between, up through fuses and not down into others.</summary>
    private (HashSet<int> Branches, HashSet<int> Rows) Walk(int[] first)
    {
        var network = bench.Network.Network;
        var solver = bench.Network.Solver;
        // from an end on the metal body everything would be reached: a load on the body is followed from its other end
        bool IsEnd(int node) => ends.Contains(solver.RowOf(node));
        var begins = first.All(IsEnd);
        var (branches, rows, waiting) = (new HashSet<int>(), new HashSet<int>(), new Stack<int>(first));
        var seen = first.ToHashSet();
        while (waiting.TryPop(out var node))
        {
            rows.Add(solver.RowOf(node));
            // only what begins there goes on
            if (IsEnd(node) && !(begins && first.Contains(node)))
            {
                continue;
            }

            foreach (var (pin, i) in BranchesAt(node))
            {
                var b = network.Branches[i];
                if (!b.When.Holds(bench.Build))
                {
                    continue;
                }

                branches.Add(i);
                var downstream = (b.Kind == BranchKind.Fuse && pin == b.A) || (b.Kind == BranchKind.Exciter && network.BranchesAt(pin).Any(o => network.Branches[o] is { Kind: BranchKind.Source } source && source.Thing == b.Thing));
                var coil = network.CoilOver(i);
                if (b.Kind is BranchKind.Source or BranchKind.ConverterInput || downstream || (b.Kind == BranchKind.Load && coil < 0))
                {
                    continue;
                }

                int[] coils = coil >= 0 ? [network.Branches[coil].A, network.Branches[coil].B] : [];
                int[] next = b.Kind == BranchKind.Load ? coils : [b.A, b.B, .. coils];
                foreach (var other in next.Where(seen.Add))
                {
                    waiting.Push(other);
                }
            }
        }

        return (branches, rows);
    }

    /// <summary>Nodes at which something is not as it should be; the branch of a load that does too little, -1: anything else.</summary>
    private sealed record Complaint(int[] Nodes, int Load);
}
