namespace HarnessDraw.Fabrication;

/// <summary>Order of ids and cavities as people count: runs of digits by their value ('A2' before 'A10'), all else by ordinal; null first.</summary>
public sealed class NaturalOrder : IComparer<string?>
{
    public static readonly NaturalOrder Instance = new();

    public int Compare(string? x, string? y)
    {
        if (x is null || y is null)
        {
            return x is null ? y is null ? 0 : -1 : 1;
        }

        var (a, b) = (0, 0);
        while (a < x.Length && b < y.Length)
        {
            if (char.IsAsciiDigit(x[a]) && char.IsAsciiDigit(y[b]))
            {
                var m = Digits(x, ref a);
                var n = Digits(y, ref b);
                if (m.Length != n.Length)
                {
                    return m.Length - n.Length;
                }

                if (m.CompareTo(n, StringComparison.Ordinal) is var byValue and not 0)
                {
                    return byValue;
                }
            }
            else if (x[a] != y[b])
            {
                return x[a] - y[b];
            }
            else
            {
                (a, b) = (a + 1, b + 1);
            }
        }

        return (x.Length - a) - (y.Length - b) is var rest and not 0 ? rest : string.CompareOrdinal(x, y);
    }

    // a run of digits without its leading zeros
    private static ReadOnlySpan<char> Digits(string text, ref int at)
    {
        while (at < text.Length - 1 && text[at] == '0' && char.IsAsciiDigit(text[at + 1]))
        {
            at++;
        }

        var from = at;
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }

        return text.AsSpan(from, at - from);
    }
}
