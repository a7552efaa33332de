using HarnessDraw.Drawing;
using HarnessDraw.Writing.Png;
using HarnessDraw.Writing.Svg;
using SkiaSharp;
using Svg.Skia;
using Svg.Skia.TypefaceProviders;

namespace HarnessDraw.Tests.Writing;

public class PngWriterTests
{
    [Theory]
    [InlineData(200, 1654, 2339)]
    [InlineData(72, 595, 842)]
    public void The_picture_has_the_pixels_of_its_paper(double dpi, int width, int height)
    {
        using var bitmap = SKBitmap.Decode(PngWriter.Write(SampleSheet.Make(PaperSizes.A4), dpi));
        Assert.Equal((width, height), (bitmap.Width, bitmap.Height));
    }

    [Fact]
    public void Two_paintings_are_the_same_bytes() =>
        Assert.Equal(PngWriter.Write(SampleSheet.Make(PaperSizes.A4), 100), PngWriter.Write(SampleSheet.Make(PaperSizes.A4), 100));

    [Fact]
    public void Strips_join_without_a_seam()
    {
        // a slanted grey wedge: whole rows painted in one piece must equal the strips
        var wedge = new Sheet("s", "S", new("x", 40, 200), [new PathItem(Outline.Polyline([new(0, 0), new(40, 0), new(0, 200)], closed: true)) { Fill = Ink.Secondary }]);
        using var bitmap = SKBitmap.Decode(PngWriter.Write(wedge, 127));
        for (var y = 1; y < bitmap.Height; y++)
        {
            var (above, here) = (Dark(bitmap, y - 1), Dark(bitmap, y));
            Assert.InRange(above - here, -1, 2);
        }
    }

    [Fact]
    public void Lettering_is_there()
    {
        using var with = SKBitmap.Decode(PngWriter.Write(new Sheet("s", "S", new("x", 60, 20), [new TextItem("HHHH Ж →", new(5, 15), 10) { Weight = FaceWeight.Bold }]), 100));
        Assert.InRange(Enumerable.Range(0, with.Height).Sum(y => Dark(with, y)), 1000, 20000);
    }

    // the second opinion: our SVG read and drawn by another library looks like our PNG
    [Theory]
    [InlineData("A4 landscape", false)]
    [InlineData("A4 landscape", true)]
    [InlineData("Letter", false)]
    public void Our_svg_drawn_by_Svg_Skia_looks_like_our_png(string paper, bool black)
    {
        const double Dpi = 150;
        var sheet = SampleSheet.Make(PaperSizes.Find(paper)!, black);
        using var ours = SKBitmap.Decode(PngWriter.Write(sheet, Dpi));
        using var theirs = DrawWithSvgSkia(SvgWriter.Write(sheet), ours.Width, ours.Height, sheet.Paper);
        var (difference, ink) = Compare(ours, theirs);
        Assert.True(ink > 4, $"the other library drew nothing: mean ink {ink:0.00} of 255");
        Assert.True(difference < 1.6, $"mean difference {difference:0.00} of 255, mean ink {ink:0.00}");
    }

    private static SKBitmap DrawWithSvgSkia(byte[] svg, int width, int height, Paper paper)
    {
        using var picture = new SKSvg();
        picture.Settings.TypefaceProviders!.Insert(0, new ShippedFaces());
        using var stream = new MemoryStream(svg);
        Assert.NotNull(picture.Load(stream));
        var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        var bounds = picture.Picture!.CullRect;
        canvas.Scale(width / bounds.Width, height / bounds.Height);
        canvas.DrawPicture(picture.Picture);
        canvas.Flush();
        _ = paper;
        return bitmap;
    }

    private static (double Difference, double Ink) Compare(SKBitmap a, SKBitmap b)
    {
        double difference = 0, ink = 0;
        for (var y = 0; y < a.Height; y++)
        {
            for (var x = 0; x < a.Width; x++)
            {
                var (p, q) = (a.GetPixel(x, y), b.GetPixel(x, y));
                difference += (Math.Abs(p.Red - q.Red) + Math.Abs(p.Green - q.Green) + Math.Abs(p.Blue - q.Blue)) / 3.0;
                ink += 255 - ((q.Red + q.Green + q.Blue) / 3.0);
            }
        }

        return (difference / a.Width / a.Height, ink / a.Width / a.Height);
    }

    private static int Dark(SKBitmap bitmap, int y) => Enumerable.Range(0, bitmap.Width).Count(x => bitmap.GetPixel(x, y).Red < 200);

    // without its own provider the library finds no face at all and drops text in silence
    private sealed class ShippedFaces : ITypefaceProvider
    {
        public SKTypeface? FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle)
        {
            var second = fontFamily.Contains("Inter", StringComparison.Ordinal) && !fontFamily.Contains("Atkinson", StringComparison.Ordinal);
            var weight = (int)fontWeight >= 600 ? FaceWeight.Bold : FaceWeight.Medium;
            using var data = SKData.CreateCopy(FaceSet.Shipped.Face(weight, second ? 1 : 0).Bytes.Span);
            return SKTypeface.FromData(data);
        }
    }

    [Fact]
    public void A_large_picture_tells_after_each_strip_how_far_it_has_come()
    {
        var told = new List<double>();
        var sheet = SampleSheet.Make(PaperSizes.A4);
        Assert.Equal(PngWriter.Write(sheet, 200), PngWriter.Write(sheet, 200, told: told.Add));
        // 297 mm are 2339 rows, ten strips
        Assert.Equal(10, told.Count);
        Assert.Equal(told.Distinct().Order(), told);
        Assert.Equal(1, told[^1]);
    }
}
