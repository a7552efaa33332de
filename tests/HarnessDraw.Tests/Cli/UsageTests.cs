namespace HarnessDraw.Tests.Cli;

public class UsageTests
{
    [Theory]
    [InlineData("draw")]
    [InlineData("check")]
    [InlineData("plan")]
    [InlineData("cut")]
    [InlineData("reels")]
    [InlineData("buy")]
    [InlineData("kit")]
    [InlineData("freeze")]
    [InlineData("compare")]
    [InlineData("import")]
    [InlineData("trace")]
    [InlineData("schema")]
    [InlineData("new")]
    public void Help_of_each_command_shows_an_example(string command)
    {
        var run = CliRun.Of(command, "--help");
        Assert.Equal(0, run.Code);
        Assert.Contains("Example", run.Output, StringComparison.Ordinal);
        Assert.Contains($"  harnessdraw {command} ", run.Output, StringComparison.Ordinal);
        Assert.Equal("", run.Messages);
    }

    [Fact]
    public void Help_of_the_program_lists_the_commands_and_defers_to_local_codes()
    {
        var run = CliRun.Of("--help");
        Assert.Equal(0, run.Code);
        Assert.All(["draw", "check", "plan", "cut", "trace", "schema", "new"], c => Assert.Contains($"  {c} ", run.Output, StringComparison.Ordinal));
        Assert.Contains("local codes", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("there is no command 'drw'; did you mean 'draw'?", "drw", "x.yaml")]
    [InlineData("--sheets: 'walchart' is not known; did you mean 'wall-chart'?", "draw", "x.yaml", "--sheets", "walchart")]
    [InlineData("--format: 'jpg' is not known", "draw", "x.yaml", "--format", "svg,jpg")]
    [InlineData("--paper: 'B7' is no paper size", "draw", "x.yaml", "--paper", "B7")]
    [InlineData("--tile: 'A0' is no paper size", "draw", "x.yaml", "--tile", "A0")]
    [InlineData("--dpi: 9999 is outside", "draw", "x.yaml", "--dpi", "9999")]
    [InlineData("--separator: 'dot' is not known", "cut", "x.yaml", "--separator", "dot")]
    [InlineData("--voltage: '13' is not known", "new", "x", "--voltage", "13")]
    [InlineData("--voltage: '12 V' is not known; write '12' without the unit. Expected", "new", "x", "--voltage", "12 V")]
    [InlineData("there is no option '--sheet'; did you mean '--sheets'?", "draw", "x.yaml", "--sheet", "wall-chart")]
    [InlineData("there is no option '--fan'; did you mean '--cooling-fan'?", "new", "x", "--fan", "electric")]
    [InlineData("FILE", "draw")]
    [InlineData("--frobnicate", "draw", "x.yaml", "--frobnicate")]
    public void Wrong_usage_is_told_and_returns_2(string message, params string[] args)
    {
        var run = CliRun.Of(args);
        Assert.Equal(2, run.Code);
        Assert.Contains(message, run.Messages, StringComparison.Ordinal);
        Assert.Contains("--help", run.Messages, StringComparison.Ordinal);
        Assert.Equal("", run.Output);
    }

    [Fact]
    public void No_command_at_all_is_wrong_usage() => Assert.Equal(2, CliRun.Of().Code);

    [Fact]
    public void A_response_file_is_not_read_behind_the_users_back()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("draw", "@" + folder.File("args.txt", "--help"));
        Assert.Equal(3, run.Code);
    }

    [Theory]
    [InlineData("1", null, false)]
    [InlineData("", null, true)]
    [InlineData(null, "dumb", false)]
    [InlineData(null, "xterm", true)]
    public void Colour_honours_the_environment(string? noColour, string? term, bool wanted) =>
        Assert.Equal(wanted, global::HarnessDraw.Cli.Terminal.ColourWanted(noColour, term));
}
