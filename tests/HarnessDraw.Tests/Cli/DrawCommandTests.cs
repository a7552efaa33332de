namespace HarnessDraw.Tests.Cli;

public class DrawCommandTests
{
    [Fact]
    public void Every_file_of_the_contract_is_written_and_nothing_else()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", StarterFiles.WriteTo(folder), "--sheets", "wall-chart,cut-list", "--dpi", "50", "--ink", "colour,black");
        Assert.True(run.Code == 0, run.Messages);
        Assert.Equal("", run.Output);
        var written = folder.Files().Where(f => f.StartsWith("van/", StringComparison.Ordinal)).ToList();
        Assert.All(["van/van.wall-chart.svg", "van/van.wall-chart.png", "van/van.wall-chart.pdf", "van/van.wall-chart.black.svg", "van/van.pdf", "van/van.black.pdf", "van/van.cut-list.csv", "van/van.plan.json"], f => Assert.Contains(f, written));
        Assert.All(written, f => Assert.Matches(@"^van/van(\.(wall-chart|cut-list)(\.\d+)?(\.black)?\.(svg|png|pdf)|(\.black)?\.pdf|\.cut-list\.csv|\.plan\.json)$", f));
    }

    [Fact]
    public void About_one_circuit_its_pages_alone_are_drawn_and_what_is_not_there_is_told()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder);
        int Pages(params string[] more)
        {
            using var into = new TemporaryFolder();
            var run = CliRun.Of(["draw", file, "--sheets", "trace,projector", "--format", "svg", "--out", into.Path, .. more]);
            Assert.True(run.Code == 0, run.Messages);
            return into.Files().Count(f => f.EndsWith(".svg", StringComparison.Ordinal));
        }

        var one = Pages("--about", "horn");
        Assert.InRange(one, 2, 4);
        Assert.True(one < Pages(), $"{one}");
        var unknown = CliRun.Of("draw", file, "--sheets", "trace", "--about", "horm");
        Assert.Equal(2, unknown.Code);
        Assert.Contains("'horn'", unknown.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_mistake_is_listed_and_nothing_is_written()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: t => t
            .Replace("feeds: [horn.1]", "feeds: [horm.1]", StringComparison.Ordinal)
            .Replace("nominal: 12 V", "nominal: 12", StringComparison.Ordinal)
            .Replace("    duty: momentary", "", StringComparison.Ordinal)
            .Replace("returns-by: body", "return-by: body", StringComparison.Ordinal));
        var run = CliRun.Of("draw", file);
        Assert.Equal(1, run.Code);
        Assert.Contains("'horm", run.Messages, StringComparison.Ordinal);
        Assert.Contains("did you mean 'horn.1'?", run.Messages, StringComparison.Ordinal);
        Assert.Contains("nominal", run.Messages, StringComparison.Ordinal);
        Assert.Contains("did you mean 'returns-by'?", run.Messages, StringComparison.Ordinal);
        Assert.Contains("nothing is written", run.Messages, StringComparison.Ordinal);
        Assert.Equal(["van-layout.yaml", "van.yaml"], folder.Files());
    }

    [Fact]
    public void A_file_that_is_not_there_returns_3_and_names_the_near_one()
    {
        using var folder = new TemporaryFolder();
        StarterFiles.WriteTo(folder);
        var run = CliRun.Of("draw", folder.File("vna.yaml"));
        Assert.Equal(3, run.Code);
        Assert.Contains($"did you mean '{folder.File("van.yaml")}'?", run.Messages, StringComparison.Ordinal);
        Assert.Equal(3, CliRun.Of("draw", folder.File("van")).Code);
        Assert.Equal(3, CliRun.Of("draw", folder.Path).Code);
    }

    [Fact]
    public void A_folder_that_cannot_be_written_returns_3()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", StarterFiles.WriteTo(folder), "--format", "svg", "--out", folder.File("blocked", "a file, not a folder"));
        Assert.Equal(3, run.Code);
        Assert.Equal(["blocked", "van-layout.yaml", "van.yaml"], folder.Files());
    }

    [Fact]
    public void An_error_finding_still_draws_marks_every_sheet_and_returns_1()
    {
        using var folder = new TemporaryFolder();
        // a fan on a fuse far above what its wire bears: given by hand, so checked and not changed
        var file = StarterFiles.WriteTo(folder, change: t => t.Replace("triggers-only: yes", "triggers-only: yes, size: 0.5 mm2", StringComparison.Ordinal).Replace("K7: { kind: blade,", "K7: { kind: blade, rating: 30 A,", StringComparison.Ordinal));
        var run = CliRun.Of("draw", file, "--format", "svg");
        Assert.Equal(1, run.Code);
        Assert.Contains("NOT FOR BUILD", run.Messages, StringComparison.Ordinal);
        var sheets = folder.Files().Where(f => f.EndsWith(".svg", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(sheets);
        Assert.All(sheets, f => Assert.Contains("NOT FOR BUILD", File.ReadAllText(folder.File(f)), StringComparison.Ordinal));
    }

    [Fact]
    public void A_sheet_that_fits_no_paper_is_refused_by_name_and_the_others_are_written()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", StarterFiles.WriteTo(folder), "--format", "svg", "--paper", "A4");
        Assert.Equal(1, run.Code);
        Assert.Contains("the wall-chart is not drawn: ", run.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain("van/van.wall-chart.svg", folder.Files());
        Assert.Contains(folder.Files(), f => f.StartsWith("van/van.cut-list", StringComparison.Ordinal) && f.EndsWith(".svg", StringComparison.Ordinal));
        Assert.Matches("\"refused\": ?\"", File.ReadAllText(folder.File("van/van.plan.json")));
    }

    [Fact]
    public void Tiles_lie_beside_the_chart_as_pages()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", StarterFiles.WriteTo(folder), "--sheets", "wall-chart", "--format", "svg,pdf", "--tile", "Letter");
        Assert.True(run.Code == 0, run.Messages);
        Assert.Contains(folder.Files(), f => f.StartsWith("van/van.wall-chart-", StringComparison.Ordinal) && f.EndsWith(".2.svg", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("van.with.dots")]
    [InlineData("wagen ß Ж")]
    [InlineData("-rf")]
    public void Odd_file_names_stay_in_their_folder(string name)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", StarterFiles.WriteTo(folder, name), "--sheets", "cut-list", "--format", "svg", "--out", folder.File("out"));
        Assert.True(run.Code == 0, run.Messages);
        Assert.Contains($"out/{name}.cut-list.csv", folder.Files());
        Assert.All(folder.Files(), f => Assert.True(f.StartsWith("out/", StringComparison.Ordinal) || f.EndsWith(".yaml", StringComparison.Ordinal)));
    }
}
