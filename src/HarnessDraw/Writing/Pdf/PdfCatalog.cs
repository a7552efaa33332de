using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// Adds what the PDF engine cannot say: the language, one bookmark a page, the boxes of every page and the wish to be printed at true size.
/// </summary>
internal static class PdfCatalog
{
    /// <summary>The file with its new catalogue, packed; unchanged when its structure is not the plain one the engine writes.</summary>
    public static byte[] Complete(byte[] pdf, ImmutableArray<string> pageTitles, string language)
    {
        if (PdfObjects.Read(pdf) is not { } objects || !objects.Bodies.TryGetValue(objects.Root, out var catalogue)
            || PdfObjects.ReferenceAfter(catalogue, "/Pages ") is not { } root || Leaves(objects, root, 0) is not { } pages || pages.Length != pageTitles.Length)
        {
            return pdf;
        }

        foreach (var page in pages)
        {
            objects.Bodies[page] = WithBoxes(objects.Bodies[page]);
        }

        var outlines = AddOutlines(objects, pages, pageTitles);
        objects.Bodies[objects.Root] = Catalogue(catalogue, outlines, language);
        return PackedPdf.Write(objects);
    }

    // ISO 32000-1, 14.11.2: nothing is printed beyond the paper or trimmed away, so every box is the medium, said and not left to be guessed
    private static string WithBoxes(string page)
    {
        const string Medium = "/MediaBox ";
        var at = page.IndexOf(Medium, StringComparison.Ordinal);
        if (at < 0)
        {
            return page;
        }

        var box = page[(at + Medium.Length)..(page.IndexOf(']', at) + 1)];
        return page.Insert(at, $"/CropBox {box}\n/BleedBox {box}\n/TrimBox {box}\n/ArtBox {box}\n");
    }

    private static string Catalogue(string old, int outlines, string language)
    {
        const string Preferences = "/ViewerPreferences <<";
        var safe = new string([.. language.Where(c => char.IsAsciiLetterOrDigit(c) || c == '-')]);
        var kept = old.Contains(Preferences, StringComparison.Ordinal)
            ? old.Replace(Preferences, Preferences + "/PrintScaling /None\n", StringComparison.Ordinal)
            : old[..old.LastIndexOf(">>", StringComparison.Ordinal)] + "\n/ViewerPreferences <</PrintScaling /None /DisplayDocTitle true>>>>";
        return $"<</Lang ({safe})\n/Outlines {PdfObjects.Reference(outlines)}\n/PageMode /UseOutlines\n{kept[2..]}";
    }

    private static int AddOutlines(PdfObjects objects, ImmutableArray<int> pages, ImmutableArray<string> titles)
    {
        var root = objects.NextNumber;
        var first = root + 1;
        objects.Bodies[root] = string.Create(CultureInfo.InvariantCulture, $"<</Type /Outlines /First {PdfObjects.Reference(first)} /Last {PdfObjects.Reference(root + pages.Length)} /Count {pages.Length}>>");
        for (var i = 0; i < pages.Length; i++)
        {
            var previous = i > 0 ? $" /Prev {PdfObjects.Reference(first + i - 1)}" : "";
            var next = i + 1 < pages.Length ? $" /Next {PdfObjects.Reference(first + i + 1)}" : "";
            objects.Bodies[first + i] = $"<</Title {Text(titles[i])} /Parent {PdfObjects.Reference(root)}{previous}{next} /Dest [{PdfObjects.Reference(pages[i])} /Fit]>>";
        }

        return root;
    }

    // UTF-16 with a byte order mark, in hexadecimal: no character of a title can end the string
    private static string Text(string title) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(title))}>";

    private static ImmutableArray<int>? Leaves(PdfObjects objects, int number, int depth)
    {
        if (depth > 20 || !objects.Bodies.TryGetValue(number, out var body))
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
            if (!int.TryParse(kid.Split(' ')[0], NumberStyles.None, CultureInfo.InvariantCulture, out var child) || Leaves(objects, child, depth + 1) is not { } leaves)
            {
                return null;
            }

            all.AddRange(leaves);
        }

        return all.ToImmutable();
    }
}
