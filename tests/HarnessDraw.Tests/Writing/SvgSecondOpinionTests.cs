using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.Png;
using HarnessDraw.Writing.Svg;
using SkiaSharp;

namespace HarnessDraw.Tests.Writing;

/// <summary>
/// Other programs read our SVG and draw what our PNG shows. Measured is the mean difference of blocks of pixels, as a share of what the sheet's lettering alone
/// makes: a sheet without its letters would differ by 1. Chromium draws all letters a little fatter (0.40 to 0.46 seen), rsvg nearly as we do (0.26 to 0.28).
/// </summary>
public class SvgSecondOpinionTests
{
    private const double Dpi = 100;
    private const double RsvgBound = 0.35;
    private const double ChromiumBound = 0.55;

    // whole example pages have boxes, rules and swatches too, whose edges each program smooths in its own way (rsvg: 0.36 seen on a cut list full of boxes to tick)
    private const double RuledMore = 0.1;

    [Fact]
    public void Rsvg_draws_our_SVG_like_our_PNG()
    {
        var tool = OutsideTool.Find("rsvg-convert");
        Compare(Sheets().Select(s => (s, RsvgBound)).Concat(Further(SheetKinds.All).Select(s => (s, RsvgBound + RuledMore))), (folder, svg, png, width, height) => OutsideTool.Run(tool, folder, "-w", $"{width}", "-h", $"{height}", "-b", "white", "-o", png, svg));
    }

    [Fact]
    public void Chromium_draws_our_SVG_like_our_PNG()
    {
        var tool = OutsideTool.Find("chromium", "chromium-browser", "google-chrome");
        Compare(Sheets().Select(s => (s, ChromiumBound)).Concat(Further([SheetKinds.Trace, SheetKinds.Power, SheetKinds.OpeningTemplate]).Select(s => (s, ChromiumBound + RuledMore))), (folder, svg, png, width, height) =>
        {
            var page = Path.Combine(folder, "page.html");
            File.WriteAllText(page, $"<body style='margin:0'><img src='{svg}' style='display:block;width:{width}px;height:{height}px'></body>");
            OutsideTool.Run(tool, folder, "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--hide-scrollbars", "--force-device-scale-factor=1", $"--user-data-dir={folder}/profile", $"--window-size={width},{height}", $"--screenshot={png}", page);
        });
    }

    [Fact]
    public void Xmllint_accepts_every_sheet_of_the_examples()
    {
        var tool = OutsideTool.Find("xmllint");
        var folder = OutsideTool.FolderWithFaces();
        try
        {
            var files = new List<string>();
            foreach (var plan in new[] { "brackmere-six", "dunmarrow-18", "aldervane-coach" }.Select(ExamplePlans.Of))
            {
                foreach (var sheet in SheetKinds.All.SelectMany(k => SheetKinds.Compose(k, plan, [], new()).Sheets))
                {
                    files.Add(Path.Combine(folder, $"{files.Count}.svg"));
                    File.WriteAllBytes(files[^1], SvgWriter.Write(sheet));
                }
            }

            OutsideTool.Run(tool, folder, ["--noout", "--nonet", .. files]);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Compare(IEnumerable<(Sheet Sheet, double Bound)> sheets, Action<string, string, string, int, int> draw)
    {
        var folder = OutsideTool.FolderWithFaces();
        var unlike = new List<string>();
        try
        {
            foreach (var (sheet, bound) in sheets)
            {
                using var ours = SKBitmap.Decode(PngWriter.Write(sheet, Dpi));
                var (svg, png) = (Path.Combine(folder, "sheet.svg"), Path.Combine(folder, "sheet.png"));
                File.WriteAllBytes(svg, SvgWriter.Write(sheet));
                File.Delete(png);
                draw(folder, svg, png, ours.Width, ours.Height);
                using var theirs = SKBitmap.Decode(png);
                Assert.Equal((ours.Width, ours.Height), (theirs.Width, theirs.Height));
                using var bare = SKBitmap.Decode(PngWriter.Write(sheet with { Items = Bare(sheet.Items) }, Dpi));
                var share = Difference(ours, theirs) / Difference(ours, bare);
                if (share >= bound)
                {
                    unlike.Add($"{sheet.Title}: {share:0.00} of its lettering");
                }
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        Assert.Empty(unlike);
    }

    private static IEnumerable<Sheet> Sheets() =>
    [
        SampleSheet.Make(PaperSizes.A4Landscape),
        SampleSheet.Make(PaperSizes.A4Landscape, black: true),
        ConnectorSheets.Compose(SmallPlan.Plan, [], new()).Sheets[0],
        ConnectorSheets.Compose(SmallPlan.Plan, [], new() { BlackInk = true }).Sheets[0],
        CutListSheets.Compose(SmallPlan.Plan, [], new()).Sheets[0],
    ];

    // the first page of each kind of a whole example, but for the large ones: a board or a wall chart at 100 dpi is mostly paper
    private static IEnumerable<Sheet> Further(IEnumerable<string> kinds) =>
        kinds.Except([SheetKinds.WallChart, SheetKinds.BuildBoard]).Select(k => SheetKinds.Compose(k, ExamplePlans.Of("brackmere-six"), [], new()).Sheets[0]);

    private static System.Collections.Immutable.ImmutableArray<Item> Bare(System.Collections.Immutable.ImmutableArray<Item> items) =>
        [.. items.Where(i => i is not TextItem).Select(i => i is GroupItem group ? group with { Items = Bare(group.Items) } : i)];

    // blocks of 4 x 4 pixels: edges are smoothed in each program's own way, a missing or moved letter is not
    private static double Difference(SKBitmap a, SKBitmap b)
    {
        const int Block = 4;
        var (columns, rows) = (a.Width / Block, a.Height / Block);
        var sums = new int[columns * rows * 3];
        for (var y = 0; y < rows * Block; y++)
        {
            for (var x = 0; x < columns * Block; x++)
            {
                var (p, q) = (a.GetPixel(x, y), b.GetPixel(x, y));
                var at = 3 * (((y / Block) * columns) + (x / Block));
                sums[at] += p.Red - q.Red;
                sums[at + 1] += p.Green - q.Green;
                sums[at + 2] += p.Blue - q.Blue;
            }
        }

        return sums.Sum(s => Math.Abs((double)s)) / sums.Length / (Block * Block);
    }
}
