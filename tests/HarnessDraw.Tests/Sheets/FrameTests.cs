using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;

namespace HarnessDraw.Tests.Sheets;

public class FrameTests
{
    public static TheoryData<string, TitleBlockForm> Sizes
    {
        get
        {
            var data = new TheoryData<string, TitleBlockForm>();
            foreach (var paper in PaperSizes.All)
            {
                data.Add(paper.Name, TitleBlockForm.Small);
                if (paper.HeightMm > 250)
                {
                    data.Add(paper.Name, TitleBlockForm.Chart);
                }
            }

            return data;
        }
    }

    // ISO 5457: fields on the long and the short side, and the drawing space of the trimmed sheets
    [Theory]
    [InlineData("A0", 24, 16, 1159, 821)]
    [InlineData("A1", 16, 12, 811, 574)]
    [InlineData("A2", 12, 8, 564, 400)]
    [InlineData("A3", 8, 6, 390, 277)]
    [InlineData("A4 landscape", 6, 4, 267, 190)]
    public void Fields_and_drawing_space_are_those_of_ISO_5457(string name, int across, int down, double width, double height)
    {
        var border = GridBorder.Of(PaperSizes.Find(name)!);
        Assert.Equal(across, border.Across.Length + 1);
        Assert.Equal(down, border.Down.Length + 1);
        Assert.Equal(width, border.Frame.Width, 9);
        Assert.Equal(height, border.Frame.Height, 9);
    }

    [Fact]
    public void An_upright_A4_has_its_fields_the_other_way_round()
    {
        var border = GridBorder.Of(PaperSizes.A4);
        Assert.Equal((4, 6), (border.Across.Length + 1, border.Down.Length + 1));
        Assert.Equal((180, 277), (border.Frame.Width, border.Frame.Height));
    }

    // coordinates of the ISO 5457 templates (CC0) for A3 and A0
    [Fact]
    public void Divisions_lie_where_the_published_templates_have_them()
    {
        var a3 = GridBorder.Of(PaperSizes.A3);
        Assert.Equal([60, 110, 160, 210, 260, 310, 360], a3.Across);
        Assert.Equal([48.5, 98.5, 148.5, 198.5, 248.5], a3.Down);
        Assert.Equal(new Box(15, 5, 400, 287), a3.Outer);
        var a0 = GridBorder.Of(PaperSizes.A0);
        Assert.Equal((44.5, 70.5), (a0.Across[0], a0.Down[0]));
        Assert.Equal("ABCDEFGHJKLMNPQR", string.Concat(Enumerable.Range(0, 16).Select(GridBorder.Letter)));
    }

    // ASME Y14.1 zones of C, D and E, short side by long side
    [Theory]
    [InlineData("ANSI C", 4, 4)]
    [InlineData("ANSI D", 8, 4)]
    [InlineData("ANSI E", 8, 8)]
    public void Zones_are_those_of_ASME_Y14_1(string name, int across, int down)
    {
        var border = GridBorder.Of(PaperSizes.Find(name)!);
        Assert.Equal((across, down), (border.Across.Length + 1, border.Down.Length + 1));
    }

    // a viewer without the shipped face takes a wider one
    [Theory]
    [InlineData(TitleBlockForm.Small)]
    [InlineData(TitleBlockForm.Chart)]
    public void A_word_of_any_length_keeps_clear_of_the_next_field_also_in_the_fallback_face(TitleBlockForm form)
    {
        var words = string.Concat(Enumerable.Repeat("Aldervane coach ", 8));
        foreach (var length in Enumerable.Range(1, 110))
        {
            var name = words[..length];
            var block = new TitleBlock { Vehicle = name, Title = name, Owner = name, Drawn = name, Approved = name, Checked = name, Number = name, Build = name };
            var items = ItemWalk.All(new Sheet("s", "s", PaperSizes.A3, Frame.Compose(PaperSizes.A3, block, new() { Form = form }).Items)).ToList();
            var uprights = items.OfType<PathItem>().Select(p => p.Outline.Steps).Where(s => s is [PathStep.MoveTo(var a), PathStep.LineTo(var b)] && a.X == b.X)
                .Select(s => (((PathStep.MoveTo)s[0]).To.X, Top: ((PathStep.MoveTo)s[0]).To.Y, Bottom: ((PathStep.LineTo)s[1]).To.Y)).ToList();
            Assert.NotEmpty(uprights);
            foreach (var text in items.OfType<TextItem>().Where(t => t.Anchor == TextAnchor.Start))
            {
                // small letters of DejaVu Sans Bold are 14 % wider than those of DejaVu Sans, measured; the plan counts 9 %
                var growth = text.Weight == FaceWeight.Bold && text.CapHeightMm > 2.5 ? 1.14 / 1.09 : 1;
                var right = text.At.X + (TextMeasure.PlanWidth(text.Text, text.CapHeightMm, text.Weight) * growth);
                Assert.DoesNotContain(uprights, u => u.X > text.At.X && u.X < right + 0.2 && text.At.Y > u.Top && text.At.Y < u.Bottom);
            }
        }
    }

