using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class WireOverloaded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("wire-overloaded", "More current than the wire bears", Severity.Error, Consequence.Fire, "common practice; ampacity from the wire's own catalogue row",
        "In its bundle and zone the wire gets hotter than its insulation allows.");

    public override IEnumerable<Measure> Measures(RuleContext context) => WireLoads.Of(context, Info, returns: false);
}
