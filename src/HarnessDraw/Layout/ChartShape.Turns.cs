using HarnessDraw.Model;

namespace HarnessDraw.Layout;

// which branch goes straight on, which turn to either side
internal sealed partial class ChartShape
{
    /// <summary>Where a branch truly goes is told by its next place, and by the middle of its loads for the rest (shares: common practice, no source; found on random harnesses).</summary>
    private const double NextPlaceShare = 0.7;

    /// <summary>A load this near to the trunk's line, mm on the vehicle, lies on no side of it (common practice, no source).</summary>
    private const double SideMm = 100;

    // the branches that are still to be looked at
    private readonly Stack<int> open = new();

    // by place: what leaves there from the one spine that it lies on
    private readonly (List<(double Angle, int Node)> Around, int Split, int Straight)?[] turns;

    private (List<(double Angle, int Node)> Around, int Split, int Straight) TurnsAt(Spine spine, int v)
    {
        if (turns[v] is not { } known)
        {
            var around = Rotation(spine, v);
            var (split, straight) = Choose(spine, v, around);
            turns[v] = known = (around, split, straight);
        }

        return known;
    }

    private List<(double Angle, int Node)> Rotation(Spine spine, int v)
    {
        var from = problem.Nodes[v];
        var around = new List<(double Angle, int Node)>(children[v].Count);
        foreach (var c in children[v])
        {
            var to = problem.Nodes[c];
            var x = (NextPlaceShare * to.X) + ((1 - NextPlaceShare) * centreX[c]) - from.X;
            var y = (NextPlaceShare * to.Y) + ((1 - NextPlaceShare) * centreY[c]) - from.Y;
            var along = (x * spine.Dx) + (y * spine.Dy);
            var across = (x * spine.Rx) + (y * spine.Ry);
            around.Add((Math.Round(Math.Atan2(across, along) * 180 / Math.PI, 3), c));
        }

        around.Sort((a, b) => a.Angle != b.Angle ? a.Angle.CompareTo(b.Angle) : a.Node.CompareTo(b.Node));
        InKeptOrder(around, a => problem.Nodes[a.Node].Kept?.Rank);
        return around;
    }

    // least sum of weight x turn away from the true angle; what would stand on the wrong side of the trunk is turned by half a circle more
    private (int Split, int Straight) Choose(Spine spine, int v, List<(double Angle, int Node)> around)
    {
        var n = around.Count;
        var left = new double[n + 1];
        var right = new double[n + 1];
        for (var i = 0; i < n; i++)
        {
            left[i + 1] = left[i] + (weight[around[i].Node] * Math.Abs(around[i].Angle + 90)) + WrongSide(spine, v, around[i].Node, isLeft: true) + NotKept(around[i].Node, ChartTurn.Left);
        }

        for (var i = n - 1; i >= 0; i--)
        {
            right[i] = right[i + 1] + (weight[around[i].Node] * Math.Abs(around[i].Angle - 90)) + WrongSide(spine, v, around[i].Node, isLeft: false) + NotKept(around[i].Node, ChartTurn.Right);
        }

        var (best, split, straight) = (double.MaxValue, 0, -1);
        for (var i = 0; i <= n; i++)
        {
            if (left[i] + right[i] < best - 1e-9)
            {
                (best, split, straight) = (left[i] + right[i], i, -1);
            }
        }

        for (var i = 0; i < n; i++)
        {
            var cost = left[i] + right[i + 1] + (weight[around[i].Node] * Math.Abs(around[i].Angle)) + NotKept(around[i].Node, ChartTurn.Straight);
            if ((Math.Abs(around[i].Angle) <= 80 || problem.Nodes[around[i].Node].Kept is { Turn: ChartTurn.Straight }) && cost < best - 1e-9)
            {
                (best, split, straight) = (cost, i, i);
            }
        }

        return (split, straight);
    }

    // weight x half a circle of all behind a branch that leaves the trunk to the one side and lies on the other
    private double WrongSide(Spine spine, int from, int branch, bool isLeft)
    {
        if (spine.Parent is not null)
        {
            return 0;
        }

        var wrong = 0.0;
        open.Push(branch);
        while (open.TryPop(out var v))
        {
            var right = Across(spine, v) - Across(spine, from);
            wrong += (isLeft ? right : -right) > SideMm ? ownWeight[v] : 0;
            foreach (var child in children[v])
            {
                open.Push(child);
            }
        }

        return wrong * 180;
    }
}
