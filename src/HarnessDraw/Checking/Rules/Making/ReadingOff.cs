using HarnessDraw.Diagnostics;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Making;

internal sealed class ReadingOff : IDesignRule
{
    public RuleInfo Info { get; } = new("reading-off", "A reading of the built harness is not what it should be", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "A joint that has gone bad shows in its volts and milliohms before it shows in the lamp.")
    {
        Limits = [new("volts", 0.5, "V", "FAA AC 43.13-1B chapter 11: drop of a continuous 14 V circuit"), new("volts at ground", 0.2, "V", "workshop practice, no standard: a ground path loses at most 0.2 V")],
    };

    public IEnumerable<Finding> Find(RuleContext context) => context.Harness.Measured.Volts.Select(r => Off(context, r)).Concat(context.Harness.Measured.Resistances.Select(r => Off(context, r))).OfType<Finding>();

    private Finding? Off(RuleContext context, Model.VoltsRead read)
    {
        if (context.Volts(read.Pin, read.State) is not { } expected)
        {
            return null;
        }

        var limit = context.Limit(Info, Math.Abs(expected) < 1 ? "volts at ground" : "volts");
        return Math.Abs(read.Volts - expected) <= limit
            ? null
            : context.Found(Info, $"{PointWords.OfNode(read.Pin)} read {Figure.Volts(read.Volts)} in '{read.State}'; {Figure.Volts(expected)} is expected, {Figure.Volts(limit)} either way is usual.",
                "Read the hops before and behind it under load: the one that loses the difference is the fault. Check the state, too.", [read.Pin], at: read.At);
    }

    private Finding? Off(RuleContext context, Model.ResistanceRead read)
    {
        if (context.Wire(read.Wire) is not { } wire || EndToEnd.Milliohm(context.Harness, wire) is not { } expected || read.Milliohm <= EndToEnd.LimitMilliohm(expected))
        {
            return null;
        }

        return context.Found(Info, $"{wire.Named()} read {Figure.Number(Math.Round(read.Milliohm, 1))} mΩ from end to end; {Figure.Number(Math.Round(expected, 1))} mΩ is expected and {Figure.Number(Math.Round(EndToEnd.LimitMilliohm(expected), 1))} mΩ the most.",
            "Zero the leads and read again; then look at the crimps at both ends.", [wire.Id, wire.Circuit], wire.Builds, read.At);
    }
}
