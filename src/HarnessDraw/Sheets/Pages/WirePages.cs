using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Sheets of A4 (or Letter) pages about the wires of a plan: as many as they need, none where the build holds no wire.</summary>
internal static class WirePages
{
    /// <param name="plan">The plan over all options.</param>
    /// <param name="findings">What was found in it; errors mark the sheets.</param>
    /// <param name="options">What the person asked for; the build named there is what the pages show.</param>
    /// <param name="form">Headline, caution and paper for the plan that is shown.</param>
    /// <param name="fill">Puts the plan that is shown on the pages.</param>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, Func<Plan, PageForm> form, Action<PageFlow, Plan> fill)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        if (shown.Wires.IsEmpty)
        {
            return new([]);
        }

        var flow = new PageFlow(new(plan, findings, options, form(shown)));
        fill(flow, shown);
        return flow.ToResult();
    }
}
