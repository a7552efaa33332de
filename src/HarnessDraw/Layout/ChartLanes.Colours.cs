namespace HarnessDraw.Layout;

// lanes that any order of theirs draws with the same crossings are ordered so that neighbours do not look alike
internal sealed partial class ChartLanes
{
    // lanes between the same two cards run side by side all the way: whatever their order, each meets the same others
    private void RankParallel()
    {
        var between = new Dictionary<(int A, int B), List<int>>();
        for (var lane = 0; lane < rank.Length; lane++)
        {
            rank[lane] = lane;
            var (from, to) = (EndOf(lane, 0), EndOf(lane, 1));
            if (from.Kind == ChartEndKind.Card && to.Kind == ChartEndKind.Card && from.Index != to.Index)
            {
                var key = (Math.Min(from.Index, to.Index), Math.Max(from.Index, to.Index));
                (between.TryGetValue(key, out var list) ? list : between[key] = []).Add(lane);
            }
        }

        foreach (var parallel in between.Values)
        {
            if (parallel.Count > 2 && !problem.Likeness.IsEmpty)
            {
                var order = Varied(parallel);
                for (var i = 0; i < order.Count; i++)
                {
                    rank[order[i]] = parallel[i];
                }
            }
        }
    }

    // from each lane in turn always on to the one that looks least like the last; the best of these orders, the first of equal ones
    private List<int> Varied(List<int> parallel)
    {
        var (best, least) = (parallel, Likeness(parallel));
        foreach (var first in parallel)
        {
            var left = parallel.FindAll(l => l != first);
            var order = new List<int> { first };
            while (left.Count > 0)
            {
                var next = left.MinBy(l => problem.Alike(order[^1], l));
                left.Remove(next);
                order.Add(next);
            }

            if (Likeness(order) is var likeness && likeness < least)
            {
                (best, least) = (order, likeness);
            }
        }

        return best;
    }

    private int Likeness(List<int> order)
    {
        var sum = 0;
        for (var i = 1; i < order.Count; i++)
        {
            sum += problem.Alike(order[i - 1], order[i]);
        }

        return sum;
    }
}
