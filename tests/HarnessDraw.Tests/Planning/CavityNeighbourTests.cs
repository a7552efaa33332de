using HarnessDraw.Checking;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Planning;

/// <summary>What the planner chooses by itself brings no neighbours of which the checks then warn.</summary>
public class CavityNeighbourTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Chosen_cavities_bring_no_unwelcome_neighbours(string name)
    {
        var plan = ExamplePlans.Of(name);
        var found = HarnessChecker.Check(plan, RuleSettings.BuiltIn);
        Assert.DoesNotContain(found, f => f.Rule is "live-beside-sender" or "left-beside-right" or "colours-confusable" or "keep-apart-broken");
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_contact_that_had_a_choice_carries_four_fifths_of_its_current_at_the_most(string name) =>
        Assert.DoesNotContain(HarnessChecker.Check(ExamplePlans.Of(name), RuleSettings.BuiltIn), f => f.Rule == "contact-overloaded" && f.WaivedBy is null);
}
