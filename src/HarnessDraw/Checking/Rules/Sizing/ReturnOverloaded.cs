using HarnessDraw.Diagnostics;

namespace HarnessDraw.Checking.Rules.Sizing;

internal sealed class ReturnOverloaded : MeasuredRule
{
    public override RuleInfo Info { get; } = new("return-overloaded", "More current than the return wire bears", Severity.Error, Consequence.Fire, "common practice; ampacity from the wire's own catalogue row",
        "What goes out comes back: the return carries the sum of its loads.");

    public override IEnumerable<Measure> Measures(RuleContext context) => WireLoads.Of(context, Info, returns: true);
}
