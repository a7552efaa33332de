using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>What makes a chart look made and not thrown together.</summary>
public class ChartFinishTests
{
    private static readonly Lazy<Sheet> Saloon = new(() => SheetKinds.Compose(SheetKinds.WallChart, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.Single());

    [Fact]
    public void Panels_that_nearly_stand_under_one_another_are_in_line()
    {
        var heads = Texts(Saloon.Value.Items).Where(t => t.Weight == FaceWeight.Bold && (t.CapHeightMm >= 10 || t.Text is "POWER AND BOLT-IN FUSES" or "LANE ORDER AT CUT b" or "LANE ORDER AT CUT c")).ToList();
        Assert.Equal(4, heads.Count);
        Assert.All(heads, h => Assert.Equal(heads[0].At.X, h.At.X, 2));
    }

    [Fact]
    public void Words_stand_in_the_middle_of_a_flag()
    {
        var words = Texts(Saloon.Value.Items).Single(t => t.Text == "FIREWALL");
        var at = TextMeasure.Bounds(words);
        var plate = All(Saloon.Value.Items).OfType<PathItem>().Where(p => p.Role == ItemRole.Plate).Select(p => ItemBounds.Of(p)!.Value).Single(b => b.Contains(at));
        Assert.Equal(at.X - plate.X, plate.Right - at.Right, 0.5);
    }

    [Fact]
    public void No_bit_of_a_body_line_is_left_between_cards_and_lists()
    {
        var lines = All([Saloon.Value.Items.OfType<GroupItem>().Single(g => g.Name == "body")]).OfType<PathItem>().Where(p => p.Stroke is not null).ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, l => Assert.True(ItemBounds.Of(l) is { } box && box.Width + box.Height >= 20, ItemBounds.Of(l).ToString()));
    }

    private static IEnumerable<Item> All(IEnumerable<Item> items) => items.SelectMany(i => i is GroupItem group ? All(group.Items) : [i]);

    private static IEnumerable<TextItem> Texts(IEnumerable<Item> items) => All(items).OfType<TextItem>();
}
