using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The end of a wire in a table cell: the name and its pin. A long name goes on below; the pin stays with its last word.</summary>
internal static class EndText
{
    public static TableCell Cell(WireEnd end, double widthMm) => TableCell.Wrapped(Words(end), widthMm);

    /// <summary>The longest word of the name, the last with the pin.</summary>
    public static double LeastMm(WireEnd end) => TableCell.LongestWordMm(Words(end));

    /// <summary>A node by its name in the plan ('headlamp left.56b', or a splice), in the same words.</summary>
    public static string OfNode(string node) => node.LastIndexOf('.') is > 0 and var dot && dot < node.Length - 1 ? Words(new(node[..dot], node[(dot + 1)..])) : node;

    /// <summary>'headlamp left 56b'; a dash before a pin that would read as a count of the name.</summary>
    public static string Words(WireEnd end) => end.Pin is not { } pin ? end.At : end.At.Length > 0 && char.IsAsciiDigit(end.At[^1]) && pin.Length > 0 && char.IsAsciiDigit(pin[0]) ? $"{end.At}\u00a0–\u00a0{pin}" : $"{end.At}\u00a0{pin}";
}
