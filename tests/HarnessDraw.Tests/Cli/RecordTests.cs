using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Cli;

/// <summary>What is measured goes into a file beside the description and is used from then on; a list is taken over after a look at its columns.</summary>
public class RecordTests
{
    [Fact]
    public void Lengths_and_readings_are_written_and_used_by_the_next_run()
    {
        using var folder = new TemporaryFolder();
        var file = Copy(folder);
        var run = CliRun.Of("record", file, "--length", "P01=4321 mm", "--volts", "battery.plus=9.1 V in running", "--ohms", "P01=2 ohm");
        Assert.True(run.Code == 0, run.Messages);
        Assert.Equal(0, CliRun.Of("record", file, "--length", "P01=4400 mm").Code);
        Assert.Equal("wire,from,to,length_mm,pin,state,volts,milliohm\r\nP01,,,4400,,,,\r\n,,,,battery.plus,running,9.1,\r\nP01,,,,,,,2000\r\n", File.ReadAllText(Path.ChangeExtension(file, null) + ".as-built.csv"));
        var cut = CliRun.Of("cut", file, "--view", "wire").Output.Split("\r\n").Single(l => l.Contains(",P01,", StringComparison.Ordinal));
        Assert.Contains(",4400,", cut, StringComparison.Ordinal);
        var check = CliRun.Of("check", file).Output;
        Assert.Contains("battery plus read 9.1 V in 'running'", check.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("READ LAST ON THE BUILT HARNESS", CliRun.Of("trace", file, "headlamps").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--length", "P99=100 mm", "no wire 'P99'", 2)]
    [InlineData("--length", "P01=100", "no unit", 2)]
    [InlineData("--length", "P01", "NAME=VALUE", 2)]
    [InlineData("--volts", "battery.plus=12", "12.3 V in STATE", 2)]
    [InlineData("--volts", "battery.plus=12 V in flying", "no state 'flying'", 1)]
    [InlineData("--volts", "battery.plux=12 V in running", "no pin 'battery.plux'", 1)]
    [InlineData("--way", "here=5 mm", "PLACE > PLACE", 2)]
    [InlineData("--way", "here > there=5 mm", "no place 'here'", 1)]
    public void A_measurement_of_nothing_is_told_and_nothing_is_written(string option, string text, string says, int code)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.Of("record", Copy(folder), option, text);
        Assert.Equal(code, run.Code);
        Assert.Contains(says, run.Messages, StringComparison.Ordinal);
        Assert.DoesNotContain(folder.Files(), f => f.EndsWith(".as-built.csv", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("wire,from,to\nW1,a.1,b.1\n\"W3,a.1", "bad.csv:3:1: error", "a quote is opened and never closed")]
    [InlineData("# a description\nvehicle: { name: a, b, c }\nothers: [1, 2, 3]\nmore: [1, 2, 3]\n", "2:", "2 further rows have", "no column is understood as 'wire'")]
    public void A_damaged_list_is_told_in_few_words_and_nothing_is_written(string list, params string[] says)
    {
        using var folder = new TemporaryFolder();
        var file = folder.File("bad.csv", list);
        var run = CliRun.Of("import", file, "--out", folder.Path);
        Assert.Equal(1, run.Code);
        Assert.All(says, s => Assert.Contains(s, run.Messages, StringComparison.Ordinal));
        Assert.Equal(["bad.csv"], folder.Files().Select(Path.GetFileName));
    }

    [Fact]
    public void A_file_with_columns_of_the_owners_own_is_not_written_over()
    {
        using var folder = new TemporaryFolder();
        var file = Copy(folder);
        var built = Path.ChangeExtension(file, null) + ".as-built.csv";
        File.WriteAllText(built, "wire,length_mm,who\nP01,900,me\n");
        var run = CliRun.Of("record", file, "--length", "P01=910 mm");
        Assert.Equal(3, run.Code);
        Assert.Contains("'who' that would be lost", run.Messages, StringComparison.Ordinal);
        Assert.Contains("me", File.ReadAllText(built), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_frozen_is_not_written_over_unless_asked()
    {
        using var folder = new TemporaryFolder();
        var file = Copy(folder);
        Assert.Equal(0, CliRun.Of("freeze", file).Code);
        var frozen = Path.ChangeExtension(file, null) + ".frozen.json";
        File.AppendAllText(frozen, " ");
        Assert.Equal(3, CliRun.Of("freeze", file).Code);
        Assert.EndsWith(" ", File.ReadAllText(frozen), StringComparison.Ordinal);
        Assert.Equal(0, CliRun.Of("freeze", file, "--again").Code);
        Assert.False(File.ReadAllText(frozen).EndsWith(' '));
    }

    [Theory]
    [InlineData("no\n", 1)]
    [InlineData("yes\n", 0)]
    [InlineData("\n", 0)]
    public void Columns_that_were_guessed_are_confirmed_before_anything_is_written(string answer, int code)
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.With(answer, "import", Repository.PathOf("examples", "wire-list.csv"), "--out", folder.Path);
        Assert.Equal(code, run.Code);
        Assert.Contains("Are the columns understood right?", run.Messages, StringComparison.Ordinal);
        Assert.Equal(code == 0, folder.Files().Any());
    }

    [Fact]
    public void Columns_are_named_by_a_small_file()
    {
        using var folder = new TemporaryFolder();
        var (list, map) = (Path.Combine(folder.Path, "list.csv"), Path.Combine(folder.Path, "columns.txt"));
        File.WriteAllText(list, "Nr,Links,Rechts\nW1,a.1,b.1\n");
        File.WriteAllText(map, "# heads of our lists\nwire=Nr\nfrom=Links\n\nto=Rechts\n");
        var run = CliRun.Of("import", list, "--map", map, "--out", Path.Combine(folder.Path, "out"));
        Assert.True(run.Code == 0, run.Messages);
        Assert.Equal(1, CliRun.Of("import", list, "--out", Path.Combine(folder.Path, "other")).Code);
        // nothing is written over
        Assert.Equal(3, CliRun.Of("import", list, "--map", map, "--out", Path.Combine(folder.Path, "out")).Code);
    }

    private static string Copy(TemporaryFolder folder)
    {
        var file = Path.Combine(folder.Path, "examples", "dunmarrow-18.yaml");
        foreach (var name in new[] { "examples", "layouts" })
        {
            Directory.CreateDirectory(Path.Combine(folder.Path, name));
            foreach (var source in Directory.GetFiles(Repository.PathOf(name), "*.yaml"))
            {
                File.Copy(source, Path.Combine(folder.Path, name, Path.GetFileName(source)));
            }
        }

        return file;
    }
}
