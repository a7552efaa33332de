using HarnessDraw.Sheets;

namespace HarnessDraw.Tests.Sheets;

public class LimitedPowerTests
{
    /// <summary>A charged 12 V battery at rest has 12.6 V, and no point that is fed through a lamp has the volts of a running engine.</summary>
    [Fact]
    public void The_commissioning_table_tells_what_passes_the_limiting_lamp_from_a_battery_at_rest()
    {
        var texts = SheetKinds.Compose(SheetKinds.Commissioning, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        Assert.Contains(texts, t => t.Contains("12.6 V", StringComparison.Ordinal));
        Assert.True(texts.Count(t => t is "12.4" or "12.5" or "12.6") > 3);
    }

    /// <summary>Fuses go in one after the other: the feed of a fuse panel carries nothing while the panel's fuses are out, so the lamp stays dark.</summary>
    [Fact]
    public void The_feed_of_a_fuse_panel_leaves_the_lamp_dark()
    {
        var texts = SheetKinds.Compose(SheetKinds.Commissioning, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        foreach (var fuse in (string[])["Fuse F1, 30 A", "Fuse F4, 40 A"])
        {
            Assert.Equal("dark", texts.SkipWhile(t => t != fuse).First(t => t is "dark" or "dim" or "bright"));
        }
    }
}
