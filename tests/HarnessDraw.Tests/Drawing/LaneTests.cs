using System.Text;
using HarnessDraw.Drawing;
using HarnessDraw.Writing.Png;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Tests.Drawing;

public class LaneTests
{
    private static readonly Outline Corner = new([new PathStep.MoveTo(new(0, 0)), new PathStep.LineTo(new(40, 0)), new PathStep.ArcTo(new(43, 3), 3, true), new PathStep.LineTo(new(43, 40))]);

    [Fact]
    public void A_centre_line_is_measured_exactly()
    {
        var line = Assert.Single(CentreLine.Of(Corner));
        Assert.Equal(40 + (Math.PI * 1.5) + 37, line.LengthMm, 9);
        var (at, direction) = line.At(40 + (Math.PI * 0.75));
        Assert.Equal(40 + (3 * Math.Sin(Math.PI / 4)), at.X, 9);
        Assert.Equal(3 - (3 * Math.Cos(Math.PI / 4)), at.Y, 9);
        Assert.Equal(direction.X, direction.Y, 9);
        Assert.Equal(new Point(43, 40), line.At(line.LengthMm).At);
    }

    [Fact]
    public void A_half_circle_and_an_anticlockwise_arc_are_followed()
    {
        var half = CentreLine.Of(new([new PathStep.MoveTo(new(0, 0)), new PathStep.ArcTo(new(10, 0), 5, true)]))[0];
        Assert.Equal(Math.PI * 5, half.LengthMm, 9);
        Assert.Equal(-5, half.At(Math.PI * 2.5).At.Y, 9);
        var other = CentreLine.Of(new([new PathStep.MoveTo(new(0, 0)), new PathStep.ArcTo(new(10, 0), 5, false)]))[0];
        Assert.Equal(5, other.At(Math.PI * 2.5).At.Y, 9);
    }

    [Theory]
    [InlineData("BU/OG", false)]
    [InlineData("YE", false)]
    [InlineData("GY/RD", false)]
    [InlineData("BK/WH", true)]
    [InlineData("WH", true)]
    public void Exactly_one_item_is_the_lane_and_carries_the_tag(string code, bool black)
    {
        var tag = new Tag { Wire = "E01" };
        var items = LanePainter.Paint(Corner, new(WireColour.Parse(code)) { BlackInk = black }, tag);
        var lane = Assert.Single(items, i => i.Role == ItemRole.Lane);
        Assert.Same(tag, lane.Tag);
        Assert.All(items, i => Assert.True(i.Tag is null || ReferenceEquals(i, lane)));
    }

    [Fact]
    public void A_pale_lane_has_an_outline_of_0_19_mm_a_side()
    {
        var widths = LanePainter.Paint(Corner, new(WireColour.Parse("YE"))).OfType<PathItem>().Select(p => p.Stroke!.WidthMm).ToList();
        Assert.Equal(1.1, widths[0], 9);
        Assert.Equal(0.72, widths[1], 9);
    }

    [Fact]
    public void A_tracer_bar_stands_every_5_mm_and_none_reaches_past_an_end()
    {
        var straight = Outline.Line(0, 0, 100, 0);
        var bars = LanePainter.Paint(straight, new(WireColour.Parse("GN/WH"))).OfType<PathItem>().Last();
        Assert.InRange(BarsOf(bars).Count, 19, 20);
        var xs = BarsOf(bars).Corners.Select(p => p.X).ToList();
        Assert.InRange(xs.Min(), 0, 6);
        Assert.InRange(xs.Max(), 94, 100);
    }

    [Fact]
    public void Bars_of_neighbours_never_line_up()
    {
        double First(int index) => BarsOf(LanePainter.Paint(Outline.Line(0, 0, 60, 0), new(WireColour.Parse("GN/WH")) { Index = index }).OfType<PathItem>().Last())[0][0].X % 5;
        Assert.True(Math.Abs(First(0) - First(1)) > 1);
        Assert.True(Math.Abs(First(1) - First(2)) > 1);
    }

    [Fact]
    public void Bars_lean_the_same_way_whichever_way_the_lane_was_drawn()
    {
        foreach (var (x, y) in (ReadOnlySpan<(double, double)>)[(60, 0), (-60, 0), (0, 60), (0, -60)])
        {
            var bars = LanePainter.Paint(Outline.Line(0, 0, x, y), new(WireColour.Parse("GN/WH"))).OfType<PathItem>().Last();
            var corners = BarsOf(bars)[0];

            // the edge across the lane rises to the right on paper
            var edge = corners[2] - corners[1];
            Assert.True(edge.X * edge.Y < 0, $"lane to {x}, {y}: edge {edge}");
        }
    }

    [Fact]
    public void A_tracer_close_to_its_base_gets_a_rim()
    {
        Assert.Equal(3, LanePainter.Paint(Outline.Line(0, 0, 60, 0), new(WireColour.Parse("BK/VT"))).Length);
        Assert.Equal(2, LanePainter.Paint(Outline.Line(0, 0, 60, 0), new(WireColour.Parse("BK/WH"))).Length);
    }

    [Fact]
    public void Black_ink_uses_black_and_white_only()
    {
        var codes = ColourCodes.All.Select(c => c.Code).ToArray();
        foreach (var code in codes.SelectMany(a => codes.Where(b => b != a).Select(b => $"{a}/{b}")))
        {
            var items = LanePainter.Paint(Corner, new(WireColour.Parse(code)) { BlackInk = true }).AddRange(Swatch.Paint(WireColour.Parse(code), new(0, 0, 5.6, 2.5), blackInk: true));
            foreach (var path in items.OfType<PathItem>())
            {
                Assert.All((Rgb?[])[path.Fill, path.Stroke?.Colour], c => Assert.True(c is null || c == new Rgb(0, 0, 0) || c == Ink.Paper));
            }
        }
    }

    [Fact]
    public void Polygons_are_drawn_and_bounded_as_their_corners_one_after_the_other()
    {
        Point[][] bars = [[new(1, 1), new(4, 1), new(3, 3)], [new(-2, 8), new(5, 8), new(5, 9.5), new(-2, 9)]];
        var together = new Outline([new PathStep.Polygons([.. bars.SelectMany(b => b)], [3, 7])]);
        var apart = new Outline([.. bars.SelectMany(b => Outline.Polyline(b, closed: true).Steps)]);
        Assert.Equal(SvgOf(apart), SvgOf(together));
        Assert.Equal(ItemBounds.Of(new PathItem(apart)), ItemBounds.Of(new PathItem(together)));
        Assert.Equal(CentreLine.Of(apart).Select(l => l.LengthMm), CentreLine.Of(together).Select(l => l.LengthMm));
        Assert.Equal(PngOf(apart), PngOf(together));
    }

    private static string SvgOf(Outline outline) => Encoding.UTF8.GetString(SvgWriter.Write(SheetOf(outline)));

    private static byte[] PngOf(Outline outline) => PngWriter.Write(SheetOf(outline), 200, FaceSet.Shipped);

    private static Sheet SheetOf(Outline outline) => new("x", "x", new("small", 20, 20), [new PathItem(outline) { Fill = Ink.Black }]);

    private static PathStep.Polygons BarsOf(PathItem item) => Assert.IsType<PathStep.Polygons>(Assert.Single(item.Outline.Steps));
}
