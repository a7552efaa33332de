using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>One end of a wire together with its wire.</summary>
public sealed record PlannedEnd(Wire Wire, WireEnd End)
{
    public static IEnumerable<PlannedEnd> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Wires.SelectMany(w => new PlannedEnd[] { new(w, w.From), new(w, w.To) });
    }
}
