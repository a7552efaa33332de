using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// How far the order of loads on paper is that on the vehicle: Kendall's tau-a over the pairs of loads that differ in place along an axis (M. G. Kendall, A New Measure of Rank Correlation,
/// Biometrika 30, 1938), read from the ends of the lanes that are drawn.
/// </summary>
internal static class DrawnPlaces
{
    /// <summary>
    /// Loads nearer to one another than a hand's breadth along an axis, mm, are level for whoever stands before the vehicle (common practice, no source): one
    /// before the other on paper is then neither right nor wrong, whatever the last centimetre of a survey says.
    /// </summary>
    public const double LevelMm = 100;

    /// <summary>
    /// Along the vehicle (nose to the left of the paper) and across it (right side up), each from -1 to 1; null with fewer than two loads. Pairs that are level by the
    /// distance given are left out; with 0 every pair counts that differs at all.
    /// </summary>
    public static (double Along, double Across)? Tau(Plan plan, IEnumerable<Sheet> sheets, double levelMm = LevelMm)
    {
        var sums = sheets.Select(s => Loads(plan, s)).Select(l => (Along: Concord(l, a => a.True.X, a => a.Drawn.X, levelMm), Across: Concord(l, a => a.True.Y, a => a.Drawn.Y, levelMm))).ToList();
        var (along, across) = (sums.Sum(s => s.Along.Pairs), sums.Sum(s => s.Across.Pairs));
        return along == 0 || across == 0 ? null : (sums.Sum(s => s.Along.Score) / (double)along, sums.Sum(s => s.Across.Score) / (double)across);
    }

    /// <summary>Where each load truly lies (as the chart lies, mm) and where its lanes end on paper.</summary>
    public static List<((double X, double Y) True, (double X, double Y) Drawn)> Loads(Plan plan, Sheet sheet)
    {
        var places = plan.Harness.Layout.Places.ToDictionary(p => p.Id, StringComparer.Ordinal);
        return [.. Ends(plan, sheet).Select(e => (places[e.Place], e.Points)).Select(e => ((-e.Item1.Xmm, -e.Item1.Ymm), (e.Points.Average(p => p.X), e.Points.Average(p => p.Y))))];
    }

    /// <summary>Each load with its place and where its lanes end on paper.</summary>
    public static List<(string Load, string Place, List<Point> Points)> Ends(Plan plan, Sheet sheet)
    {
        var places = plan.Harness.Layout.Places.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var things = plan.Harness.Things.Where(t => places.Contains(t.Place) && t.Kind != HarnessDraw.Model.ThingKind.Mate).ToDictionary(t => t.Id, StringComparer.Ordinal);
        var wires = plan.Wires.ToDictionary(w => w.Id, StringComparer.Ordinal);
        var ends = new SortedDictionary<string, List<Point>>(StringComparer.Ordinal);
        foreach (var lane in Lanes(sheet.Items))
        {
            var wire = wires[lane.Tag!.Wire!];
            var points = Points(lane);
            foreach (var (end, at) in new[] { (wire.From, points[0]), (wire.To, points[^1]) })
            {
                if (!end.IsSplice && things.ContainsKey(end.At))
                {
                    (ends.TryGetValue(end.At, out var list) ? list : ends[end.At] = []).Add(at);
                }
            }
        }

        return [.. ends.Select(e => (e.Key, things[e.Key].Place, e.Value))];
    }

    /// <summary>The ends of a lane's pieces, straight and round.</summary>
    public static List<Point> Points(PathItem lane) => [.. lane.Outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, _ => (Point?)null }).OfType<Point>()];

    private static (int Score, int Pairs) Concord<T>(List<T> loads, Func<T, double> truth, Func<T, double> drawn, double levelMm)
    {
        var (score, pairs) = (0, 0);
        for (var i = 0; i < loads.Count; i++)
        {
            for (var j = 0; j < i; j++)
            {
                var apart = truth(loads[i]) - truth(loads[j]);
                if (Math.Abs(apart) > levelMm)
                {
                    score += Math.Sign(apart) * drawn(loads[i]).CompareTo(drawn(loads[j]));
                    pairs++;
                }
            }
        }

        return (score, pairs);
    }

    /// <summary>The lanes of a sheet.</summary>
    public static IEnumerable<PathItem> Lanes(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem g ? Lanes(g.Items) : i is PathItem { Role: ItemRole.Lane } p ? [p] : (IEnumerable<PathItem>)[]);
}
