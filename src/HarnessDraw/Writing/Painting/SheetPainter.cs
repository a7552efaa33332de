using HarnessDraw.Drawing;
using SkiaSharp;

namespace HarnessDraw.Writing.Painting;

/// <summary>
/// Paints the items of a sheet on a canvas whose unit is the millimetre; PNG and PDF share it. Every glyph is placed from
/// our own measure, so no font setting of the canvas can move a letter.
/// </summary>
internal sealed class SheetPainter(FaceSet faces) : IDisposable
{
    private readonly Dictionary<(int Index, FaceWeight Weight), SKTypeface> typefaces = [];

    /// <summary>Called for a link with its rectangle in the coordinates the canvas has at that moment.</summary>
    public Action<SKCanvas, LinkItem>? OnLink { get; init; }

    /// <summary>Called for a named group after its move, before its items.</summary>
    public Action<SKCanvas, string>? OnNamedGroup { get; init; }

    /// <summary>Called for a text before it is painted, in the coordinates that it is placed in.</summary>
    public Action<SKCanvas, TextItem>? OnText { get; init; }

    public void Paint(SKCanvas canvas, IEnumerable<Item> items)
    {
        foreach (var item in items)
        {
            Paint(canvas, item);
        }
    }

    public void Dispose()
    {
        foreach (var face in typefaces.Values)
        {
            face.Dispose();
        }
    }

    private void Paint(SKCanvas canvas, Item item)
    {
        switch (item)
        {
            case GroupItem group:
                PaintGroup(canvas, group);
                break;
            case PathItem path:
                PaintPath(canvas, path);
                break;
            case TextItem text:
                PaintText(canvas, text);
                break;
            case ImageItem image:
                PaintImage(canvas, image);
                break;
            case LinkItem link:
                OnLink?.Invoke(canvas, link);
                break;
        }
    }

    private void PaintGroup(SKCanvas canvas, GroupItem group)
    {
        canvas.Save();
        canvas.Translate((float)group.MoveXMm, (float)group.MoveYMm);
        canvas.RotateDegrees((float)group.TurnDegrees);
        canvas.Scale((float)group.Scale);
        if (group.Clip is { } clip)
        {
            canvas.ClipRect(Rect(clip), SKClipOperation.Intersect, antialias: true);
        }

        if (group.Name is { } name)
        {
            OnNamedGroup?.Invoke(canvas, name);
        }

        Paint(canvas, group.Items);
        canvas.Restore();
    }

    private static void PaintPath(SKCanvas canvas, PathItem item)
    {
        using var path = PathOf(item.Outline);
        if (item.Fill is { } fill)
        {
            using var paint = new SKPaint { Color = Colour(fill), IsAntialias = true, Style = SKPaintStyle.Fill };
            canvas.DrawPath(path, paint);
        }

        if (item.Stroke is { } stroke)
        {
            using var paint = PaintOf(stroke);
            using var dashes = stroke.DashMm.IsDefaultOrEmpty ? null : Dashes.Of(path, stroke);
            canvas.DrawPath(dashes ?? path, paint);
        }
    }

