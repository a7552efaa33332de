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
}
