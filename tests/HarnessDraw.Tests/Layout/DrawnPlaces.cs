using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// How far the order of loads on paper is that on the vehicle: Kendall's tau-a over all pairs of loads that differ in place (M. G. Kendall, A New Measure of Rank Correlation,
/// Biometrika 30, 1938), read from the ends of the lanes that are drawn.
/// </summary>
internal static class DrawnPlaces
{
    /// <summary>Along the vehicle (nose to the left of the paper) and across it (right side up), each from -1 to 1; null with fewer than two loads.</summary>
    public static (double Along, double Across)? Tau(Plan plan, IEnumerable<Sheet> sheets)
    {
        var sums = sheets.Select(s => Loads(plan, s)).Select(l => (Along: Concord(l, a => a.True.X, a => a.Drawn.X), Across: Concord(l, a => a.True.Y, a => a.Drawn.Y))).ToList();
        var (along, across) = (sums.Sum(s => s.Along.Pairs), sums.Sum(s => s.Across.Pairs));
        return along == 0 || across == 0 ? null : (sums.Sum(s => s.Along.Score) / (double)along, sums.Sum(s => s.Across.Score) / (double)across);
    }

    /// <summary>Where each load truly lies (as the chart lies, mm) and where its lanes end on paper.</summary>
    public static List<((double X, double Y) True, (double X, double Y) Drawn)> Loads(Plan plan, Sheet sheet)
    {
        var places = plan.Harness.Layout.Places.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var things = plan.Harness.Things.Where(t => places.ContainsKey(t.Place) && t.Kind != HarnessDraw.Model.ThingKind.Mate).ToDictionary(t => t.Id, StringComparer.Ordinal);
        var wires = plan.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);
        var ends = new SortedDictionary<string, List<Point>>(StringComparer.Ordinal);
        foreach (var lane in Lanes(sheet.Items))
        {
            var wire = wires[lane.Tag!.Wire!];
            var points = lane.Outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, _ => default }).ToList();
            foreach (var (end, at) in new[] { (wire.From, points[0]), (wire.To, points[^1]) })
            {
                if (!end.IsSplice && things.ContainsKey(end.At))
                {
                    (ends.TryGetValue(end.At, out var list) ? list : ends[end.At] = []).Add(at);
                }
            }
        }

        return [.. ends.Select(e => (places[things[e.Key].Place], e.Value)).Select(e => ((-e.Item1.Xmm, -e.Item1.Ymm), (e.Value.Average(p => p.X), e.Value.Average(p => p.Y))))];
    }

    private static (int Score, int Pairs) Concord<T>(List<T> loads, Func<T, double> truth, Func<T, double> drawn)
    {
        var (score, pairs) = (0, 0);
        for (var i = 0; i < loads.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var order = truth(loads[i]).CompareTo(truth(loads[j]));
                if (order != 0)
                {
                    score += order * drawn(loads[i]).CompareTo(drawn(loads[j]));
                    pairs++;
                }
            }
        }

        return (score, pairs);
    }

    private static IEnumerable<PathItem> Lanes(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? Lanes(g.Items) : i is PathItem { Role: ItemRole.Lane } p ? [p] : (IEnumerable<PathItem>)[]);
}
