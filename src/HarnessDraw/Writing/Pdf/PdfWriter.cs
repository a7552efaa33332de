using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Writing.Painting;
using SkiaSharp;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// Sheets as one PDF: each page has the true size of its paper, text can be selected, faces are embedded, bookmarks and
/// links lead from sheet to sheet, and viewers are asked to print at true size.
/// </summary>
public static class PdfWriter
{
    private const float PointsPerMm = 72f / 25.4f;

    /// <summary>The whole file; needs at least one sheet.</summary>
    public static byte[] Write(IEnumerable<Sheet> sheets, PdfOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var pages = sheets.ToImmutableArray();
        ArgumentOutOfRangeException.ThrowIfZero(pages.Length);
        using var file = new MemoryStream();
        var metadata = new SKDocumentPdfMetadata
        {
            Title = ShownText.Of(options.Title),
            Author = ShownText.Of(options.Author ?? ""),
            Subject = ShownText.Of(options.Subject ?? ""),
            Keywords = "",
            Creator = "HarnessDraw",
            Producer = "HarnessDraw",
            RasterDpi = 7200, // the engine rounds pages to this grid; nothing of ours is ever rasterised
            EncodingQuality = 101, // above 100: pictures stay lossless
        };
        using (var document = SKDocument.CreatePdf(file, metadata))
        {
            WritePages(document, pages, options.Faces);

            document.Close();
        }

        return PdfCatalog.Complete(file.ToArray(), [.. pages.Select(PageTitle)], options.Language);
    }

    /// <summary>The name of a page in links: 'cut-list' for a single or first page, 'cut-list.2' for a later one.</summary>
    public static string Destination(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.Number is > 1 and var n ? $"{sheet.Name}.{n.ToString(CultureInfo.InvariantCulture)}" : sheet.Name;
    }

    // one painter for all pages, so that each face is embedded once
    private static void WritePages(SKDocument document, ImmutableArray<Sheet> pages, FaceSet faces)
    {
        var wires = new WireLinks(pages);
        var sheet = pages[0];
        using var painter = new SheetPainter(faces)
        {
            OnNamedGroup = (c, name) => c.DrawNamedDestinationAnnotation(new SKPoint(0, 0), $"{Destination(sheet)}#{name}"),
            OnLink = (c, link) => Link(c, link, Destination(sheet), pages),
            OnText = (c, text) => wires.Mark(c, sheet, text),
        };
        foreach (var page in pages)
        {
            sheet = page;
            using var canvas = document.BeginPage((float)page.Paper.WidthMm * PointsPerMm, (float)page.Paper.HeightMm * PointsPerMm);
            canvas.Scale(PointsPerMm);
            canvas.DrawNamedDestinationAnnotation(new SKPoint(0, 0), Destination(page));
            painter.Paint(canvas, page.Items);
            document.EndPage();
        }
    }

    // a link whose sheet is not in this file is left out: it would lead nowhere
    private static void Link(SKCanvas canvas, LinkItem link, string page, ImmutableArray<Sheet> pages)
    {
        var target = link.Target.StartsWith('#') ? page + link.Target : link.Target;
        var hash = target.IndexOf('#', StringComparison.Ordinal);
        var sheet = hash < 0 ? target : target[..hash];
        if (pages.Any(p => Destination(p) == sheet))
        {
            canvas.DrawLinkDestinationAnnotation(SheetPainter.Rect(link.Box), target);
        }
    }

    private static string PageTitle(Sheet sheet) =>
        ShownText.Of(sheet.Number is { } n ? $"{sheet.Title}, page {n.ToString(CultureInfo.InvariantCulture)}" : sheet.Title);
}
