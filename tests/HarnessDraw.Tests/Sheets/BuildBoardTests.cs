using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.BuildBoards;
using HarnessDraw.Tests.Drawing;
using NetTopologySuite.Geometries;

namespace HarnessDraw.Tests.Sheets;

/// <summary>The board at 1:1: what is drawn is as long as the route, runs keep apart, a board of the user's size is kept to.</summary>
public class BuildBoardTests
{
    private const double ToleranceMm = 0.5;

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_run_is_drawn_as_long_as_its_segment(string name)
    {
        var plan = ExamplePlans.Of(name);
        var drawn = Runs(Board(plan)).ToDictionary(r => r.Tag!.Segment!, r => LengthOf(r.Outline), StringComparer.Ordinal);
        foreach (var segment in plan.Tree.Segments.Where(s => !s.Wires.IsEmpty && s.LengthMm is > 0))
        {
            Assert.Equal(segment.LengthMm!.Value, drawn[segment.Id], ToleranceMm);
        }
    }

    // 1000 mm across the board: common practice, no source
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Two_crosses_a_metre_apart_prove_a_glued_print(string name)
    {
        var arms = ItemWalk.All(Board(ExamplePlans.Of(name))).OfType<PathItem>().Where(i => i.Tag?.Title == "cross of the board").Select(i => ItemBounds.Of(i)!.Value.Centre).Distinct().ToList();
        Assert.Equal(2, arms.Count);
        Assert.Equal(1000, Math.Sqrt(Math.Pow(arms[0].X - arms[1].X, 2) + Math.Pow(arms[0].Y - arms[1].Y, 2)), 0.01);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Each_wire_stands_at_every_peg_it_goes_round(string name)
    {
        var plan = ExamplePlans.Of(name);
        var turns = PegTurn.Of(plan);
        Assert.Equal(plan.Wires.Sum(w => Math.Max(0, w.Segments.Length - 1)), turns.Sum(t => t.Wires.Length));
        Assert.All(turns, t => Assert.NotEqual(t.From, t.To));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_runs_of_a_wire_add_up_to_its_route(string name)
    {
        var plan = ExamplePlans.Of(name);
        var drawn = Runs(Board(plan)).ToDictionary(r => r.Tag!.Segment!, r => LengthOf(r.Outline), StringComparer.Ordinal);
        // a wire that ends in a splice uses its last segment in part
        foreach (var wire in plan.Wires.Where(w => !w.From.IsSplice && !w.To.IsSplice && w.PathLengthMm is not null && !w.Segments.IsEmpty))
        {
            Assert.Equal(wire.PathLengthMm!.Value, wire.Segments.Sum(s => drawn[s]), ToleranceMm);
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Runs_that_do_not_meet_at_a_peg_keep_apart(string name)
    {
        var plan = ExamplePlans.Of(name);
        var runs = Runs(Board(plan)).Select(r => (Segment: plan.Tree.Segments.First(s => s.Id == r.Tag!.Segment), Line: Line(r.Outline))).ToList();
        for (var i = 0; i < runs.Count; i++)
        {
            for (var j = i + 1; j < runs.Count; j++)
            {
                var (a, b) = (runs[i], runs[j]);
                string[] ends = [a.Segment.From, a.Segment.To];
                if (!ends.Contains(b.Segment.From) && !ends.Contains(b.Segment.To))
                {
                    Assert.True(a.Line.Distance(b.Line) > (a.Segment.DiameterMm + b.Segment.DiameterMm) / 2, $"{a.Segment.Id} and {b.Segment.Id}");
                }
                else
                {
                    // they touch where they meet and nowhere else
                    Assert.True(a.Line.Intersection(b.Line).NumGeometries <= 1 && a.Line.Intersection(b.Line).Length < 0.01, $"{a.Segment.Id} and {b.Segment.Id}");
                }
            }
        }
    }

    [Fact]
    public void Splices_lie_at_their_stations()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var board = Board(plan);
        foreach (var splice in plan.Splices)
        {
            var run = Runs(board).Single(r => r.Tag!.Segment == splice.Segment);
            var dot = ItemWalk.All(board).OfType<PathItem>().Single(p => p.Tag?.Title == $"splice {splice.Id}");
            var middle = new Coordinate(((PathStep.MoveTo)dot.Outline.Steps[0]).To.X + 3, ((PathStep.MoveTo)dot.Outline.Steps[0]).To.Y);
            var along = new NetTopologySuite.LinearReferencing.LengthIndexedLine(Line(run.Outline)).Project(middle);
            Assert.Equal(splice.AtMm, along, ToleranceMm);
        }
    }

    [Fact]
    public void A_board_of_the_user_s_size_is_kept_to_or_refused_with_a_size_that_would_do()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var wide = SheetKinds.Compose(SheetKinds.BuildBoard, plan, [], new() { Paper = PaperSizes.Find("roll 1500 x 3000") }).Sheets.Single();
        Assert.Equal((3000, 1500), (wide.Paper.WidthMm, wide.Paper.HeightMm));
        Assert.Empty(SheetChecker.Check(wide));
        var small = SheetKinds.Compose(SheetKinds.BuildBoard, plan, [], new() { Paper = PaperSizes.Find("roll 400 x 600") });
        Assert.Empty(small.Sheets);
        Assert.Contains("longer or wider board", small.Refused, StringComparison.Ordinal);
    }

    [Fact]
    public void A_harness_longer_than_every_board_is_told_what_to_do()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var longer = plan with { Tree = plan.Tree with { Segments = [.. plan.Tree.Segments.Select((s, i) => i == 0 ? s with { LengthMm = 400_000 } : s)] } };
        var refused = SheetKinds.Compose(SheetKinds.BuildBoard, longer, [], new()).Refused;
        Assert.Contains("--paper 'roll 1830 x 4880'", refused, StringComparison.Ordinal);
        Assert.Contains("--build", refused, StringComparison.Ordinal);
    }

    // two boards of the shop's size: each run lies on them in parts that add up to its length
    [Theory]
    [InlineData("roll 1220 x 1220", 2)]
    [InlineData("roll 610 x 1220", 7)]
    public void A_board_too_small_is_joined_to_others_at_match_lines(string board, int boards)
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var sheets = SheetKinds.Compose(SheetKinds.BuildBoard, plan, [], new() { Paper = PaperSizes.Find(board) }).Sheets;
        Assert.Equal(boards, sheets.Length);
        Assert.Empty(HarnessDraw.Sheets.SetChecks.SetCheck.Check(plan, sheets));
        Assert.All(sheets, s => Assert.Contains(SheetChecker.Texts(s.Items), t => t.Item.Text.StartsWith("MATCH LINE", StringComparison.Ordinal)));
        var drawn = plan.Tree.Segments.ToDictionary(s => s.Id, _ => 0.0, StringComparer.Ordinal);
        foreach (var (group, clip) in sheets.SelectMany(s => s.Items).OfType<GroupItem>().SelectMany(g => g.Items).OfType<GroupItem>().Where(g => g.Clip is not null).Select(g => (g, g.Clip!.Value)))
        {
            var window = new GeometryFactory().ToGeometry(new Envelope(clip.X, clip.Right, clip.Y, clip.Bottom));
            foreach (var run in group.Items.OfType<PathItem>().Where(p => p.Tag?.Segment is not null))
            {
                drawn[run.Tag!.Segment!] += Line(run.Outline).Intersection(window).Length;
            }
        }

        // arcs as chords are a little short
        Assert.All(plan.Tree.Segments.Where(s => !s.Wires.IsEmpty && s.LengthMm is > 0), s => Assert.Equal(s.LengthMm!.Value, drawn[s.Id], ToleranceMm));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Each_leg_has_a_label_place_near_its_end_and_bars_stand_both_ways(string name)
    {
        var plan = ExamplePlans.Of(name);
        var board = Board(plan);
        var paths = ItemWalk.All(board).OfType<PathItem>().ToList();
        var legs = plan.Tree.Segments.Where(s => !s.Wires.IsEmpty && plan.Tree.Segments.All(o => o.From != s.To || o.Wires.IsEmpty)).ToList();
        Assert.Equal(legs.Count, paths.Count(p => p.Tag?.Title?.StartsWith("label place", StringComparison.Ordinal) == true));
        Assert.Empty(HarnessDraw.Checking.SheetRules.Check(plan, [board]));
    }

    [Fact]
    public void Lay_order_names_every_wire_once()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        Assert.Empty(HarnessDraw.Sheets.SetChecks.SetCheck.Check(plan, SheetKinds.Compose(SheetKinds.LayOrder, plan, [], new()).Sheets));
    }

