using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Which options make a wire carry more than a limit.</summary>
internal static class CurrentCause
{
    /// <summary>
    /// The fewest choices with which every solved build that has them is over the limit, joined with what the wire itself is built with. The solved builds show
    /// every pair of choices.
    /// </summary>
    public static BuildCondition Of(Wire wire, double overA)
    {
        var over = wire.BuildCurrents.Where(b => b.CurrentA > overA).ToList();
        if (over.Count == 0 || over.Count == wire.BuildCurrents.Length)
        {
            return wire.Builds;
        }

        var options = over[0].Build.Keys.ToArray();
        var cause = Enumerable.Range(1, (1 << Math.Min(options.Length, 12)) - 1)
            .OrderBy(int.PopCount).ThenBy(bits => bits)
            .SelectMany(bits => over.Select(b => Condition(options.Where((_, i) => (bits >> i & 1) == 1), b.Build)))
            .First(c => wire.BuildCurrents.All(b => b.CurrentA > overA || !c.Holds(b.Build)));
        return wire.Builds.And(cause);
    }

    private static BuildCondition Condition(IEnumerable<string> options, ImmutableSortedDictionary<string, string> build) =>
        new([.. options.Select(o => new OptionChoice(o, [build[o]]))]);
}
