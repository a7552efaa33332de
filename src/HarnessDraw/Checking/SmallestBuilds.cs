using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>The smallest option set that tells the builds which break a rule from those that do not.</summary>
internal static class SmallestBuilds
{
    /// <summary>Always, when no build is sound; choices are left out in the order of their options as long as no sound build gets in.</summary>
    public static BuildCondition Of(ImmutableArray<ImmutableSortedDictionary<string, string>> broken, ImmutableArray<ImmutableSortedDictionary<string, string>> sound)
    {
        if (sound.IsEmpty || broken.IsEmpty)
        {
            return BuildCondition.Always;
        }

        List<OptionChoice> choices = [.. broken[0].Keys.Select(o => new OptionChoice(o, [.. broken.Select(b => b[o]).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]))];
        foreach (var choice in choices.ToArray())
        {
            ImmutableArray<OptionChoice> fewer = [.. choices.Where(c => c != choice)];
            if (fewer.Length > 0 && !sound.Any(new BuildCondition(fewer).Holds))
            {
                choices.Remove(choice);
            }
        }

        return new([.. choices]);
    }
}
