using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>
/// Left is left: what hangs on the trunk is drawn on the side of the trunk on which it truly lies. The trunk is the straight line of bundles that goes on from the root on paper; the true side
/// of a load is that of its place as seen from the last place of the trunk on its way and from the trunk's line where the load lies along the vehicle. A load within 100 mm of either across the
/// vehicle, or between the two, lies on no side (common practice, no source),
/// nor does one whose place is on the trunk. A branch that goes over to the other side of the vehicle stays where it leaves or
/// where at least half of its loads lie: bundles never cross the trunk.
/// </summary>
public class TrunkSideTests
{
    [Theory]
    [InlineData(12, 40)]
    [InlineData(30, 40)]
    [InlineData(60, 40)]
    [InlineData(150, 6)]
    public void Every_load_of_a_random_harness_is_drawn_on_its_side_of_the_trunk(int circuits, int seeds)
    {
        var looked = 0;
        var wrong = new List<string>();
        for (var seed = 1; seed <= seeds; seed++)
        {
            looked += Look(RandomHarness.OfLongRun(seed, circuits), $"seed {seed}", wrong);
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count} of {looked}\n{string.Join('\n', wrong)}");
        Assert.True(looked > 20, $"{looked} loads looked at");
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_load_of_an_example_is_drawn_on_its_side_of_the_trunk(string example)
    {
        var wrong = new List<string>();
        Assert.True(Look(ExamplePlans.Of(example), example, wrong) > 3);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }

    private static int Look(Plan plan, string name, List<string> wrong)
    {
        var result = WallChart.Compose(plan, [], new SheetOptions());
        Assert.Null(result.Refused);
        var places = plan.Harness.Layout.Places.ToDictionary(p => p.Id, StringComparer.Ordinal);
        var looked = 0;
        foreach (var sheet in result.Sheets)
        {
            var (trunk, parents) = Trunk(plan, sheet);
            // what leaves lies beyond the lanes that run on; at the trunk's end there are none
            var end = trunk.Count == 0 ? null : trunk.MinBy(t => t.Value.X).Key;
            var branches = new Dictionary<string, List<(string Load, bool IsLeft, bool IsRight)>>(StringComparer.Ordinal);
            foreach (var (load, place, points) in DrawnPlaces.Ends(plan, sheet))
            {
                var (last, branch) = (place, place);
                while (!trunk.ContainsKey(last) && parents.TryGetValue(last, out var parent))
                {
                    (last, branch) = (parent, last);
                }

                if (last == place || end is null || !trunk.ContainsKey(last))
                {
                    continue;
                }

                var line = last == end ? new Box(trunk[end].X, trunk[end].Centre.Y, 0, 0) : trunk[end];
                // as the chart lies: the vehicle's left is down
                var off = places[last].Ymm - places[place].Ymm;
                var beside = AcrossAt(line: [.. trunk.Keys.Select(t => places[t])], places[place].Xmm) - places[place].Ymm;
                if (Math.Min(Math.Abs(off), Math.Abs(beside)) > DrawnPlaces.LevelMm && off > 0 == beside > 0)
                {
                    var isRight = off > 0 ? points.TrueForAll(p => p.Y > line.Bottom) : points.TrueForAll(p => p.Y < line.Y);
                    (branches.TryGetValue(branch, out var list) ? list : branches[branch] = []).Add(($"{load} at {place}, {off:0} mm {(off > 0 ? "left" : "right")} of {last}, drawn at {points[0].Y:0} beside the trunk at {line.Y:0} to {line.Bottom:0}", off > 0, isRight));
                }
            }

            foreach (var (branch, loads) in branches)
            {
                looked += loads.Count;
                // a branch that goes over to the other side is drawn where it leaves or where most of it lies
                var leaves = places[parents[branch]].Ymm - places[branch].Ymm;
                var isOver = loads.Exists(l => l.IsLeft != leaves > 0) || loads.Exists(l => l.IsLeft != loads[0].IsLeft);
                var isWhereItLeaves = leaves != 0 && loads.TrueForAll(l => l.IsRight == (l.IsLeft == leaves > 0));
                if (loads.Exists(l => !l.IsRight) && !(isOver && (isWhereItLeaves || loads.Count(l => !l.IsRight) <= loads.Count / 2)))
                {
                    wrong.AddRange(loads.Where(l => !l.IsRight).Select(l => $"{name}, branch to {branch}{(isOver ? " that goes over" : "")}: {l.Load}"));
                }
            }
        }

        return looked;
    }

    // the places of the trunk with the bundle that leads to each (the root with the first), and from each place the one before it
    internal static (Dictionary<string, Box> Trunk, Dictionary<string, string> Parents) Trunk(Plan plan, Sheet sheet)
    {
        var bundles = Paths(sheet.Items).Where(p => p.Tag?.Segment is not null && p.Role == ItemRole.Backdrop).GroupBy(p => p.Tag!.Segment!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => Around(g.SelectMany(DrawnPlaces.Points)), StringComparer.Ordinal);
        var pieces = DrawnPlaces.Lanes(sheet.Items).Select(DrawnPlaces.Points).SelectMany(p => p.Zip(p.Skip(1))).ToList();
        var mate = plan.Harness.Things.FirstOrDefault(t => t.Kind == ThingKind.Mate);
        var drawn = plan.Tree.Segments.Where(s => bundles.ContainsKey(s.Id)).ToList();
        var position = plan.Harness.Layout.Places.ToDictionary(p => p.Id, StringComparer.Ordinal);
        // the rearmost end of the tree where there is no firewall connector
        var root = mate?.Place ?? plan.Tree.Segments.SelectMany(s => (string[])[s.From, s.To]).GroupBy(p => p, StringComparer.Ordinal).Where(g => g.Count() == 1).MinBy(g => position[g.Key].Xmm)!.Key;
        var parents = new Dictionary<string, string>(StringComparer.Ordinal);
        var trunk = new Dictionary<string, Box>(StringComparer.Ordinal);
        var open = new Queue<string>([root]);
        while (open.TryDequeue(out var place))
        {
            foreach (var segment in drawn.Where(s => (s.From == place || s.To == place) && parents.GetValueOrDefault(place) != (s.From == place ? s.To : s.From)))
            {
                var next = segment.From == place ? segment.To : segment.From;
                parents[next] = place;
                open.Enqueue(next);
                if ((place == root || trunk.ContainsKey(place)) && IsAlong(bundles[segment.Id], pieces))
                {
                    trunk[next] = bundles[segment.Id];
                    trunk.TryAdd(place, bundles[segment.Id]);
                }
            }
        }

        return (trunk, parents);
    }

    // where the trunk truly runs at a distance along the vehicle, straight from place to place
    private static double AcrossAt(List<Place> line, double alongMm)
    {
        line.Sort((a, b) => a.Xmm.CompareTo(b.Xmm));
        var next = line.FindIndex(p => p.Xmm >= alongMm);
        if (next <= 0)
        {
            return next == 0 ? line[0].Ymm : line[^1].Ymm;
        }

        var (from, to) = (line[next - 1], line[next]);
        return from.Ymm + ((to.Ymm - from.Ymm) * (alongMm - from.Xmm) / (to.Xmm - from.Xmm));
    }

    // more lanes run through it from end to end than from side to side
    private static bool IsAlong(Box bundle, List<(Point First, Point Second)> pieces)
    {
        var along = pieces.Count(p => Math.Abs(p.First.Y - p.Second.Y) < 0.001 && IsIn(p.First.Y, bundle.Y, bundle.Bottom) && IsOver(p.First.X, p.Second.X, bundle.X, bundle.Right));
        var across = pieces.Count(p => Math.Abs(p.First.X - p.Second.X) < 0.001 && IsIn(p.First.X, bundle.X, bundle.Right) && IsOver(p.First.Y, p.Second.Y, bundle.Y, bundle.Bottom));
        return along > across;

        static bool IsIn(double at, double from, double to) => at > from - 0.01 && at < to + 0.01;

        static bool IsOver(double a, double b, double from, double to) => Math.Min(a, b) < from + 0.1 && Math.Max(a, b) > to - 0.1;
    }

    private static Box Around(IEnumerable<Point> points)
    {
        var all = points.ToList();
        return Box.FromEdges(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
    }

    private static IEnumerable<PathItem> Paths(IEnumerable<Item> items) => items.SelectMany(i => i is GroupItem g ? Paths(g.Items) : i is PathItem p ? [p] : (IEnumerable<PathItem>)[]);
}
