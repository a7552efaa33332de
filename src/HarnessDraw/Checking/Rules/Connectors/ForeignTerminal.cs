using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class ForeignTerminal : IDesignRule
{
    public RuleInfo Info { get; } = new("foreign-terminal", "Terminal of another family in a connector", Severity.Error, Consequence.DoesNotLast, "the connector's own catalogue row",
        "It fits the cavity but does not lock, and backs out months later.");

    public IEnumerable<Finding> Find(RuleContext context) =>
        context.Connectors.Where(c => !c.Part.TerminalFamilies.IsEmpty)
            .SelectMany(c => c.Wires.Select(w => (Connector: c, Pinned: w, Terminal: context.Terminal(w.End.Terminal))))
            .Where(p => p.Terminal is { } t && (!p.Connector.Part.TerminalFamilies.Contains(t.Family) || p.Connector.Part.Cavities.FirstOrDefault(c => c.Name == p.Pinned.Cavity) is { } cavity && cavity.Size != t.Size))
            .Select(p => context.Found(Info, $"{PointWords.Of(p.Connector.Thing.Id, p.Pinned.Cavity)}: terminal {p.Terminal!.Id} ({p.Terminal.Family} {p.Terminal.Size}) does not lock in this body, which takes {Wording.List(p.Connector.Part.TerminalFamilies)} {p.Connector.Part.Cavities.FirstOrDefault(c => c.Name == p.Pinned.Cavity)?.Size}.",
                "Use a terminal of the body's own family and size.", [$"{p.Connector.Thing.Id}.{p.Pinned.Cavity}", p.Pinned.Wire.Id], p.Pinned.Wire.Builds, p.Connector.Thing.At));
}
