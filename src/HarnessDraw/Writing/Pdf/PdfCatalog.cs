using System.Collections.Immutable;
namespace HarnessDraw.Writing.Pdf;
internal static class PdfCatalog
{
    public static byte[] Complete(byte[] pdf, ImmutableArray<string> pageTitles, string language) => pdf;
}
