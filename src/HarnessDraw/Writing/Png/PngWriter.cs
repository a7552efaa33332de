using HarnessDraw.Drawing;
using HarnessDraw.Writing.Painting;
using SkiaSharp;

namespace HarnessDraw.Writing.Png;

/// <summary>A sheet as a PNG picture, painted in strips so that an A0 sheet needs no more memory than an A4 one.</summary>
public static class PngWriter
{
    private const int StripRows = 256;

    /// <summary>The whole file; <paramref name="dpi"/> is pixels an inch (25 to 1200) and is written into the file, <paramref name="told"/> hears after each strip what share (0 to 1) is painted.</summary>
    public static byte[] Write(Sheet sheet, double dpi = 200, FaceSet? faces = null, Action<double>? told = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentOutOfRangeException.ThrowIfLessThan(dpi, 25);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dpi, 1200);
        var (width, height) = (Pixels(sheet.Paper.WidthMm, dpi), Pixels(sheet.Paper.HeightMm, dpi));
        using var painter = new SheetPainter(faces ?? FaceSet.Shipped);
        using var picture = Record(painter, sheet);
        using var file = new MemoryStream();
        using (var png = new PngStream(file, width, height, dpi))
        {
            PaintStrips(picture, png, width, height, (float)(dpi / 25.4), told);
        }

        return file.ToArray();
    }

    private static SKPicture Record(SheetPainter painter, Sheet sheet)
    {
        using var recorder = new SKPictureRecorder();
        var canvas = recorder.BeginRecording(SheetPainter.Rect(new Box(0, 0, sheet.Paper.WidthMm, sheet.Paper.HeightMm)), useRTree: true);
        painter.Paint(canvas, sheet.Items);
        return recorder.EndRecording();
    }

    private static void PaintStrips(SKPicture picture, PngStream png, int width, int height, float pixelsPerMm, Action<double>? told)
    {
        var info = new SKImageInfo(width, Math.Min(StripRows, height), SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var bitmap = new SKBitmap(info);
        using var canvas = new SKCanvas(bitmap);
        for (var top = 0; top < height; top += info.Height)
        {
            canvas.Clear(SKColors.White);
            canvas.Save();
            canvas.Translate(0, -top);
            canvas.Scale(pixelsPerMm);
            canvas.DrawPicture(picture);
            canvas.Restore();
            canvas.Flush();
            var rows = Math.Min(info.Height, height - top);
            png.WriteRows(bitmap.GetPixelSpan(), bitmap.RowBytes, rows);
            told?.Invoke((double)(top + rows) / height);
        }
    }

    private static int Pixels(double mm, double dpi) => (int)Math.Round(mm / 25.4 * dpi);
}
