using HarnessDraw.Fabrication.Supplies;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Fabrication;

/// <summary>Which plugs wait until the sleeve is on (common practice, no source).</summary>
public class ClosedSleevesTests
{
    // a leg with one plug at its end and the firewall connector at the other
    private static readonly Plan Saloon = ExamplePlans.Of("brackmere-six");
    private static readonly Segment Leg = Saloon.Tree.Segments.First(s => !s.Wires.IsEmpty && s.To == Saloon.Harness.Things.Single(t => t.Id == "wiper motor").Place);

    [Theory]
    [InlineData("braided sleeve", 8, true)]
    [InlineData("heat shrink", 8, true)]
    [InlineData("braided sleeve", 500, false)]
    [InlineData("split loom", 8, false)]
    [InlineData("cloth tape", 8, false)]
    public void A_closed_sleeve_goes_on_before_the_plugs_it_does_not_pass(string kind, double passesMm, bool waits)
    {
        var before = ClosedSleeves.PutOnBefore(Saloon, Leg, Sleeve(kind, passesMm));
        Assert.Equal(waits, before.Contains("wiper motor"));
        Assert.Equal(waits, !before.IsEmpty);
        Assert.DoesNotContain("firewall", before);
    }

    [Fact]
    public void The_list_of_coverings_says_so()
    {
        var catalogue = Saloon.Harness.Catalogue;
        var plan = Saloon with
        {
            Harness = Saloon.Harness with { Catalogue = catalogue with { Coverings = [Sleeve("braided sleeve", 8)] } },
            Tree = Saloon.Tree with { Segments = [.. Saloon.Tree.Segments.Select(s => s.Id == Leg.Id ? s with { Covering = "sleeve" } : s)] },
        };
        Assert.Contains("wiper motor", CoveringCuts.Of(plan).Single(c => c.Segment.Id == Leg.Id).PutOnBefore);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_run_is_covered_by_what_opens_again_where_that_fits(string name)
    {
        var plan = ExamplePlans.Of(name);
        var kinds = plan.Harness.Catalogue.Coverings.ToDictionary(c => c.Id, c => c.Kind, StringComparer.Ordinal);
        var used = plan.Tree.Segments.Where(s => s.Covering is not null).Select(s => kinds[s.Covering!]).ToList();
        Assert.DoesNotContain("heat shrink", used);
        Assert.True(used.Count(k => k == "split loom") > used.Count / 2);
    }

    private static CoveringPart Sleeve(string kind, double passesMm) => new("sleeve", "Sleeve", kind, 2, passesMm, 0.6, 125, "invented");
}