    private static SKPaint PaintOf(Stroke stroke) =>
        new()
        {
            Color = Colour(stroke.Colour),
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)stroke.WidthMm,
            StrokeCap = stroke.RoundCap ? SKStrokeCap.Round : SKStrokeCap.Butt,
            StrokeJoin = stroke.RoundJoin ? SKStrokeJoin.Round : SKStrokeJoin.Miter,
            StrokeMiter = 4,
        };

    private void PaintText(SKCanvas canvas, TextItem text)
    {
        OnText?.Invoke(canvas, text);
        var runs = TextMeasure.Runs(text.Text, text.CapHeightMm, text.Weight, faces);
        var startX = TextMeasure.StartX(text, runs.Sum(r => r.WidthMm)) - text.At.X;
        canvas.Save();
        canvas.Translate((float)text.At.X, (float)text.At.Y);
        canvas.RotateDegrees((float)text.TurnDegrees);
        using var paint = new SKPaint { Color = Colour(text.Colour), IsAntialias = true };
        foreach (var run in runs)
        {
            PaintRun(canvas, run, text.Weight, startX + run.OffsetMm, paint);
        }

        canvas.Restore();
    }

    private void PaintRun(SKCanvas canvas, TextRun run, FaceWeight weight, double x, SKPaint paint)
    {
        using var font = new SKFont(Typeface(run.FaceIndex, weight), (float)run.SizeMm)
        {
            Subpixel = true,
            LinearMetrics = true,
            Hinting = SKFontHinting.None,
            Edging = SKFontEdging.Antialias,
        };
        if (!run.Glyphs.IsDefault)
        {
            PaintShaped(canvas, run, font, x, paint);
            return;
        }

        var glyphs = new List<ushort>(run.Text.Length);
        var positions = new List<float>(run.Text.Length);

        // summed in single precision from nought, as the PDF engine does: then it writes a run as one string
        var unit = (float)run.SizeMm / run.Face.UnitsPerEm;
        var at = 0f;
        foreach (var rune in run.Text.EnumerateRunes())
        {
            var glyph = run.Face.Glyph(rune.Value);
            glyphs.Add((ushort)glyph);
            positions.Add(at);
            at += unit * run.Face.AdvanceUnits(glyph);
        }

        using var builder = new SKTextBlobBuilder();
        builder.AddHorizontalRun(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(glyphs), font, System.Runtime.InteropServices.CollectionsMarshal.AsSpan(positions), 0);
        using var blob = builder.Build();
        if (blob is not null)
        {
            canvas.Save();
            canvas.Translate((float)x, 0);
            canvas.DrawText(blob, 0, 0, paint);
            canvas.Restore();
        }
    }

    // the text goes along, so that a PDF can be searched for what was written and not for the signs that were joined
    private static void PaintShaped(SKCanvas canvas, TextRun run, SKFont font, double x, SKPaint paint)
    {
        using var builder = new SKTextBlobBuilder();
        var text = System.Text.Encoding.UTF8.GetBytes(run.Text);
        var buffer = builder.AllocatePositionedTextRun(font, run.Glyphs.Length, text.Length);
        buffer.SetGlyphs([.. run.Glyphs.Select(g => (ushort)g.Glyph)]);
        buffer.SetPositions([.. run.Glyphs.Select(g => new SKPoint((float)g.XMm, (float)g.YMm))]);
        buffer.SetClusters([.. run.Glyphs.Select(g => (uint)System.Text.Encoding.UTF8.GetByteCount(run.Text.AsSpan(0, g.From)))]);
        buffer.SetText(text);
        using var blob = builder.Build();
        if (blob is not null)
        {
            canvas.DrawText(blob, (float)x, 0, paint);
        }
    }

    private SKTypeface Typeface(int index, FaceWeight weight)
    {
        if (!typefaces.TryGetValue((index, weight), out var typeface))
        {
            using var data = SKData.CreateCopy(faces.Face(weight, index).Bytes.Span);
            typeface = SKTypeface.FromData(data) ?? throw new InvalidOperationException($"the face '{faces.Face(weight, index).Family}' cannot be painted");
            typefaces.Add((index, weight), typeface);
        }

        return typeface;
    }

    private static void PaintImage(SKCanvas canvas, ImageItem item)
    {
        using var image = SKImage.FromEncodedData(item.Png.AsSpan());
        if (image is not null)
        {
            canvas.DrawImage(image, Rect(item.Box), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear), null);
        }
    }

    private static SKPath PathOf(Outline outline)
    {
        using var path = new SKPathBuilder();
        var from = default(Point);
        foreach (var step in outline.Steps)
        {
            switch (step)
            {
                case PathStep.MoveTo(var to):
                    path.MoveTo(Point(to));
                    from = to;
                    break;
                case PathStep.LineTo(var to):
                    path.LineTo(Point(to));
                    from = to;
                    break;
                case PathStep.ArcTo(var to, var radius, var clockwise):
                    foreach (var (one, two, end) in ArcCurves.Of(from, to, radius, clockwise))
                    {
                        path.CubicTo(Point(one), Point(two), Point(end));
                    }

                    from = to;
                    break;
                case PathStep.CurveTo(var one, var two, var to):
                    path.CubicTo(Point(one), Point(two), Point(to));
                    from = to;
                    break;
                case PathStep.Polygons polygons:
                    AddPolygons(path, polygons);
                    from = polygons.LastBegin;
                    break;
                default:
                    path.Close();
                    break;
            }
        }

        return path.Detach();
    }

    private static void AddPolygons(SKPathBuilder path, PathStep.Polygons polygons)
    {
        for (var i = 0; i < polygons.Count; i++)
        {
            var corners = polygons[i];
            path.MoveTo(Point(corners[0]));
            foreach (var corner in corners[1..])
            {
                path.LineTo(Point(corner));
            }

            path.Close();
        }
    }

    internal static SKRect Rect(Box box) => new((float)box.X, (float)box.Y, (float)box.Right, (float)box.Bottom);

    private static SKPoint Point(Point p) => new((float)p.X, (float)p.Y);

    private static SKColor Colour(Rgb c) => new(c.R, c.G, c.B);
}
