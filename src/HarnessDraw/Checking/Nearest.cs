namespace HarnessDraw.Checking;

/// <summary>The known name that looks most like a mistyped one, by edit distance.</summary>
internal static class Nearest
{
    public static string? Of(string typed, IEnumerable<string> known)
    {
        var best = known.Select(k => (Name: k, Distance: Distance(typed, k))).OrderBy(p => p.Distance).ThenBy(p => p.Name, StringComparer.Ordinal).FirstOrDefault();
        return best.Name is not null && best.Distance <= Math.Max(2, typed.Length / 3) ? best.Name : null;
    }

    private static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j - 1], above) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[b.Length];
    }
}
