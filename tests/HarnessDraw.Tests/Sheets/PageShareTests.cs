using HarnessDraw.Drawing;
using HarnessDraw.Sheets;

namespace HarnessDraw.Tests.Sheets;

/// <summary>What a sheet says is gathered first and shared among pages then: cards are whole on every page, columns begin beside each other, little paper is left empty.</summary>
public class PageShareTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_fuse_stands_in_a_card_that_is_closed_on_its_page(string name)
    {
        var plan = ExamplePlans.Of(name);
        var seen = new List<string>();
        foreach (var sheet in SheetKinds.Compose(SheetKinds.FuseCard, plan, [], new()).Sheets)
        {
            var cards = ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Fill is null && p.Stroke is { WidthMm: 0.5 } && Bounds(p.Outline).Width > 150).Select(p => Bounds(p.Outline)).ToList();
            Assert.All(cards.Zip(cards.Skip(1)), p => Assert.True(p.First.Bottom < p.Second.Y));
            foreach (var card in cards)
            {
                var inside = ItemWalk.Texts(sheet).Where(t => card.Contains(TextMeasure.Bounds(t))).ToList();
                Assert.Single(inside, t => t.Text == "NEVER A LARGER FUSE");
                seen.AddRange(inside.Where(t => t.CapHeightMm == 3.5 && t.Weight == FaceWeight.Bold).Select(t => t.Text).Where(t => plan.Fuses.Any(f => f.Id == t)));
            }
        }

        Assert.Equal(plan.Fuses.Select(f => f.Id).Order(StringComparer.Ordinal), seen.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void All_pages_of_a_fuse_card_together_leave_less_than_one_empty(string name)
    {
        var used = SheetKinds.Compose(SheetKinds.FuseCard, ExamplePlans.Of(name), [], new()).Sheets.Select(Used).ToList();
        Assert.True(used.Count < 1 + used.Sum(), string.Join(", ", used));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_columns_of_a_power_sheet_begin_beside_each_other(string name)
    {
        var heads = ItemWalk.Texts(SheetKinds.Compose(SheetKinds.Power, ExamplePlans.Of(name), [], new()).Sheets[0]).Where(t => t.Text is "HEAVY FUSES" or "LOAD BY STATE").ToList();
        Assert.Equal(2, heads.Count);
        Assert.Equal(heads[0].At.Y, heads[1].At.Y, 0.001);
        Assert.True(Math.Abs(heads[0].At.X - heads[1].At.X) > 100);
    }

    // from below headline and cautions down to the last letter or edge above the title block
    private static double Used(Sheet sheet)
    {
        var (top, bottom) = (32, sheet.Paper.HeightMm - 43);
        var items = ((GroupItem)sheet.Items[0]).Items;
        return (items.OfType<TextItem>().Select(t => TextMeasure.Bounds(t).Bottom).Concat(items.OfType<PathItem>().Select(p => Bounds(p.Outline).Bottom)).Max() - top) / (bottom - top);
    }

    private static Box Bounds(Outline outline)
    {
        var ends = outline.Steps.Select(s => s switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, PathStep.CurveTo c => c.To, _ => (Point?)null }).OfType<Point>().ToList();
        return Box.FromEdges(ends.Min(p => p.X), ends.Min(p => p.Y), ends.Max(p => p.X), ends.Max(p => p.Y));
    }
}
