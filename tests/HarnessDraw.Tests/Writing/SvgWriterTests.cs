using System.Collections.Immutable;
using System.Text;
using System.Xml.Linq;
using HarnessDraw.Drawing;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Tests.Writing;

public class SvgWriterTests
{
    private static readonly Paper A4 = new("A4", 210, 297);

    public static TheoryData<string> HostileTexts =>
    [
        "<script>alert(1)</script>", "a & b \"c\" 'd' ]]>", "line\nend\ttab\rreturn", "\u202eright to left\u2066", "\u0000\u0008\u001f\u007f\u0085",
        "lone \ud800 surrogate \udc00", "\ufffe\uffff", new string('x', 300), "--></svg>", " two  spaces ",
    ];

    [Theory]
    [MemberData(nameof(HostileTexts))]
    public void Hostile_text_stays_text(string hostile)
    {
        var tag = new Tag { Wire = hostile, Circuit = hostile, For = hostile, Cavity = hostile, Segment = hostile, Title = hostile };
        var sheet = Sheet(
            new TextItem(hostile, new(10, 10), 2.5) { Tag = tag },
            new GroupItem([new PathItem(Outline.Line(0, 0, 1, 1)) { Tag = tag }]) { Name = hostile, Tag = tag },
            new LinkItem(new(0, 0, 1, 1), "javascript:" + hostile)) with
        { Title = hostile, Language = hostile };
        var xml = Parse(SvgWriter.Write(sheet));
        Assert.DoesNotContain(xml.Descendants(), e => e.Name.LocalName is "script" or "a");
        var text = Assert.Single(xml.Descendants(), e => e.Name.LocalName == "text");
        Assert.Equal(ShownText.Of(hostile), text.Value);
    }

    [Fact]
    public void The_view_box_is_the_paper_in_millimetres()
    {
        var root = Parse(SvgWriter.Write(Sheet())).Root!;
        Assert.Equal("0 0 210 297", root.Attribute("viewBox")!.Value);
        Assert.Equal("210mm", root.Attribute("width")!.Value);
        Assert.Equal("297mm", root.Attribute("height")!.Value);
    }

    [Fact]
    public void A_white_sheet_lies_under_everything_but_not_under_the_drawings_of_a_page()
    {
        var paper = Parse(SvgWriter.Write(Sheet(new PathItem(Outline.Line(0, 0, 9, 0))))).Root!.Elements().First(e => e.Name.LocalName != "title");
        Assert.Equal("rect id=paper x=0 y=0 width=210 height=297 fill=#fff", $"{paper.Name.LocalName} {string.Join(' ', paper.Attributes().Select(a => $"{a.Name.LocalName}={a.Value}"))}");
        Assert.DoesNotContain("rect", Text(SvgWriter.Write(Sheet(), new() { PagePart = "s1-" })), StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_have_three_decimals_and_no_negative_zero()
    {
        var svg = Text(SvgWriter.Write(Sheet(new PathItem(Outline.Polyline([new(-0.0001, 1.23456), new(1e-9, 2), new(-0.0005, -12.5), new(100000.1, 3)])))));
        Assert.Contains("d=\"M0 1.235V2L-0.001 -12.5L100000.1 3\"", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void The_contract_attributes_are_written()
    {
        var svg = Parse(SvgWriter.Write(Sheet(new PathItem(Outline.Line(0, 0, 9, 0))
        {
            Role = ItemRole.Lane,
            Stroke = new(Ink.Black, 1),
            Tag = new() { Wire = "E01", Circuit = "wiper", Cavity = "FW:A1", Segment = "s1", For = "E01", Title = "Wire E01" },
        })));
        var path = svg.Descendants().Single(e => e.Name.LocalName == "path");
        Assert.Equal(["E01", "wiper", "E01", "FW:A1", "s1"], path.Attributes().Where(a => a.Name.LocalName.StartsWith("data-", StringComparison.Ordinal)).Select(a => a.Value));
        Assert.Equal("Wire E01", path.Value);
    }

    [Fact]
    public void A_text_in_two_faces_has_a_span_a_face_and_fixed_widths()
    {
        var svg = Parse(SvgWriter.Write(Sheet(new TextItem("to G2 → Жгут", new(100, 50), 2.5) { Anchor = TextAnchor.End })));
        var spans = svg.Descendants().Where(e => e.Name.LocalName == "tspan").ToList();
        Assert.Equal("to G2 → Жгут", string.Concat(spans.Select(s => s.Value)));
        Assert.StartsWith("'Inter'", spans[^1].Attribute("font-family")!.Value, StringComparison.Ordinal);
        var text = svg.Descendants().Single(e => e.Name.LocalName == "text");
        Assert.Equal("100", text.Attribute("x")!.Value);
        Assert.Equal(TextMeasure.Width("to G2 → Жгут", 2.5), double.Parse(text.Attribute("textLength")!.Value), 0.001);
    }

    [Fact]
    public void Embedding_puts_in_only_the_faces_used()
    {
        var plain = Text(SvgWriter.Write(Sheet(new TextItem("F03", new(1, 9), 2.5)), new() { EmbedFonts = true }));
        Assert.Equal(1, Count(plain, "@font-face"));
        Assert.DoesNotContain("@font-face", Text(SvgWriter.Write(Sheet(new TextItem("F03", new(1, 9), 2.5)))), StringComparison.Ordinal);
        var two = Text(SvgWriter.Write(Sheet(new TextItem("F03 →", new(1, 9), 2.5) { Weight = FaceWeight.Bold }), new() { EmbedFonts = true }));
        Assert.Equal(2, Count(two, "@font-face"));
    }

    [Fact]
    public void A_clip_lies_in_the_groups_own_coordinates_and_ids_are_unique()
    {
        var group = new GroupItem([new PathItem(Outline.Line(0, 0, 9, 9))]) { Name = "part", Clip = new(0, 0, 5, 5), MoveXMm = 10, TurnDegrees = 90, Scale = 0.5 };
        var svg = Parse(SvgWriter.Write(Sheet(group, group)));
        var ids = svg.Descendants().Select(e => e.Attribute("id")?.Value).OfType<string>().ToList();
        Assert.Equal(["paper", "part", "clip-1", "part-2", "clip-2"], ids);
        Assert.Equal("translate(10 0)rotate(90)scale(0.5)", svg.Descendants().First(e => e.Name.LocalName == "g").Attribute("transform")!.Value);
    }

    [Fact]
    public void Two_writings_are_the_same_bytes()
    {
        var sheet = Sheet(new TextItem("F03 →", new(1, 9), 2.5), new PathItem(Outline.Circle(new(5, 5), 2)) { Fill = Ink.Caution });
        Assert.Equal(SvgWriter.Write(sheet), SvgWriter.Write(sheet));
    }

    private static Sheet Sheet(params ImmutableArray<Item> items) => new("wall-chart", "Wall chart", A4, items);

    private static string Text(byte[] svg) => Encoding.UTF8.GetString(svg);

    private static XDocument Parse(byte[] svg) => XDocument.Parse(Text(svg), LoadOptions.PreserveWhitespace);

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}
