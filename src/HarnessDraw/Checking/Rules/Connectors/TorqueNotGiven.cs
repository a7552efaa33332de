using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class TorqueNotGiven : IDesignRule
{
    public RuleInfo Info { get; } = new("torque-not-given", "Studs and centre bolts without a torque", Severity.Advice, Consequence.DoesNotLast, "common practice, no source",
        "Too loose heats, too tight cracks the body or shears the stud.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var studs = context.Harness.Things.Where(t => t.TorqueNm is null && t.Side == Side.Bay && t.Pins.Any(p => p.Style == PinStyle.Stud && context.EndsAt(t.Id, p.Name).Any()));
        var bolts = context.Connectors.Where(c => c.Part is { CentreBolt: true, BoltTorqueNm: null } && c.Thing.TorqueNm is null).Select(c => c.Thing);
        var open = studs.Concat(bolts).Select(t => t.Id).Distinct().ToList();
        if (open.Count > 0)
        {
            yield return context.Found(Info, $"No torque given for {Wording.List(open)}: the sheets print 'see maker'.", "Add 'torque: 12 Nm' from the maker's sheet.", open);
        }
    }
}
