using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>Follows the larger current from a node to a source, against it or with it, and adds up what contacts and fuses lose.</summary>
internal sealed class LoopWalker(ElectricalNetwork network, NetworkSolution solution, Func<string, double> fuseOhm, NetworkSolution? charging = null)
{
    public (double FixedV, ImmutableArray<NetHop> Hops) Upstream(int node) => Walk(node, against: true);

    public (double FixedV, ImmutableArray<NetHop> Hops) Downstream(int node) => Walk(node, against: false);

    private (double FixedV, ImmutableArray<NetHop> Hops) Walk(int node, bool against)
    {
        var fixedV = 0.0;
        var hops = ImmutableArray.CreateBuilder<NetHop>();
        var used = new HashSet<int>();
        Branch? entered = null;
        while (Next(node, against, used) is { } next)
        {
            used.Add(next);
            var branch = network.Branches[next];
            if (branch.Kind == BranchKind.Source)
            {
                break;
            }

            var ohm = branch.Kind == BranchKind.Fuse ? fuseOhm(branch.Thing!.Id) : branch.Kind == BranchKind.Load ? 0 : branch.Ohm;
            fixedV += LoadFlow.Relieved(solution.Amperes[next], charging?.Amperes[next] ?? 0) * ohm;
            if (branch.Net >= 0 && entered is not null)
            {
                hops.Add(new(branch.Net, entered.Member, branch.Member));
                entered = null;
            }
            else if (branch.Net >= 0)
            {
                entered = branch;
            }

            node = branch.A == node ? branch.B : branch.A;
        }

        return (fixedV, hops.ToImmutable());
    }

    private int? Next(int node, bool against, HashSet<int> used)
    {
        int? best = null;
        var most = 1e-6;
        foreach (var i in network.BranchesAt(node))
        {
            // current that leaves the node by this branch; against the current we look for what comes in
            var leaving = network.Branches[i].A == node ? solution.Amperes[i] : -solution.Amperes[i];
            var wanted = against ? -leaving : leaving;
            if (wanted > most * 1.000001 && !used.Contains(i) && network.Branches[i].Kind != BranchKind.Load)
            {
                most = wanted;
                best = i;
            }
        }

        return best;
    }
}
