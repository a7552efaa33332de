using SkiaSharp;

namespace HarnessDraw.Tests.Cli;

public class DeterminismTests
{
    [Fact]
    public void Another_folder_locale_and_time_zone_give_the_same_files()
    {
        using var one = new TemporaryFolder();
        using var two = new TemporaryFolder();
        Draw(one, new() { ["LANG"] = "en_GB.UTF-8", ["TZ"] = "UTC" });
        Draw(two, new() { ["LANG"] = "tr_TR.UTF-8", ["LC_ALL"] = "tr_TR.UTF-8", ["TZ"] = "Pacific/Kiritimati", ["DOTNET_SYSTEM_GLOBALIZATION_INVARIANT"] = "0" });
        Assert.Equal(one.Files(), two.Files());
        Assert.Contains("van/van.pdf", one.Files());
        foreach (var file in one.Files())
        {
            if (file.EndsWith(".png", StringComparison.Ordinal))
            {
                AssertSamePicture(one.File(file), two.File(file));
            }
            else
            {
                Assert.True(File.ReadAllBytes(one.File(file)).AsSpan().SequenceEqual(File.ReadAllBytes(two.File(file))), $"{file} differs");
            }
        }
    }

    [Fact]
    public void The_native_executable_writes_the_same_text_files()
    {
        if (OneProcess.Native is null)
        {
            Assert.Skip("HARNESSDRAW_NATIVE names no published executable");
        }

        using var jit = new TemporaryFolder();
        using var native = new TemporaryFolder();
        Draw(jit, []);
        StarterFiles.WriteTo(native);
        var run = OneProcess.RunNative(native.Path, "draw", "van.yaml", "--dpi", "60");
        Assert.True(run.Code == 0, run.Messages);
        Assert.Equal(jit.Files(), native.Files());
        foreach (var file in jit.Files().Where(f => Path.GetExtension(f) is ".svg" or ".json" or ".csv"))
        {
            Assert.True(File.ReadAllBytes(jit.File(file)).AsSpan().SequenceEqual(File.ReadAllBytes(native.File(file))), $"{file} differs");
        }
    }

    private static void Draw(TemporaryFolder folder, Dictionary<string, string> environment)
    {
        StarterFiles.WriteTo(folder);
        var run = OneProcess.Run(folder.Path, environment, "draw", "van.yaml", "--dpi", "60");
        Assert.True(run.Code == 0, run.Messages);
    }

    private static void AssertSamePicture(string one, string two)
    {
        using var a = SKBitmap.Decode(one);
        using var b = SKBitmap.Decode(two);
        Assert.Equal(a.Info, b.Info);
        Assert.True(a.GetPixelSpan().SequenceEqual(b.GetPixelSpan()), $"{one} differs");
    }
}
