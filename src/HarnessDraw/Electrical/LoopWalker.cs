using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>Follows the larger current from a node to a source, against it or with it, and adds up what fuses, closed contacts and kept wiring lose.</summary>
internal sealed class LoopWalker(ElectricalNetwork network, NetworkSolution solution, Func<string, double> fuseOhm)
{
    // by branch: the last walk that passed it
    private readonly int[] usedIn = new int[network.Branches.Count];
    private int walk;

    /// <param name="node">Where to begin.</param>
    /// <param name="from">Branch that leads to the node and is not passed again.</param>
    public LoopWay Upstream(int node, int from = -1) => Walk(node, from, against: true);

    public LoopWay Downstream(int node, int from = -1) => Walk(node, from, against: false);

    private LoopWay Walk(int node, int from, bool against)
    {
        var fixedV = 0.0;
        var hops = ImmutableArray.CreateBuilder<NetHop>();
        var loads = ImmutableArray.CreateBuilder<Branch>();
        var fuses = ImmutableArray.CreateBuilder<string>();
        walk++;
        if (from >= 0)
        {
            usedIn[from] = walk;
        }

        Branch? entered = null;
        while ((Next(node, against, loads: false) ?? Next(node, against, loads: true)) is { } next)
        {
            usedIn[next] = walk;
            var branch = network.Branches[next];
            if (branch.Kind == BranchKind.Source)
            {
                break;
            }

            if (branch.Kind == BranchKind.Fuse)
            {
                fuses.Add(branch.Thing!.Id);
            }

            if (branch.Kind == BranchKind.Load)
            {
                loads.Add(branch);
            }
            else if (branch.Net < 0)
            {
                // the joints of a wire come with the wire: they follow its terminals
                fixedV += Math.Abs(solution.Amperes[next]) * (branch.Kind == BranchKind.Fuse ? fuseOhm(branch.Thing!.Id) : branch.Ohm);
            }

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

        return new(fixedV, hops.ToImmutable(), loads.ToImmutable()) { Fuses = fuses.ToImmutable() };
    }

    // a load is passed only where nothing else leads on: a coil and the module that grounds it
    private int? Next(int node, bool against, bool loads)
    {
        int? best = null;
        var most = 1e-6;
        foreach (var i in network.BranchesAt(node))
        {
            // current that leaves the node by this branch; against the current we look for what comes in
            var leaving = network.Branches[i].A == node ? solution.Amperes[i] : -solution.Amperes[i];
            var wanted = against ? -leaving : leaving;
            if (wanted > most * 1.000001 && usedIn[i] != walk && (network.Branches[i].Kind == BranchKind.Load) == loads)
            {
                most = wanted;
                best = i;
            }
        }

        return best;
    }
}

/// <summary>A way to a source: volts lost beside the wires, the stretches through nets, and loads that lie in series.</summary>
internal sealed record LoopWay(double FixedV, ImmutableArray<NetHop> Hops, ImmutableArray<Branch> Loads)
{
    /// <summary>The fuses passed.</summary>
    public ImmutableArray<string> Fuses { get; init; } = [];
}
