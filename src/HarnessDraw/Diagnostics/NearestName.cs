namespace HarnessDraw.Diagnostics;

/// <summary>Finds the valid name that a mistyped one most likely meant.</summary>
public static class NearestName
{
    private const int LongestCompared = 80;

    /// <summary>
    /// The candidate with the smallest Damerau-Levenshtein distance (capitals ignored, neighbours swapped count as one), or null when none is
    /// near enough (a third of the length, at the least one). Ties go by ordinal name.
    /// </summary>
    public static string? Of(string typed, IEnumerable<string> candidates)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(candidates);
        if (typed.Length is 0 or > LongestCompared)
        {
            return null;
        }

        var lower = typed.ToLowerInvariant();
        var best = Math.Max(1, typed.Length / 3) + 1;
        string? nearest = null;
        foreach (var candidate in candidates)
        {
            if (candidate.Length > LongestCompared || Math.Abs(candidate.Length - typed.Length) > best)
            {
                continue;
            }

            var distance = Distance(lower, candidate.ToLowerInvariant());
            if (distance < best || (distance == best && nearest is not null && string.CompareOrdinal(candidate, nearest) < 0))
            {
                best = distance;
                nearest = candidate;
            }
        }

        return nearest;
    }

    /// <summary>'did you mean 'x'?', or null.</summary>
    public static string? Hint(string typed, IEnumerable<string> candidates) =>
        Of(typed, candidates) is { } nearest ? $"did you mean '{nearest}'?" : null;

    /// <summary>Insertions, deletions, changes and swaps of neighbours that turn one text into the other.</summary>
    public static int Distance(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var before = new int[b.Length + 1];
        var last = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }

            (before, last, row) = (last, row, before);
        }

        return last[b.Length];
    }
}
