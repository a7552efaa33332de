namespace HarnessDraw.Planning;

/// <summary>
/// How a point is named to a reader, on every sheet, page and answer: connector, space, cavity ('firewall B10', 'headlamp left 56b'). The description and the plan file write it with a dot
/// ('firewall.B10'); whoever types a point may use either.
/// </summary>
public static class PointWords
{
    public static string Of(WireEnd end)
    {
        ArgumentNullException.ThrowIfNull(end);
        return end.Pin is { } pin ? Of(end.At, pin) : end.At;
    }

    /// <summary>A dash stands before a pin that would read as a count of the name: 'blower motor 2 – 1'.</summary>
    public static string Of(string at, string pin)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(pin);
        return $"{at}{(at.Length > 0 && char.IsAsciiDigit(at[^1]) && pin.Length > 0 && char.IsAsciiDigit(pin[0]) ? " – " : " ")}{pin}";
    }

    /// <summary>Of a point by its name in the plan ('headlamp left.56b', or a splice).</summary>
    public static string OfNode(string node)
    {
        ArgumentNullException.ThrowIfNull(node);
        return node.LastIndexOf('.') is > 0 and var dot && dot < node.Length - 1 ? Of(node[..dot], node[(dot + 1)..]) : node;
    }

    /// <summary>True where what was typed names the point, by its words or as the plan writes it.</summary>
    public static bool Names(string typed, string node)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed == node || string.Equals(Plain(typed), Plain(OfNode(node)), StringComparison.Ordinal);
    }

    /// <summary>With single spaces where a sheet, from which it may be copied, has spaces that do not break, dashes or hyphens.</summary>
    public static string Plain(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return typed.Replace('\u00a0', ' ').Replace(" – ", " ", StringComparison.Ordinal).Replace(" - ", " ", StringComparison.Ordinal);
    }
}
