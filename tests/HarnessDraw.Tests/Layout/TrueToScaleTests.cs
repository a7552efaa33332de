using System.Globalization;
using System.Text.RegularExpressions;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>Wall charts whose lengths are asked to be at one scale, read off the dimension lines that are drawn: a ruler on the paper gives the length that is printed.</summary>
public class TrueToScaleTests
{
    private const double Spread = 0.01;

    public static TheoryData<int, int> Random()
    {
        var cases = new TheoryData<int, int>();
        for (var seed = 1; seed <= 40; seed++)
        {
            cases.Add(seed, seed % 8 == 0 ? 60 : seed % 2 == 0 ? 30 : 12);
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Random))]
    public void Unbroken_dimension_lines_of_a_random_harness_are_as_long_as_the_scale_says(int seed, int circuits) =>
        AssertTrue(WallChart.Compose(RandomHarness.OfLongRun(seed, circuits), [], new SheetOptions { TrueToScale = true }));

    /// <summary>The least number of lengths to scale is what was reached on the paper that is taken.</summary>
    [Theory]
    [InlineData("brackmere-six", 19)]
    [InlineData("dunmarrow-18", 6)]
    [InlineData("aldervane-coach", 13)]
    public void Unbroken_dimension_lines_of_an_example_are_as_long_as_the_scale_says(string example, int least) =>
        Assert.InRange(AssertTrue(WallChart.Compose(ExamplePlans.Of(example), [], new SheetOptions { TrueToScale = true })), least, int.MaxValue);

    [Fact]
    public void Larger_paper_leaves_more_lengths_their_room()
    {
        Assert.InRange(Kept(PaperSizes.A0), Kept(PaperSizes.A1) + 1, int.MaxValue);

        static int Kept(Paper paper) => Enumerable.Range(1, 8).Sum(seed => AssertTrue(WallChart.Compose(RandomHarness.OfLongRun(seed, 30), [], new SheetOptions { TrueToScale = true, Paper = paper, SeveralCharts = true })));
    }

    [Fact]
    public void Without_being_asked_no_line_is_broken_and_no_scale_is_named()
    {
        var result = WallChart.Compose(RandomHarness.OfLongRun(2, 30), [], new SheetOptions());
        Assert.Null(result.Figures!.ToScale);
        Assert.All(result.Sheets, s => Assert.DoesNotContain(Dimensions(s), d => d.IsBroken));
        Assert.All(result.Sheets, s => Assert.Contains(ItemWalk.Texts(s), t => t.Text == "not to scale"));
    }

    // nothing overlaps, and the figures told are those that are drawn; gives how many lengths are to scale
    private static int AssertTrue(SheetResult result)
    {
        Assert.Null(result.Refused);
        Assert.All(result.Sheets, s => Assert.Empty(SheetChecker.Check(s).Take(10).Select(f => f.ToString())));
        var sum = 0;
        foreach (var (sheet, words) in result.Sheets.Zip(result.Figures!.ToScale!.Split("; ")))
        {
            var drawn = Dimensions(sheet);
            if (Regex.Match(words, "^1:([0-9.]+): (?:([0-9]+) of|all) ([0-9]+) lengths") is not { Success: true } told)
            {
                Assert.Equal("not to scale: no length has the room", words);
                continue;
            }

            var scale = double.Parse(told.Groups[1].Value, CultureInfo.InvariantCulture);
            Assert.Contains(ItemWalk.Texts(sheet), t => t.Text == $"1:{told.Groups[1].Value}");
            var whole = drawn.Where(d => !d.IsBroken).ToList();
            Assert.All(whole, d => Assert.InRange(d.DrawnMm * scale / d.TrueMm, 1 - Spread, 1 + Spread));
            var all = int.Parse(told.Groups[3].Value, CultureInfo.InvariantCulture);
            var kept = told.Groups[2].Success ? int.Parse(told.Groups[2].Value, CultureInfo.InvariantCulture) : all;
            Assert.Equal((kept, all), (whole.Count, drawn.Count));
            sum += kept;
        }

        return sum;
    }

    // lines that end in the tips of two arrows, with the figure printed beside their middle
    private static List<(double DrawnMm, double TrueMm, bool IsBroken)> Dimensions(Sheet sheet)
    {
        var paths = Paths(sheet.Items).ToList();
        var tips = paths.Where(p => p.Fill == Ink.Black && p.Stroke is null).Select(p => Points(p)).Where(p => p.Count == 3).Select(p => p[0]).ToList();
        var texts = ItemWalk.Texts(sheet).Where(t => Regex.IsMatch(t.Text, "^[0-9]+( E)?$")).ToList();
        var found = new List<(double, double, bool)>();
        foreach (var line in paths.Where(p => p.Stroke is { WidthMm: 0.25 } && p.Fill is null).Select(Points).Where(p => p.Count is 2 or 6))
        {
            var (from, to) = (line[0], line[^1]);
            if (tips.Exists(t => Near(t, from)) && tips.Exists(t => Near(t, to)) && !Near(from, to))
            {
                var middle = new Point((from.X + to.X) / 2, (from.Y + to.Y) / 2);
                // the legend's sample has none; what is drawn without one is missed in the count
                var figure = texts.SingleOrDefault(t => Math.Abs(from.Y - to.Y) < 0.01 ? Math.Abs(t.At.X - middle.X) < 0.01 && Math.Abs(t.At.Y - middle.Y) < 4 : Math.Abs(t.At.Y - 1.25 - middle.Y) < 0.01 && Math.Abs(t.At.X - middle.X) < 2);
                if (figure is null)
                {
                    continue;
                }

                found.Add((Math.Abs(from.X - to.X) + Math.Abs(from.Y - to.Y), double.Parse(figure.Text.Split(' ')[0], CultureInfo.InvariantCulture), line.Count == 6));
            }
        }

        return found;
    }

    private static bool Near(Point a, Point b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y) < 0.01;

    private static List<Point> Points(PathItem path) => [.. path.Outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, _ => (Point?)null }).OfType<Point>()];

    private static IEnumerable<PathItem> Paths(IEnumerable<Item> items) => items.SelectMany(i => i is GroupItem g ? Paths(g.Items) : i is PathItem p ? [p] : (IEnumerable<PathItem>)[]);
}
