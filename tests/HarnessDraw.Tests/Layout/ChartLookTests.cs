using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Layout;

/// <summary>What a reader sees first, measured on the finished charts.</summary>
public class ChartLookTests
{
    /// <summary>Reading begins at the top left: there stands the vehicle's name, in the largest letters of the chart, and below it what is drawn.</summary>
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_vehicles_name_stands_in_the_corner_where_reading_begins(string example)
    {
        const double NearMm = 30;
        var plan = ExamplePlans.Of(example);
        foreach (var sheet in WallChart.Compose(plan, [], new SheetOptions()).Sheets)
        {
            var texts = ItemWalk.Texts(sheet).ToList();
            var largest = texts.Max(t => t.CapHeightMm);
            var name = texts.Where(t => t.CapHeightMm >= largest - 0.01).ToList();
            Assert.Equal(plan.Harness.Vehicle.ToUpperInvariant(), string.Join(' ', name.Select(t => t.Text)));
            Assert.All(name, t => Assert.InRange(t.At.X, 0, 20 + NearMm));
            Assert.InRange(name[0].At.Y, 0, 10 + NearMm);
        }
    }
}
