using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

internal sealed class OneWireKeepsExciter : IDesignRule
{
    private static readonly string[] OneWire = ["single wire", "one wire", "one-wire", "single-wire"];

    public RuleInfo Info { get; } = new("one-wire-keeps-exciter", "Exciter wire built for a one-wire alternator", Severity.Warning, Consequence.DoesNotWork, "common practice, no source",
        "A one-wire alternator has no exciter pin: the wire hangs live.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var builds = context.Plan.Builds.Where(b => b.Any(p => OneWire.Contains(p.Value, StringComparer.OrdinalIgnoreCase))).ToList();
        foreach (var (circuit, alternator) in Exciters.Of(context))
        {
            if (builds.FirstOrDefault(circuit.OnlyWith.Holds) is { } build)
            {
                var option = build.First(p => OneWire.Contains(p.Value, StringComparer.OrdinalIgnoreCase));
                yield return context.Found(Info, $"With {option.Key}={option.Value} the exciter wire of {circuit.Id} to {alternator.Id} is still built.", $"Say 'only-with' the other choice of {option.Key}.", [circuit.Id, alternator.Id], new([new(option.Key, [option.Value])]), circuit.At);
            }
        }
    }
}
