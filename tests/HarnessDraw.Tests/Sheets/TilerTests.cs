using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Writing;

namespace HarnessDraw.Tests.Sheets;

public class TilerTests
{
    [Theory]
    [InlineData("A4", "A2")]
    [InlineData("Letter", "A2")]
    [InlineData("A4", "A0")]
    [InlineData("Letter", "ANSI D")]
    [InlineData("A3", "A1")]
    [InlineData("Tabloid", "A0")]
    public void Tiles_cover_the_sheet_with_12_mm_of_overlap(string page, string paper)
    {
        var sheet = SampleSheet.Make(PaperSizes.Find(paper)!);
        var tiles = Tiler.Tile(sheet, PaperSizes.Find(page)!);
        var cuts = tiles.Select(t => t.Items.OfType<GroupItem>().Single(g => g.Name == "tile").Clip!.Value).ToList();
        Assert.Contains(cuts, c => c.X == 0 && c.Y == 0);
        Assert.True(cuts.Max(c => c.Right) >= sheet.Paper.WidthMm && cuts.Max(c => c.Bottom) >= sheet.Paper.HeightMm);
        foreach (var cut in cuts.Where(c => c.X > 0))
        {
            Assert.Contains(cuts, left => left.Y == cut.Y && Math.Abs(left.Right - cut.X - 12) < 1e-9);
        }

        foreach (var cut in cuts.Where(c => c.Y > 0))
        {
            Assert.Contains(cuts, above => above.X == cut.X && Math.Abs(above.Bottom - cut.Y - 12) < 1e-9);
        }
    }

    [Theory]
    [InlineData("A4", 190, 259)]
    [InlineData("Letter", 190, 259)]
    [InlineData("A3", 259, 400)]
    [InlineData("Tabloid", 259, 400)]
    public void All_ink_lies_in_a_live_area_that_both_papers_print(string page, double shortMm, double longMm)
    {
        foreach (var tile in Tiler.Tile(SampleSheet.Make(PaperSizes.A2), PaperSizes.Find(page)!))
        {
            var (w, h) = tile.Paper.WidthMm < tile.Paper.HeightMm ? (shortMm, longMm) : (longMm, shortMm);
            var live = new Box((tile.Paper.WidthMm - w) / 2, (tile.Paper.HeightMm - h) / 2, w, h);
            foreach (var item in SheetShapes.Place(tile.Items))
            {
                var e = item.Shape.EnvelopeInternal;
                Assert.True(live.Grow(0.01).Contains(Box.FromEdges(e.MinX, e.MinY, e.MaxX, e.MaxY)), $"{item.Item} at {e}");
            }
        }
    }

    [Fact]
    public void Bars_of_100_mm_and_4_in_stand_in_both_directions()
    {
        foreach (var paper in (Paper[])[PaperSizes.A3, PaperSizes.A2])
        {
            var marks = Tiler.Tile(SampleSheet.Make(paper), PaperSizes.A4)[0].Items.OfType<GroupItem>().Single(g => g.Name == "tile-marks");
            var lines = marks.Items.OfType<PathItem>().Select(p => CentreLine.Of(p.Outline)).Where(l => l.Length == 1).Select(l => (l[0].LengthMm, l[0].At(0).Direction)).ToList();
            foreach (var length in (double[])[100, 101.6])
            {
                Assert.Single(lines, l => Math.Abs(l.LengthMm - length) < 1e-9 && Math.Abs(l.Direction.X) > 0.5);
                Assert.Single(lines, l => Math.Abs(l.LengthMm - length) < 1e-9 && Math.Abs(l.Direction.Y) > 0.5);
            }
        }
    }

    [Fact]
    public void Marks_have_no_fault_and_tell_code_and_neighbours()
    {
        foreach (var paper in (Paper[])[PaperSizes.A3, PaperSizes.A2])
        {
            foreach (var tile in Tiler.Tile(SampleSheet.Make(paper), PaperSizes.Letter))
            {
                Assert.Empty(SheetChecker.Check(tile with { Items = [.. tile.Items.Where(i => i is GroupItem { Name: "tile-marks" })] }));
            }
        }

        var texts = Tiler.Tile(SampleSheet.Make(PaperSizes.A2), PaperSizes.A4).Select(t => SheetChecker.Texts(t.Items).Select(x => x.Item.Text).ToList()).ToList();
        Assert.Equal(8, texts.Count);
        Assert.Contains("B3", texts[6]);
        Assert.Contains("← B2", texts[6]);
        Assert.Contains("→ B4", texts[6]);
        Assert.Contains("↑ A3", texts[6]);
        Assert.DoesNotContain(texts[6], t => t.StartsWith('↓'));
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("A3")]
    public void How_to_print_stands_on_every_tile_to_its_last_word(string page)
    {
        foreach (var tile in Tiler.Tile(SampleSheet.Make(PaperSizes.A1) with { Title = "A name that is far longer than one line of the narrowest page holds, and goes on and on: wall chart" }, PaperSizes.Find(page)!))
        {
            Assert.EndsWith("neighbours overlap 12 mm.", string.Join(' ', SheetChecker.Texts([tile.Items.OfType<GroupItem>().Single(g => g.Name == "tile-marks")]).Select(t => t.Item.Text)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_tile_shows_its_piece_at_true_size_and_place()
    {
        var dot = new PathItem(Outline.Circle(new(200, 250), 1)) { Fill = Ink.Black };
        var sheet = new Sheet("s", "S", PaperSizes.A2, [dot]);
        var shown = Tiler.Tile(sheet, PaperSizes.A4).Where(t => SheetShapes.Place(t.Items).Any(p => ReferenceEquals(p.Item, dot))).ToList();
        var one = Assert.Single(shown);
        var placed = SheetShapes.Place(one.Items).Single(p => ReferenceEquals(p.Item, dot)).Shape.EnvelopeInternal;
        Assert.Equal(2, placed.Width, 6);
    }
}
