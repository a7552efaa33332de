namespace HarnessDraw.Tests.Cli;

public class BuildOptionTests
{
    private const string Options = "options:\n  horn tone: { one of: [low, '../../high'], usual: low }\n  wiper: { one of: [plain, with washer], usual: plain }\n  rules: [ \"with washer excludes ../../high\" ]\n\nthings: ";

    [Fact]
    public void A_build_goes_to_a_folder_of_its_own_whatever_its_names()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", WithOptions(folder), "--sheets", "cut-list", "--format", "svg", "--build", "horn tone=../../high", "--out", folder.File("out"));
        Assert.True(run.Code == 0, run.Messages);
        Assert.Contains("out/horn-tone-high+wiper-plain/van.cut-list.csv", folder.Files());
        Assert.All(folder.Files(), f => Assert.True(f.StartsWith("out/", StringComparison.Ordinal) || f.EndsWith(".yaml", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("tone=low", "the harness has no option 'tone'; it has 'horn tone', 'wiper'")]
    [InlineData("horn tone=medium", "'horn tone' has no choice 'medium'; it has 'low', '../../high'")]
    [InlineData("low", "'low' is not of the form option=choice")]
    [InlineData("wiper=with washer,horn tone=../../high", "wiper=with washer excludes horn tone=../../high")]
    public void A_build_that_cannot_be_is_wrong_usage(string build, string message)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", WithOptions(folder), "--build", build);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Messages, StringComparison.Ordinal);
        Assert.Equal(["van-layout.yaml", "van.yaml"], folder.Files());
    }

    private static string WithOptions(TemporaryFolder folder) =>
        StarterFiles.WriteTo(folder, change: t => t.Replace("things: ", Options, StringComparison.Ordinal));
}
