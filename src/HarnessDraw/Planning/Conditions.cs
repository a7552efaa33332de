using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>Arithmetic of build conditions.</summary>
internal static class Conditions
{
    /// <summary>Holds when both hold. A choice list common to both keeps the order of the first.</summary>
    public static BuildCondition Both(BuildCondition a, BuildCondition b)
    {
        if (a.IsAlways || ReferenceEquals(a, b))
        {
            return b;
        }

        if (b.IsAlways)
        {
            return a;
        }

        var rows = a.AllOf.ToBuilder();
        foreach (var extra in b.AllOf)
        {
            var at = rows.FindIndex(r => r.Option == extra.Option);
            if (at < 0)
            {
                rows.Add(extra);
            }
            else
            {
                rows[at] = new(extra.Option, [.. rows[at].Choices.Where(c => extra.Choices.Contains(c))]);
            }
        }

        return new(rows.ToImmutable());
    }

    private static int FindIndex(this ImmutableArray<OptionChoice>.Builder rows, Predicate<OptionChoice> match)
    {
        for (var i = 0; i < rows.Count; i++)
        {
            if (match(rows[i]))
            {
                return i;
            }
        }

        return -1;
    }
}
