using System.Collections.Immutable;
using System.Xml;
using HarnessDraw.Diagnostics;
using Svg;

namespace HarnessDraw.Drawing.Outlines;

/// <summary>
/// Reads the shapes of an SVG file that a user brings (body outline, logo). Only geometry and plain colours are taken:
/// no script runs, nothing outside the file is loaded, document type definitions are skipped.
/// </summary>
public static class SvgOutlineReader
{
    private const string Code = DiagnosticCodes.OutlineSvg;
    private const int MostCharacters = 20_000_000;

    /// <summary>The outlines, or why there are none; <paramref name="file"/> names the file in messages.</summary>
    public static Outcome<DrawnOutlines> Read(byte[] svg, string file)
    {
        ArgumentNullException.ThrowIfNull(svg);
        var bag = new DiagnosticBag();
        if (CheckXml(svg, file, bag) && Load(svg, file, bag) is { } document)
        {
            var shapes = new SvgShapes(document).Read();
            if (shapes.IsEmpty)
            {
                bag.Error(Code, $"'{file}' has no shape that can be drawn", new(file, 1, 1), "paths, lines, polygons, rectangles, circles and ellipses are read; text and pictures are not: turn text into paths");
            }
            else
            {
                return new(new DrawnOutlines(shapes, ViewBox(document, shapes)), bag.ToSorted());
            }
        }

        return new(null, bag.ToSorted());
    }

    // the library's own errors have no position, so the text is read once for its form alone
    private static bool CheckXml(byte[] svg, string file, DiagnosticBag bag)
    {
        try
        {
            using var reader = Reader(svg);
            reader.MoveToContent();
            if (reader.LocalName == "svg")
            {
                while (reader.Read())
                {
                }

                return true;
            }

            var at = (IXmlLineInfo)reader;
            bag.Error(Code, $"'{file}' begins with <{reader.LocalName}>, not <svg>", new(file, at.LineNumber, at.LinePosition), "save the drawing as plain SVG");
        }
        catch (XmlException e)
        {
            bag.Error(Code, $"'{file}' is not well-formed XML: {e.Message}", new(file, Math.Max(1, e.LineNumber), Math.Max(1, e.LinePosition)), "save the drawing as plain SVG");
        }

        return false;
    }

    private static SvgDocument? Load(byte[] svg, string file, DiagnosticBag bag)
    {
        SvgDocument.ResolveExternalElements = ExternalType.None;
        SvgDocument.ResolveExternalImages = ExternalType.None;
        SvgDocument.ResolveExternalXmlEntites = ExternalType.None;
        try
        {
            using var reader = Reader(svg);
            return SvgDocument.Open<SvgDocument>(reader);
        }
        catch (Exception e) when (e is SvgException or FormatException or ArgumentException or InvalidOperationException or IndexOutOfRangeException or XmlException or OverflowException or NullReferenceException or NotSupportedException)
        {
            // the library answers bad numbers with many kinds of exception; all mean that this file cannot be used
            bag.Error(Code, $"'{file}' cannot be read as SVG: {e.Message}", new(file, 1, 1), "save the drawing as plain SVG");
            return null;
        }
    }

    private static XmlReader Reader(byte[] svg) => XmlReader.Create(new MemoryStream(svg, writable: false), new XmlReaderSettings
    {
        DtdProcessing = DtdProcessing.Ignore,
        XmlResolver = null,
        MaxCharactersInDocument = MostCharacters,
    });

    private static Box ViewBox(SvgDocument document, ImmutableArray<DrawnShape> shapes)
    {
        var view = document.ViewBox;
        if (view.Width > 0 && view.Height > 0)
        {
            return new(view.MinX, view.MinY, view.Width, view.Height);
        }

        var all = shapes.Select(s => ItemBounds.Of(new PathItem(s.Outline))).OfType<Box>().Aggregate((a, b) => a.Union(b));
        return new(all.X, all.Y, Math.Max(all.Width, 1e-3), Math.Max(all.Height, 1e-3));
    }
}
