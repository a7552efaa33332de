using System.Collections.Immutable;
using System.Globalization;

namespace HarnessDraw.Planning.Splicing;

/// <summary>Ids of splices: those that are built keep theirs, the others are numbered and step over them.</summary>
internal static class SpliceNames
{
    public static ImmutableArray<string> Of(Wiring wiring)
    {
        var kept = wiring.Splices.Select(s => s.Id).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var next = 0;
        string Fresh()
        {
            string id;
            do
            {
                id = "SP" + (++next).ToString(CultureInfo.InvariantCulture);
            }
            while (kept.Contains(id));
            return id;
        }

        return [.. wiring.Splices.Select(s => s.Id ?? Fresh())];
    }
}
