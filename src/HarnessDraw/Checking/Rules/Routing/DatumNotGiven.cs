using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class DatumNotGiven : IDesignRule
{
    public RuleInfo Info { get; } = new("datum-not-given", "Opening without a datum", Severity.Advice, Consequence.DoesNotWork, "common practice, no source",
        "A true template laid on the wrong spot cuts a true hole in the wrong spot.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        from o in context.Harness.Layout.Openings
        where o.Datum is not { Measured: true }
        select context.Found(Info, $"Where the middle of the opening at {o.Place} lies {(o.Panel is { } panel ? $"on the {panel} " : "")}is {(o.Datum is { } datum ? $"not measured from {datum.From}" : "not given")}: its template has blanks to write it in.",
            "Add 'datum: { from: left seam and upper edge of the crossmember, across: 120 mm, up: 85 mm }' to the opening, measured on the panel.", [o.Place], at: o.At);
}