    private static Sheet Board(Plan plan) => SheetKinds.Compose(SheetKinds.BuildBoard, plan, [], new()).Sheets.Single();

    private static List<PathItem> Runs(Sheet board) => [.. ItemWalk.All(board).OfType<PathItem>().Where(p => p.Tag?.Segment is not null)];

    // by hand from the outline alone: straight steps, and arcs by chord and radius
    private static double LengthOf(Outline outline)
    {
        var (at, sum) = (default(HarnessDraw.Drawing.Point), 0.0);
        foreach (var step in outline.Steps)
        {
            var to = step switch { PathStep.MoveTo move => move.To, PathStep.LineTo line => line.To, PathStep.ArcTo arc => arc.To, _ => at };
            var chord = Math.Sqrt(((to.X - at.X) * (to.X - at.X)) + ((to.Y - at.Y) * (to.Y - at.Y)));
            sum += step switch { PathStep.LineTo => chord, PathStep.ArcTo arc => 2 * arc.Radius * Math.Asin(Math.Min(1, chord / (2 * arc.Radius))), _ => 0 };
            at = to;
        }

        return sum;
    }

    private static LineString Line(Outline outline)
    {
        var points = new List<Coordinate>();
        foreach (var step in outline.Steps)
        {
            switch (step)
            {
                case PathStep.MoveTo move:
                    points.Add(new(move.To.X, move.To.Y));
                    break;
                case PathStep.LineTo line:
                    points.Add(new(line.To.X, line.To.Y));
                    break;
                case PathStep.ArcTo arc:
                    points.AddRange(Arc(points[^1], arc));
                    break;
                default:
                    break;
            }
        }

        return new LineString([.. points]);
    }

    // the centre lies to the right of the chord for a clockwise arc, seen with y down
    private static IEnumerable<Coordinate> Arc(Coordinate from, PathStep.ArcTo arc)
    {
        var (dx, dy) = (arc.To.X - from.X, arc.To.Y - from.Y);
        var half = Math.Sqrt((dx * dx) + (dy * dy)) / 2;
        var height = Math.Sqrt(Math.Max(0, (arc.Radius * arc.Radius) - (half * half))) * (arc.Clockwise ? 1 : -1);
        var (cx, cy) = (((from.X + arc.To.X) / 2) - (dy / (2 * half) * height), ((from.Y + arc.To.Y) / 2) + (dx / (2 * half) * height));
        var start = Math.Atan2(from.Y - cy, from.X - cx);
        var sweep = 2 * Math.Asin(half / arc.Radius) * (arc.Clockwise ? 1 : -1);
        return Enumerable.Range(1, 200).Select(k => new Coordinate(cx + (arc.Radius * Math.Cos(start + (sweep * k / 200))), cy + (arc.Radius * Math.Sin(start + (sweep * k / 200)))));
    }
}
