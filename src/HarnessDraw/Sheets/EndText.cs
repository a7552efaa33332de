using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The end of a wire in a table cell: the name and its pin. A long name goes on below; the pin stays with its last word.</summary>
internal static class EndText
{
    private const char Bound = '\u00a0';

    public static TableCell Cell(WireEnd end, double widthMm) => TableCell.Wrapped(Words(end), widthMm);

    /// <summary>The longest word of the name, the last with the pin.</summary>
    public static double LeastMm(WireEnd end) => TableCell.LongestWordMm(Words(end));

    /// <summary>A node by its name in the plan ('headlamp left.56b', or a splice), in the same words.</summary>
    public static string OfNode(string node) => node.LastIndexOf('.') is > 0 and var dot && dot < node.Length - 1 ? Words(new(node[..dot], node[(dot + 1)..])) : node;

    /// <summary>'headlamp left 56b', the pin bound to the last word of the name.</summary>
    public static string Words(WireEnd end) => end.Pin is null ? end.At : end.At + PointWords.Of(end)[end.At.Length..].Replace(' ', Bound);
}