    [Fact]
    public void A_point_has_a_field()
    {
        var a3 = GridBorder.Of(PaperSizes.A3);
        Assert.Equal("A1", a3.FieldAt(new(21, 11)));
        Assert.Equal("C5", a3.FieldAt(new(215, 120)));
        Assert.Equal("F8", a3.FieldAt(new(409, 286)));
    }

    [Theory]
    [MemberData(nameof(Sizes))]
    public void A_full_frame_has_no_fault(string name, TitleBlockForm form)
    {
        var paper = PaperSizes.Find(name)!;
        var frame = Frame.Compose(paper, Full(), new() { Form = form });
        Assert.Empty(SheetChecker.Check(new Sheet("frame", "Frame", paper, frame.Items)));
        Assert.True(frame.Border.Frame.Grow(0.01).Contains(frame.TitleBox));
    }

    [Theory]
    [InlineData('W')]
    [InlineData('i')]
    [InlineData('Ж')]
    public void Names_of_300_characters_leave_the_block_whole(char letter)
    {
        var text = new string(letter, 300);
        var block = Full() with { Owner = text, Vehicle = text, Title = text, Build = text, Number = text, Rev = text, Date = text, Drawn = text, Approved = text, Checked = text, Type = text, Language = text, Scale = text, Waivers = text, Source = text, Note = text, Rules = text, NotForBuild = text, Revisions = [new(text, text, text, text, text)] };
        foreach (var form in (TitleBlockForm[])[TitleBlockForm.Chart, TitleBlockForm.Small])
        {
            var frame = Frame.Compose(PaperSizes.A4, block, new() { Form = form });
            Assert.Empty(SheetChecker.Check(new Sheet("frame", "Frame", PaperSizes.A4, frame.Items)));
        }
    }

    [Fact]
    public void Newest_revision_stands_on_top_and_hidden_ones_are_counted()
    {
        var block = Full() with { Revisions = [.. Enumerable.Range(0, 9).Select(i => new RevisionLine($"R{i}", "2026-01-01", $"change {i}"))] };
        var texts = SheetChecker.Texts(Frame.Compose(PaperSizes.A2, block).Items).GroupBy(t => t.Item.Text).ToDictionary(g => g.Key, g => g.First().Shape.EnvelopeInternal.MinY, StringComparer.Ordinal);
        Assert.True(texts["R8"] < texts["R7"] && texts["R3"] < texts["REV"]);
        Assert.DoesNotContain("R2", texts.Keys);
        Assert.Contains("3 earlier revisions are not listed here", texts.Keys);
    }

    [Fact]
    public void Not_for_build_is_said_large()
    {
        var texts = SheetChecker.Texts(Frame.Compose(PaperSizes.A4, Full() with { NotForBuild = "3 errors" }, new() { Form = TitleBlockForm.Small }).Items);
        Assert.Equal(7, Assert.Single(texts, t => t.Item.Text == "NOT FOR BUILD").Item.CapHeightMm);
        Assert.DoesNotContain(SheetChecker.Texts(Frame.Compose(PaperSizes.A4, Full() with { NotForBuild = null }).Items), t => t.Item.Text == "NOT FOR BUILD");
    }

    [Theory]
    [InlineData("a4", 210, 297)]
    [InlineData("A4 landscape", 297, 210)]
    [InlineData("A2", 594, 420)]
    [InlineData("A2 portrait", 420, 594)]
    [InlineData("2A0", 1682, 1189)]
    [InlineData("letter", 215.9, 279.4)]
    [InlineData("ANSI B", 431.8, 279.4)]
    [InlineData("ansi d", 863.6, 558.8)]
    [InlineData("roll 914 x 2400", 2400, 914)]
    public void A_paper_is_found_by_name(string name, double width, double height)
    {
        var paper = PaperSizes.Find(name)!;
        Assert.Equal(width, paper.WidthMm, 6);
        Assert.Equal(height, paper.HeightMm, 6);
    }

    [Theory]
    [InlineData("A9")]
    [InlineData("roll 914")]
    [InlineData("roll x 4")]
    [InlineData("roll 914 x 999999999")]
    [InlineData("")]
    public void An_unknown_paper_is_none(string name) => Assert.Null(PaperSizes.Find(name));

    internal static TitleBlock Full() => new()
    {
        Owner = "Brackmere Works",
        Vehicle = "BRACKMERE SIX",
        Title = "Harness, engine bay and front lighting",
        Build = "A/C: yes, fog lamps: yes",
        Number = "HX6-EB-100",
        Rev = "C",
        Date = "2026-11-20",
        Drawn = "M. R.",
        Approved = "T. K.",
        Type = "wall chart",
        Sheet = 1,
        Sheets = 5,
        Source = "4f2c91ab",
        Checked = "A. B.",
        Note = "This drawing is for the build named here only.",
        Revisions = [new("A", "2026-09-11", "First issue", "all", "M.R."), new("B", "2026-10-02", "Horn splice moved clear of the hot zone", "E3", "M.R.")],
        NotForBuild = "3 errors: see the list of findings",
    };
}
