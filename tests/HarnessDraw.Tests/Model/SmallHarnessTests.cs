using HarnessDraw.Model;

namespace HarnessDraw.Tests.Model;

public sealed class SmallHarnessTests
{
    [Fact]
    public void Every_net_end_of_the_small_harness_is_a_pin_of_a_thing()
    {
        var harness = SmallHarness.Harness;
        foreach (var pin in harness.Nets.SelectMany(n => n.Ends.Append(n.Root)))
        {
            var thing = harness.ThingOf(pin.Thing);
            Assert.True(pin.Pin is null ? thing.Kind == ThingKind.Mate : thing.Pins.Any(p => p.Name == pin.Pin), pin.ToString());
            Assert.NotNull(harness.Layout.PlaceOf(thing.Place));
        }
    }
}
