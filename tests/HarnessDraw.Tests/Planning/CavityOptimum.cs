using Google.OrTools.Sat;
using HarnessDraw.Planning.Cavities;

namespace HarnessDraw.Tests.Planning;

/// <summary>A connector to be dealt out: what each wire costs in each cavity (whole numbers; infinite where it may not be), where it leads to, and where it sits now.</summary>
internal sealed record CavityCase(double[][] Cost, CavityWire[] Wires, int[] Start, bool[] IsOpen);

/// <summary>
/// The least cost and crossings of a connector by CP-SAT (OR-Tools), from the words of the rules alone: each wire has one cavity and each cavity one wire at the most; two wires cross where the order of
/// their cavities is not that of their places; a spliced wire runs in a gap between places of its choice (two in one gap stand as their cavities do), and its bar, from the gap to both of its ends, crosses
/// the unspliced wires between. A unit of cost weighs as many crossings as <see cref="CostWeight"/>.
/// </summary>
internal sealed class CavityOptimum
{
    public const int CostWeight = 1000;

    private readonly CavityCase some;
    private readonly CpModel model = new();
    private readonly int count;
    private readonly double[] places;
    private readonly ILiteral[][] isUpTo;
    private readonly ILiteral[][] isBehind;
    private readonly List<LinearExpr> sum = [];

    private CavityOptimum(CavityCase some)
    {
        this.some = some;
        count = some.Cost[0].Length;
        places = [.. some.Wires.SelectMany(w => (double[])[w.Low, w.High]).Distinct().Order()];
        var (yes, no) = (model.TrueLiteral(), model.FalseLiteral());
        var inCavity = Enumerable.Range(0, count).Select(_ => new List<ILiteral>()).ToArray();
        // by wire and cavity: whether it sits there or in one before; by spliced wire and place: whether its gap lies behind the place
        (isUpTo, isBehind) = (new ILiteral[some.Wires.Length][], new ILiteral[some.Wires.Length][]);
        for (var w = 0; w < isUpTo.Length; w++)
        {
            int[] may = some.IsOpen[w] ? [.. Enumerable.Range(0, count).Where(c => double.IsFinite(some.Cost[w][c]))] : [some.Start[w]];
            isUpTo[w] = new ILiteral[count];
            var before = no;
            for (var c = 0; c < count; c++)
            {
                if (may.Contains(c))
                {
                    var (up, here) = (c == may[^1] ? yes : model.NewBoolVar(""), model.NewBoolVar(""));
                    model.Add(LinearExpr.Sum([before, here]) == LinearExpr.Sum([up]));
                    if (some.IsOpen[w] && some.Cost[w][c] > 0)
                    {
                        sum.Add(here * (CostWeight * (long)some.Cost[w][c]));
                    }

                    inCavity[c].Add(here);
                    before = up;
                }

                isUpTo[w][c] = before;
            }

            isBehind[w] = IsSpliced(w) ? [.. places.Select(_ => model.NewBoolVar(""))] : [.. places.Select(p => p < some.Wires[w].Low ? yes : no)];
            for (var p = 1; p < places.Length; p++)
            {
                model.AddImplication(isBehind[w][p], isBehind[w][p - 1]);
            }
        }

        foreach (var wires in inCavity)
        {
            model.AddAtMostOne(wires);
        }

        for (var i = 0; i < some.Wires.Length; i++)
        {
            if (IsSpliced(i))
            {
                AddBar(i);
            }

            for (var j = 0; j < i; j++)
            {
                AddPair(i, j);
            }
        }

        model.Minimize(LinearExpr.Sum(sum));
    }

    /// <summary>What was found and what is proven to be needed, within an effort that does not hang on the machine's speed (deterministic time of the solver, one worker, a fixed seed).</summary>
    public static (int Found, int Bound) Of(CavityCase some, double effort)
    {
        // the whole model in the relaxation: it closes the gap here, clauses alone do not
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"num_workers:1 random_seed:1 linearization_level:2 max_deterministic_time:{effort}") };
        var status = solver.Solve(new CavityOptimum(some).model);
        Assert.True(status is CpSolverStatus.Optimal or CpSolverStatus.Feasible, $"{status}");
        return ((int)Math.Round(solver.ObjectiveValue), (int)Math.Ceiling(solver.BestObjectiveBound - 1e-6));
    }

    /// <summary>What given cavities cost, the spliced wires running where they do best.</summary>
    public static int With(CavityCase some, int[] cavities)
    {
        var cost = CostWeight * (int)cavities.Select((c, w) => some.IsOpen[w] ? some.Cost[w][c] : 0).Sum();
        var (found, bound) = Of(some with { Start = cavities, IsOpen = new bool[cavities.Length] }, 30);
        Assert.Equal(bound, found);
        return cost + found;
    }

    private bool IsSpliced(int wire) => some.Wires[wire].Low < some.Wires[wire].High;

    private int Number(double place) => Array.IndexOf(places, place);

    private void AddBar(int wire)
    {
        for (var other = 0; other < some.Wires.Length; other++)
        {
            if (!IsSpliced(other))
            {
                var place = some.Wires[other].Low;
                var behind = isBehind[wire][Number(place)];
                sum.Add(place > some.Wires[wire].High ? LinearExpr.Sum([behind]) : place < some.Wires[wire].Low ? 1 - LinearExpr.Sum([behind]) : LinearExpr.Constant(1));
            }
        }
    }

    private void AddPair(int i, int j)
    {
        // same costs, so the same cavities: in the order of their places they cross each other and all others no oftener
        if (!IsSpliced(i) && !IsSpliced(j) && some.IsOpen[i] && some.IsOpen[j] && some.Cost[i].AsSpan().SequenceEqual(some.Cost[j]))
        {
            var (first, second) = some.Wires[i].Low < some.Wires[j].Low ? (i, j) : (j, i);
            for (var c = 0; c < count; c++)
            {
                model.AddImplication(isUpTo[second][c], isUpTo[first][c]);
            }

            return;
        }

        var cross = model.NewBoolVar("");
        sum.Add(cross);
        AddCross(i, j, cross);
        AddCross(j, i, cross);
    }

    // one before the other at the connector and behind it further on
    private void AddCross(int one, int other, BoolVar cross)
    {
        ILiteral isLater;
        if (!IsSpliced(one) && !IsSpliced(other))
        {
            if (some.Wires[one].Low < some.Wires[other].Low)
            {
                return;
            }

            isLater = model.TrueLiteral();
        }
        else if (!IsSpliced(one))
        {
            isLater = isBehind[other][Number(some.Wires[one].Low)].Not();
        }
        else if (!IsSpliced(other))
        {
            isLater = isBehind[one][Number(some.Wires[other].Low)];
        }
        else
        {
            isLater = model.NewBoolVar("");
            for (var p = 0; p < places.Length; p++)
            {
                model.AddBoolOr([isBehind[one][p].Not(), isBehind[other][p], isLater]);
            }
        }

        for (var c = 0; c < count; c++)
        {
            model.AddBoolOr([isUpTo[one][c].Not(), isUpTo[other][c], isLater.Not(), cross]);
        }
    }
}
