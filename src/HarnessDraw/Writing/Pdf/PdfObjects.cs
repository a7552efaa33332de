using System.Globalization;
using System.Text;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// The objects of a PDF by their number, each as it stands between 'obj' and 'endobj' in Latin-1, and the numbers of its catalogue and of what it says about itself.
/// </summary>
internal sealed record PdfObjects(SortedDictionary<int, string> Bodies, int Root, int? Info)
{
    public int NextNumber => Bodies.Count == 0 ? 1 : Bodies.Keys.Max() + 1;

    /// <summary>Reads a file with one plain cross-reference table (ISO 32000-1, 7.5.4); null when its structure is another.</summary>
    public static PdfObjects? Read(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var at = text.LastIndexOf("trailer\n", StringComparison.Ordinal);
        if (at < 0 || ReferenceAfter(text[at..], "/Root ") is not { } root || ReferenceAfter(text[at..], "startxref\n") is not { } table || Places(text, table) is not { } places)
        {
            return null;
        }

        // an object ends before the next one begins: what looks like an end within a stream is none
        var ends = places.Values.Append(table).Order().ToList();
        var bodies = new SortedDictionary<int, string>();
        foreach (var (number, place) in places)
        {
            var head = $"{Number(number)} 0 obj\n";
            var next = ends[ends.BinarySearch(place) + 1];
            var end = text.LastIndexOf("\nendobj", next - 1, next - place, StringComparison.Ordinal);
            if (end < 0 || !text.AsSpan(place).StartsWith(head, StringComparison.Ordinal))
            {
                return null;
            }

            bodies[number] = text[(place + head.Length)..end];
        }

        return new(bodies, root, ReferenceAfter(text[at..], "/Info "));
    }

    public static string Reference(int number) => $"{Number(number)} 0 R";

    /// <summary>The whole number that follows a key, or null.</summary>
    public static int? ReferenceAfter(string text, string key)
    {
        var at = text.IndexOf(key, StringComparison.Ordinal);
        if (at < 0)
        {
            return null;
        }

        var digits = text.Skip(at + key.Length).TakeWhile(char.IsAsciiDigit).Take(9).ToArray();
        return digits.Length is > 0 and < 9 ? int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture) : null;
    }

    // 'xref', the first number and how many, then a line of twenty characters each
    private static Dictionary<int, int>? Places(string text, int table)
    {
        const string Head = "xref\n0 ";
        if (table >= text.Length || string.CompareOrdinal(text, table, Head, 0, Head.Length) != 0 || ReferenceAfter(text[table..], Head) is not { } count)
        {
            return null;
        }

        var first = text.IndexOf('\n', table + Head.Length) + 1;
        var places = new Dictionary<int, int>();
        for (var i = 0; i < count; i++)
        {
            var line = text.AsSpan(first + (20 * i), 20);
            if (line[17] == 'n')
            {
                places[i] = int.Parse(line[..10], NumberStyles.None, CultureInfo.InvariantCulture);
            }
        }

        return places;
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
