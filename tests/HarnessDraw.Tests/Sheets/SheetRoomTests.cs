using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Sheets use their paper: no rows without a figure, no page begun for a line, drawings as large as there is room.</summary>
public class SheetRoomTests
{
    [Fact]
    public void Studs_are_drawn_large_where_that_takes_no_page_more()
    {
        var sheets = SheetKinds.Compose(SheetKinds.Power, ExamplePlans.Of("brackmere-six"), [], new()).Sheets;
        Assert.Equal(2, sheets.Length);

        // a nut is 11.2 mm wide at the usual size
        Assert.Contains(ItemWalk.All(sheets[1]).OfType<PathItem>(), p => Near(p, 11.2 * 1.4, 5 * 1.4));
        Assert.DoesNotContain(ItemWalk.All(sheets[1]).OfType<PathItem>(), p => Near(p, 11.2, 5));
    }

    [Fact]
    public void A_blank_position_takes_the_kind_of_fuse_of_its_panel_and_a_holder_in_the_wiring_has_none()
    {
        var sheets = SheetKinds.Compose(SheetKinds.FuseCard, ExamplePlans.Of("aldervane-coach"), [], new()).Sheets;

        // the bar holds bolt-in fuses alone: a blade has legs of 2.8 mm, thin lines are those of a blank
        Assert.Equal(2, Blanks("BUS BAR").Count(p => Near(p, 13, 7)));
        Assert.DoesNotContain(Blanks("BUS BAR"), p => Near(p, 2.8, 2.8));
        Assert.DoesNotContain(Blanks("IN THE WIRING"), p => Near(p, 13, 7) || Near(p, 13, 7.4));

        IEnumerable<PathItem> Blanks(string card)
        {
            var sheet = sheets.Single(s => ItemWalk.Texts(s).Any(t => t.Text == card));
            var top = ItemWalk.Texts(sheet).Single(t => t.Text == card).At.Y;
            var bottom = ItemWalk.Texts(sheet).Where(t => t.Text == "NEVER A LARGER FUSE" && t.At.Y > top).Min(t => t.At.Y);
            return ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Stroke?.WidthMm == 0.25 && ItemBounds.Of(p) is { } box && box.Y > top && box.Bottom < bottom);
        }
    }

    [Fact]
    public void A_circuit_without_a_known_current_takes_no_row_to_read_but_is_named()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        foreach (var kind in new[] { SheetKinds.Commissioning, SheetKinds.BenchTest })
        {
            var words = string.Join(' ', SheetKinds.Compose(kind, plan, [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text));
            Assert.Contains("No current is known in any state, so there is nothing to compare with: tachometer signal,", words, StringComparison.Ordinal);
            Assert.DoesNotContain(" tachometer signal – ", words, StringComparison.Ordinal);
            Assert.DoesNotContain(" tachometer signal K25 ", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_long_vehicle_has_a_longer_picture_of_its_places()
    {
        var coach = new PlacePicture(ExamplePlans.Of("aldervane-coach"), 20, 17, 30);
        Assert.Equal(30, coach.WidthMm);
        Assert.InRange(coach.HeightMm, 8, 12);
        var saloon = new PlacePicture(ExamplePlans.Of("brackmere-six"), 20, 17, 30);
        Assert.InRange(saloon.WidthMm, 20, 30);
        Assert.InRange(saloon.HeightMm, 12, 17);
    }

    // a page is a page of rows, not of the line that is signed
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_page_holds_nothing_but_the_line_to_sign(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var kind in new[] { SheetKinds.Commissioning, SheetKinds.Installation, SheetKinds.BenchTest, SheetKinds.Survey })
        {
            Assert.All(SheetKinds.Compose(kind, plan, [], new()).Sheets, s => Assert.True(ItemWalk.Texts(s).Count(t => t.Text.Length > 1 && t.At.Y is > 45 and < 250) > 6, $"{kind} {s.Number}"));
        }
    }

    [Fact]
    public void Short_labels_stand_more_beside_each_other()
    {
        var texts = SheetKinds.Compose(SheetKinds.Labels, ExamplePlans.Of("aldervane-coach"), [], new()).Sheets.SelectMany(ItemWalk.Texts).ToList();
        Assert.True(texts.Where(t => t.Text == "fuse").Select(t => t.At.X).Distinct().Count() > 3);
    }

    // an upright rectangle of that size, corners round or not
    private static bool Near(PathItem item, double widthMm, double heightMm)
    {
        Point[] points = [.. item.Outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, _ => (Point?)null }).OfType<Point>()];
        return points.Length > 3 && Math.Abs(points.Max(p => p.X) - points.Min(p => p.X) - widthMm) < 0.01 && Math.Abs(points.Max(p => p.Y) - points.Min(p => p.Y) - heightMm) < 0.01;
    }
}
