using System.Text.RegularExpressions;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Cli;

/// <summary>Commands that the help and the README show are run as they are written.</summary>
public partial class WrittenCommandsTests
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
    [InlineData("diagnose")]
    [InlineData("procedure")]
    [InlineData("exercise")]
    [InlineData("try")]
    [InlineData("fit")]
    [InlineData("schema")]
    [InlineData("new")]
    public void Examples_in_the_help_run_as_written(string command)
    {
        var examples = CliRun.Of(command, "--help").Output.Split('\n').Where(l => l.StartsWith($"  harnessdraw {command} ", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(examples);
        Assert.All(examples, AssertRuns);
    }

    [Fact]
    public void The_first_command_of_the_readme_draws_the_first_example()
    {
        var line = File.ReadLines(Repository.PathOf("README.md")).First(l => l.StartsWith("dotnet run --project src/HarnessDraw.Cli -- ", StringComparison.Ordinal));
        AssertRuns(line.Replace("dotnet run --project src/HarnessDraw.Cli --", "harnessdraw", StringComparison.Ordinal));
    }

    private static void AssertRuns(string line)
    {
        using var folder = new TemporaryFolder();
        var words = Word().Matches(line.Split('>')[0]).Select(m => m.Value.Trim('\'')).Skip(1).ToList();
        var args = words.Select(w => w.StartsWith("examples/", StringComparison.Ordinal) ? Repository.PathOf(w) : w).ToList();
        var at = args.IndexOf("--out");
        if (at >= 0)
        {
            args[at + 1] = folder.Path;
        }
        else if (args[0] is "draw" or "new")
        {
            args.AddRange(["--out", folder.Path]);
        }

        var run = CliRun.Of([.. args]);
        Assert.True(run.Code == 0, $"{line}: {run.Code}\n{run.Messages}");
        Assert.True(run.Output.Length > 0 || folder.Files().Any(), line);
    }

    [GeneratedRegex(@"'[^']*'|\S+")]
    private static partial Regex Word();
}
