using HarnessDraw.Tests.Cli;
using HarnessDraw.Tests.Conventions;
using SkiaSharp;
using UglyToad.PdfPig;

namespace HarnessDraw.Tests.Golden;

/// <summary>The committed output-samples are what the examples give: plan, wall chart, cut list and every other file.</summary>
public class SampleTests
{
    public static TheoryData<string> Examples()
    {
        var data = new TheoryData<string>();
        foreach (var file in Directory.EnumerateFiles(Repository.PathOf("examples"), "*.yaml").Order(StringComparer.Ordinal))
        {
            if (File.ReadLines(file).Any(l => l.StartsWith("harness:", StringComparison.Ordinal)))
            {
                data.Add(Path.GetFileNameWithoutExtension(file));
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Samples_are_what_the_example_gives(string example)
    {
        using var fresh = new TemporaryFolder();
        foreach (var arguments in File.ReadAllLines(Repository.PathOf("output-samples", "arguments.txt")))
        {
            var run = CliRun.Of(["draw", Repository.PathOf("examples", example + ".yaml"), .. arguments.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--out", fresh.Path]);
            Assert.True(run.Code is 0 or 1, run.Messages);
        }

        var committed = Repository.PathOf("output-samples", example);
        var kept = Directory.EnumerateFiles(committed, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(committed, f).Replace('\\', '/')).Order(StringComparer.Ordinal);
        Assert.Equal(kept, fresh.Files());
        Assert.All(fresh.Files(), f => AssertSame(Path.Combine(committed, f), fresh.File(f)));
    }

    private static void AssertSame(string kept, string fresh)
    {
        switch (Path.GetExtension(kept))
        {
            case ".png":
                using (var a = SKBitmap.Decode(kept))
                using (var b = SKBitmap.Decode(fresh))
                {
                    Assert.Equal(a.Info, b.Info);
                    Assert.True(a.GetPixelSpan().SequenceEqual(b.GetPixelSpan()), $"{kept}: the picture is another one");
                }

                break;
            case ".pdf":
                Assert.Equal(Pages(kept), Pages(fresh));
                break;
            default:
                Assert.Equal(File.ReadAllText(kept), File.ReadAllText(fresh));
                break;
        }
    }

    private static List<string> Pages(string file)
    {
        using var document = PdfDocument.Open(file);
        return [.. document.GetPages().Select(p => $"{p.Width:0.##} x {p.Height:0.##}: {p.Text}")];
    }
}
