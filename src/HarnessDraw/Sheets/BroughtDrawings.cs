using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Drawing.Outlines;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>
/// What a user drew elsewhere or brought along: body lines, a logo, a face for scripts that the shipped faces lack. Mistakes in such a file are told
/// where the file is named.
/// </summary>
internal static class BroughtDrawings
{
    private const double SampleMm = 25;

    /// <summary>
    /// The body lines of the layout's drawing after those it lists: the nose to the left, the vehicle's right at the top, a unit a millimetre, 0,0 at the
    /// layout's origin. Curves become chords of at most 25 mm.
    /// </summary>
    public static ImmutableArray<BodyLine> BodyLines(VehicleLayout layout, DiagnosticBag bag)
    {
        if (layout.OutlineDrawing is not { } file || Picture(file, bag) is not { } picture)
        {
            return layout.Outline;
        }

        return [.. layout.Outline, .. picture.Shapes.SelectMany(s => CentreLine.Of(s.Outline)).Select(Line)];
    }

    /// <summary>The logo of the title block; null when none is named or (with a message) when the file holds none.</summary>
    public static DrawnOutlines? Logo(DrawingData drawing, DiagnosticBag bag) => drawing.Logo is { } file ? Picture(file, bag) : null;

    /// <summary>The faces with the description's own after the shipped ones; these alone (with a message) when the file is no font.</summary>
    public static FaceSet Faces(DrawingData drawing, FaceSet faces, DiagnosticBag bag)
    {
        if (drawing.Font is not { } file)
        {
            return faces;
        }

        try
        {
            return faces.With(new FontFile(Bytes(file), System.IO.Path.GetFileNameWithoutExtension(file.Path)));
        }
        catch (InvalidDataException e)
        {
            bag.Error(DiagnosticCodes.FontFile, $"'{file.Path}' is not a font that can be used: {e.Message}", file.At, "a TrueType file (.ttf) is expected");
            return faces;
        }
    }

    private static DrawnOutlines? Picture(BroughtFile file, DiagnosticBag bag)
    {
        var read = SvgOutlineReader.Read(Bytes(file), file.Path);
        bag.AddRange(read.Diagnostics);
        return read.Value;
    }

    private static BodyLine Line(CentreLine line)
    {
        var steps = Math.Max(1, (int)Math.Ceiling(line.LengthMm / SampleMm));
        var points = Enumerable.Range(0, steps + 1).Select(i => line.At(line.LengthMm * i / steps).At).ToArray();
        var closed = points.Length > 3 && Math.Abs(points[0].X - points[^1].X) + Math.Abs(points[0].Y - points[^1].Y) < 1;
        return new("", [.. points.Take(closed ? points.Length - 1 : points.Length).Select(p => new PlanPoint(-p.X, -p.Y))], closed);
    }

    private static byte[] Bytes(BroughtFile file) => ImmutableCollectionsMarshal.AsArray(file.Bytes)!;
}
