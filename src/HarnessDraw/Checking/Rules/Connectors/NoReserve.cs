using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class NoReserve : IDesignRule
{
    public RuleInfo Info { get; } = new("no-reserve", "Firewall connector without reserve", Severity.Advice, Consequence.Untidy, "common practice, no source",
        "The next lamp or sender needs a cavity too.")
    {
        Limits = [new("reserve", 10, "%", "common practice, no source")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var connector in context.Connectors.Where(c => c.Thing.Kind == ThingKind.Mate))
        {
            var (all, used) = (connector.Part.Cavities.Length, TooManyCircuits.Needed(context, connector));
            if (used <= all && all - used < context.Limit(Info, "reserve") / 100 * all)
            {
                yield return context.Found(Info, $"{connector.Thing.Id}: {used} of {all} cavities are used in one build: no room for the next change.", "Use the next larger body, or join circuits that share a fuse.", [connector.Thing.Id], at: connector.Thing.At);
            }
        }
    }
}
