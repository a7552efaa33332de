using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Drawing;

/// <summary>The checker finds each fault when it is there and says nothing when it is not.</summary>
public class SheetCheckerTests
{
    private static TextItem Text(string text, double x, double y, double cap = 2.5) => new(text, new(x, y), cap) { Role = ItemRole.Lettering };

    private static PathItem Edge(double x1, double y1, double x2, double y2) => new(Outline.Line(x1, y1, x2, y2)) { Stroke = new(Ink.Black, 0.25) };

    private static PathItem Lane(string wire, double x1, double y1, double x2, double y2) =>
        new(Outline.Line(x1, y1, x2, y2)) { Role = ItemRole.Lane, Stroke = new(Ink.Black, 1), Tag = new() { Wire = wire, Circuit = "c-" + wire } };

    private static PathItem Plate(Box box) => new(Outline.Rectangle(box)) { Role = ItemRole.Plate, Fill = Ink.Black };

    private static List<string> Kinds(params ImmutableArray<Item> items) =>
        [.. SheetChecker.Check(new Sheet("s", "S", PaperSizes.A4, items)).Select(f => f.Kind)];

    [Fact]
    public void A_text_over_a_text_is_found() => Assert.Equal([SheetChecker.TextOnText], Kinds(Text("alpha", 30, 50), Text("beta", 33, 51)));

    [Fact]
    public void Texts_in_rows_are_fine() => Assert.Empty(Kinds(Text("alpha", 30, 50), Text("beta", 30, 53.8), Text("gamma", 60, 50)));

    [Fact]
    public void A_turned_text_is_measured_where_it_lies()
    {
        var turned = Text("long upright text", 30, 90) with { TurnDegrees = -90 };
        Assert.Equal([SheetChecker.TextOnText], Kinds(turned, Text("x", 28, 80)));
        Assert.Empty(Kinds(turned, Text("x", 40, 90)));
    }

    [Fact]
    public void A_foreign_lane_through_a_text_is_found()
    {
        Assert.Equal([SheetChecker.TextOnLane], Kinds(Lane("E01", 20, 49, 80, 49), Text("label", 30, 50)));
        Assert.Equal([SheetChecker.TextOnLane], Kinds(Text("label", 30, 50), Lane("E01", 20, 49, 80, 49)));
        Assert.Empty(Kinds(Lane("E01", 20, 49, 80, 49), Text("label", 30, 50) with { Tag = new() { For = "E01" } }));
        Assert.Equal([SheetChecker.TextOnLane], Kinds(Lane("E01", 20, 49, 80, 49), Text("label", 30, 50) with { Tag = new() { For = "E02" } }));
        Assert.Empty(Kinds(Lane("E01", 20, 52, 80, 52), Text("label", 30, 50)));
    }

    [Fact]
    public void A_text_on_an_edge_is_found_and_one_beside_it_is_not()
    {
        Assert.Equal([SheetChecker.TextOnEdge], Kinds(Edge(20, 49, 80, 49), Text("label", 30, 50)));
        Assert.Empty(Kinds(Edge(20, 51, 80, 51), Text("label", 30, 50)));
    }

    [Fact]
    public void A_text_on_a_dot_is_found()
    {
        var dot = new PathItem(Outline.Circle(new(31, 49), 0.5)) { Fill = Ink.Black };
        Assert.Equal([SheetChecker.TextOnEdge], Kinds(dot, Text("label", 30, 50)));
    }

    [Fact]
    public void A_text_may_lie_in_a_plate_but_not_on_its_rim()
    {
        Assert.Empty(Kinds(Plate(new(28, 45, 30, 8)), Text("label", 30, 50)));
        Assert.Equal([SheetChecker.TextOnEdge], Kinds(Plate(new(28, 45, 6, 8)), Text("label", 30, 50)));
    }

    [Fact]
    public void A_text_may_lie_on_a_backdrop()
    {
        var body = new PathItem(Outline.Line(10, 49, 200, 49)) { Role = ItemRole.Backdrop, Stroke = new(Ink.Hairline, 0.7) };
        Assert.Empty(Kinds(body, Text("label", 30, 50)));
    }

    [Fact]
    public void What_a_plate_hides_does_not_count_and_what_lies_over_it_does()
    {
        Assert.Empty(Kinds(Lane("E01", 20, 49, 80, 49), Plate(new(28, 45, 30, 8)), Text("label", 30, 50)));
        Assert.Equal([SheetChecker.TextOnLane], Kinds(Plate(new(28, 45, 30, 8)), Lane("E01", 20, 49, 80, 49), Text("label", 30, 50)));
    }

    [Fact]
    public void What_leaves_the_paper_or_the_frame_is_found()
    {
        Assert.Equal([SheetChecker.OutsideFrame], Kinds(Text("label", 205, 50)));
        var frame = Frame.Compose(PaperSizes.A4, FrameTests.Full(), new() { Form = TitleBlockForm.Small }).Items;
        Assert.Empty(Kinds(frame.Add(Edge(30, 30, 40, 30))));
        Assert.Equal([SheetChecker.OutsideFrame], Kinds(frame.Add(Edge(17, 100, 40, 100))));
    }

    [Fact]
    public void Lanes_over_each_other_are_found_and_crossings_are_not()
    {
        Assert.Equal([SheetChecker.LaneOnLane], Kinds(Lane("E01", 20, 50, 80, 50), Lane("E02", 40, 50.5, 90, 50.5)));
        Assert.Empty(Kinds(Lane("E01", 20, 50, 80, 50), Lane("E02", 20, 51.5, 80, 51.5)));
        Assert.Empty(Kinds(Lane("E01", 20, 50, 80, 50), Lane("E02", 40, 30, 40, 70)));
        Assert.Empty(Kinds(Lane("E01", 20, 50, 80, 50), Lane("E02", 40, 30, 80, 70)));
        Assert.Equal([SheetChecker.LaneOnLane], Kinds(Lane("E01", 20, 50, 80, 50), Lane("E02", 20, 45, 80, 55)));
    }

    [Fact]
    public void Small_capitals_are_found_also_in_a_scaled_group()
    {
        Assert.Equal([SheetChecker.SmallText], Kinds(Text("label", 30, 50, 2.4)));
        Assert.Equal([SheetChecker.SmallText], Kinds(new GroupItem([Text("label", 30, 50, 2.5)]) { Scale = 0.9 }));
        Assert.Empty(Kinds(new GroupItem([Text("label", 30, 50, 2.0)]) { Scale = 1.25 }));
    }

    [Fact]
    public void Groups_are_moved_turned_scaled_and_clipped()
    {
        var label = Text("label", 0, 0);
        Assert.Equal([SheetChecker.TextOnText], Kinds(new GroupItem([label]) { MoveXMm = 50, MoveYMm = 50 }, Text("other", 52, 50)));
        Assert.Empty(Kinds(new GroupItem([label]) { MoveXMm = 50, MoveYMm = 50, TurnDegrees = 90 }, Text("other", 54, 49)));
        Assert.Equal([SheetChecker.TextOnText], Kinds(new GroupItem([new GroupItem([label]) { MoveXMm = 10 }]) { MoveXMm = 50, MoveYMm = 50, TurnDegrees = 90 }, Text("other", 49, 63)));
        Assert.Empty(Kinds(new GroupItem([label]) { MoveXMm = 50, MoveYMm = 50, Clip = new(0, 10, 5, 5) }, Text("other", 52, 50)));
    }

    [Fact]
    public void A_character_no_face_has_is_found() => Assert.Equal([SheetChecker.MissingGlyph], Kinds(Text("fan あ", 30, 50)));
}
