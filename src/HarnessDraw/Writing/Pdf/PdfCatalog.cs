using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// Adds what the PDF engine cannot say, as an incremental update (ISO 32000-1, 7.5.6): the language, one bookmark a page, and
/// the wish to be printed at true size. The bytes before it stay as they are.
/// </summary>
internal static class PdfCatalog
{
    /// <summary>The file with its new catalogue; unchanged when its structure is not the plain one the engine writes.</summary>
    public static byte[] Complete(byte[] pdf, ImmutableArray<string> pageTitles, string language)
    {
        var text = Encoding.Latin1.GetString(pdf);
        if (Trailer.Read(text) is not { } trailer || Object(text, trailer.Root) is not { } catalogue || PageObjects(text, catalogue) is not { } pages || pages.Length != pageTitles.Length)
        {
            return pdf;
        }

        var update = new Update(pdf.Length, trailer.Size);
        var outlines = AddOutlines(update, pages, pageTitles);
        update.Add(trailer.Root, Catalogue(catalogue, outlines, language));
        var tail = update.Finish(trailer);
        return [.. pdf, .. Encoding.Latin1.GetBytes(tail)];
    }

    private static string Catalogue(string old, int outlines, string language)
    {
        const string Preferences = "/ViewerPreferences <<";
        var safe = new string([.. language.Where(c => char.IsAsciiLetterOrDigit(c) || c == '-')]);
        var kept = old.Contains(Preferences, StringComparison.Ordinal)
            ? old.Replace(Preferences, Preferences + "/PrintScaling /None\n", StringComparison.Ordinal)
            : old[..old.LastIndexOf(">>", StringComparison.Ordinal)] + "\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>>>";
        return $"<</Lang ({safe})\n/Outlines {Reference(outlines)}\n/PageMode /UseOutlines\n{kept[2..]}";
    }

    private static int AddOutlines(Update update, ImmutableArray<int> pages, ImmutableArray<string> titles)
    {
        var root = update.NextNumber;
        var first = root + 1;
        var last = root + pages.Length;
        update.Add(root, $"<</Type /Outlines /First {Reference(first)} /Last {Reference(last)} /Count {Number(pages.Length)}>>");
        for (var i = 0; i < pages.Length; i++)
        {
            var previous = i > 0 ? $" /Prev {Reference(first + i - 1)}" : "";
            var next = i + 1 < pages.Length ? $" /Next {Reference(first + i + 1)}" : "";
            update.Add(first + i, $"<</Title {Text(titles[i])} /Parent {Reference(root)}{previous}{next} /Dest [{Reference(pages[i])} /Fit]>>");
        }

        return root;
    }

    // UTF-16 with a byte order mark, in hexadecimal: no character of a title can end the string
    private static string Text(string title) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(title))}>";

    private static ImmutableArray<int>? PageObjects(string text, string catalogue) =>
        ReferenceAfter(catalogue, "/Pages ") is { } root ? Leaves(text, root, 0) : null;

    private static ImmutableArray<int>? Leaves(string text, int number, int depth)
    {
        if (depth > 20 || Object(text, number) is not { } body)
        {
            return null;
        }

        var kids = body.IndexOf("/Kids [", StringComparison.Ordinal);
        if (kids < 0)
        {
            return [number];
        }

        var all = ImmutableArray.CreateBuilder<int>();
        var list = body[(kids + 7)..body.IndexOf(']', kids)];
        foreach (var kid in list.Split('R', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!int.TryParse(kid.Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var child) || Leaves(text, child, depth + 1) is not { } leaves)
            {
                return null;
            }

            all.AddRange(leaves);
        }

        return all.ToImmutable();
    }

    private static string? Object(string text, int number)
    {
        var head = $"\n{Number(number)} 0 obj\n";
        var from = text.IndexOf(head, StringComparison.Ordinal);
        var to = from < 0 ? -1 : text.IndexOf("\nendobj", from, StringComparison.Ordinal);
        return to < 0 ? null : text[(from + head.Length)..to];
    }

    private static int? ReferenceAfter(string text, string key)
    {
        var at = text.IndexOf(key, StringComparison.Ordinal);
        if (at < 0)
        {
            return null;
        }

        var digits = text[(at + key.Length)..].TakeWhile(char.IsAsciiDigit).ToArray();
        return digits.Length is > 0 and < 9 ? int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture) : null;
    }

    private static string Reference(int number) => $"{Number(number)} 0 R";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private sealed record Trailer(int Size, int Root, int? Info, int CrossReference)
    {
        public static Trailer? Read(string text)
        {
            var at = text.LastIndexOf("trailer\n", StringComparison.Ordinal);
            if (at < 0)
            {
                return null;
            }

            var tail = text[at..];
            return ReferenceAfter(tail, "/Size ") is { } size && ReferenceAfter(tail, "/Root ") is { } root && ReferenceAfter(tail, "startxref\n") is { } table
                ? new(size, root, ReferenceAfter(tail, "/Info "), table)
                : null;
        }
    }

    private sealed class Update(int startAt, int nextNumber)
    {
        private readonly StringBuilder text = new();
        private readonly SortedDictionary<int, int> places = [];

        public int NextNumber { get; private set; } = nextNumber;

        public void Add(int number, string body)
        {
            places[number] = startAt + text.Length;
            text.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{body}\nendobj\n");
            NextNumber = Math.Max(NextNumber, number + 1);
        }

        public string Finish(Trailer trailer)
        {
            var table = startAt + text.Length;
            text.Append("xref\n");
            foreach (var (number, place) in places)
            {
                text.Append(CultureInfo.InvariantCulture, $"{number} 1\n{place:0000000000} 00000 n \n");
            }

            var info = trailer.Info is { } i ? $"/Info {Reference(i)}\n" : "";
            text.Append(CultureInfo.InvariantCulture, $"trailer\n<</Size {NextNumber}\n/Root {Reference(trailer.Root)}\n{info}/Prev {trailer.CrossReference}>>\nstartxref\n{table}\n%%EOF\n");
            return text.ToString();
        }
    }
}
