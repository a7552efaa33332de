using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Colouring;

/// <summary>Pairs of wires in one connector that a build holds together.</summary>
internal static class ColourPairs
{
    public static IEnumerable<(ConnectorUse Connector, List<(PinnedWire A, PinnedWire B)> Pairs)> Of(RuleContext context, Func<Wire, Wire, bool> alike, bool neighboursOnly)
    {
        foreach (var connector in context.Connectors)
        {
            var all = neighboursOnly ? connector.Neighbours() : connector.Wires.SelectMany((a, i) => connector.Wires.Skip(i + 1).Select(b => (A: a, B: b)));
            var pairs = all.Where(p => p.A.Wire.Id != p.B.Wire.Id && alike(p.A.Wire, p.B.Wire) && context.CanMeet(p.A.Wire.Builds, p.B.Wire.Builds)).ToList();
            if (pairs.Count > 0)
            {
                yield return (connector, pairs);
            }
        }
    }
}
