using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning.Routing;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// Which wires the description has sized alike: those that end at pins of one name of a group's things, or at the same ends of its circuits. What two groups share joins them.
/// </summary>
internal static class AlikeWires
{
    /// <summary>By wire: the number of its group, or -1.</summary>
    public static int[] GroupsOf(Harness harness, ImmutableArray<DraftWire> wires)
    {
        var sets = new DisjointSets(wires.Length);
        var joined = new bool[wires.Length];
        foreach (var group in harness.SizedAlike)
        {
            var named = group.Names.ToHashSet(StringComparer.Ordinal);
            foreach (var end in EndsOf(harness, wires, named, group.AreCircuits).GroupBy(e => e.End, e => e.Wire, StringComparer.Ordinal))
            {
                int[] at = [.. end.Distinct()];
                for (var i = 1; i < at.Length; i++)
                {
                    sets.Join(at[0], at[i]);
                    (joined[at[0]], joined[at[i]]) = (true, true);
                }
            }
        }

        return [.. joined.Select((j, w) => j ? sets.Root(w) : -1)];
    }

    private static IEnumerable<(string End, int Wire)> EndsOf(Harness harness, ImmutableArray<DraftWire> wires, HashSet<string> named, bool areCircuits)
    {
        var circuits = areCircuits ? harness.Circuits.Where(c => named.Contains(c.Id)).ToDictionary(c => c.Id, StringComparer.Ordinal) : [];
        for (var w = 0; w < wires.Length; w++)
        {
            var circuit = circuits.GetValueOrDefault(harness.Nets[wires[w].Net].Circuit);
            foreach (var pin in new[] { wires[w].From.Pin, wires[w].To.Pin }.OfType<PinRef>())
            {
                if (circuit is not null)
                {
                    // what is none of its loads is where it comes from: a fuse, a relay, the firewall
                    yield return ($"{circuit.Feeds.IndexOf(pin)}", w);
                }
                else if (!areCircuits && pin.Pin is not null && named.Contains(pin.Thing))
                {
                    yield return (pin.Pin, w);
                }
            }
        }
    }
}
