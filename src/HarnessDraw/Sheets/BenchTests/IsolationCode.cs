using System.Collections.Immutable;
using System.Numerics;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.BenchTests;

/// <summary>A net of the loose harness, where to clip on to it, and on which lead it is tied in each test (1 or 2).</summary>
internal sealed record IsolationNet(string Net, WireEnd Clip, Wire Wire, ImmutableArray<int> Leads);

/// <summary>
/// Isolation of every net from every other in the fewest tests: nets are numbered, and in test k all whose k-th binary digit is 0 are tied to one lead, the others to the
/// other. Two nets differ in at least one digit, so every pair is parted in some test; fewer tests cannot part them all.
/// </summary>
internal static class IsolationCode
{
    /// <summary>How many tests part so many nets: the base-2 logarithm rounded up.</summary>
    public static int Tests(int nets) => nets <= 1 ? 0 : BitOperations.Log2((uint)(nets - 1)) + 1;

    public static ImmutableArray<IsolationNet> Of(Plan plan)
    {
        var nets = plan.Wires.GroupBy(w => w.Net, StringComparer.Ordinal)
            .Select(g => g.OrderBy(w => w.Id, StringComparer.Ordinal).First())
            .Select(w => (Wire: w, Clip: w.From.IsSplice ? w.To : w.From))
            .OrderBy(n => n.Clip.At, CavityOrder.Instance)
            .ThenBy(n => n.Clip.Pin ?? "", CavityOrder.Instance)
            .ThenBy(n => n.Wire.Net, StringComparer.Ordinal)
            .ToList();
        var tests = Tests(nets.Count);
        // neighbours in a connector differ in the first test already: the digit that changes most often comes first
        return [.. nets.Select((n, i) => new IsolationNet(n.Wire.Net, n.Clip, n.Wire, [.. Enumerable.Range(0, tests).Select(k => ((i >> k) & 1) + 1)]))];
    }
}
