using System.Text.Json;
using HarnessDraw.Reading.Edits;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Cli;

/// <summary>'try' and 'fit': changes in memory, answered by the whole plan.</summary>
public sealed class WhatIfTests
{
    private static readonly string Saloon = Repository.PathOf("examples/brackmere-six.yaml");

    [Fact]
    public void A_thinner_wire_is_tried_without_touching_the_file()
    {
        var text = File.ReadAllText(Saloon);
        var run = CliRun.Of("try", Saloon, "--set", "circuit.fan motor.size=2.5 mm2");
        Assert.Equal(1, run.Code);
        Assert.Contains("wire F37: size 6.0 mm2 -> 2.5 mm2", run.Output, StringComparison.Ordinal);
        Assert.Contains("error fuse-above-wire: Fuse F2 (30 A) feeds 2.5 mm² wire F37", run.Output, StringComparison.Ordinal);
        Assert.Equal(text, File.ReadAllText(Saloon));
    }

    [Fact]
    public void A_harness_that_was_never_built_is_not_said_to_be()
    {
        var run = CliRun.Of("fit", Saloon, "--load", "15 A", "--at", "left wing front");
        Assert.Contains("tried, the best first", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("was built", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Fuse_load_and_length_are_tried_together()
    {
        var run = CliRun.Of("try", Saloon, "--set", "fuse.K19.rating=20 A", "--set", "thing.horn high.coil.1=1 A", "--set", "path.cowl left to cowl middle.measured=615 mm", "--format", "json");
        var changes = JsonDocument.Parse(run.Output).RootElement.GetProperty("changes").EnumerateArray().ToList();
        string? After(string kind, string id, string what) => changes.Where(c => c.GetProperty("kind").GetString() == kind && c.GetProperty("id").GetString() == id && c.GetProperty("what").GetString() == what).Select(c => c.GetProperty("after").GetString()).SingleOrDefault();
        Assert.Equal("20 A", After("fuse", "K19", "rating"));
        Assert.NotNull(After("fuse", "K19", "load"));
        Assert.Contains(changes, c => c.GetProperty("what").GetString() == "cut length" && Mm(c, "after") == Mm(c, "before") + 200);
    }

    private static int Mm(JsonElement change, string side) => int.Parse(change.GetProperty(side).GetString()!.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void The_same_value_again_changes_nothing()
    {
        var run = CliRun.Of("try", Saloon, "--set", "fuse.K19.rating=15 A");
        Assert.Equal(0, run.Code);
        Assert.Contains("The plan stays as it is.", run.Output, StringComparison.Ordinal);
        Assert.Contains("No finding comes or goes.", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("circuit.diped left.size=1 mm2", 2, "did you mean 'dipped left'?")]
    [InlineData("circuit.dipped left.sise=1 mm2", 1, "did you mean 'size'?")]
    [InlineData("circut.dipped left.size=1 mm2", 2, "did you mean 'circuits'?")]
    [InlineData("circuit.dipped left.size", 2, "expected KEY=VALUE")]
    [InlineData("circuit.dipped left.size=thick", 1, "thick")]
    [InlineData("path.starter to batery.measured=1 m", 2, "did you mean 'starter to battery'?")]
    [InlineData("circuit.dipped left=1 mm2", 1, "dipped left")]
    public void A_wrong_change_is_told_with_the_nearest_name(string change, int code, string said)
    {
        var run = CliRun.Of("try", Saloon, "--set", change);
        Assert.Equal(code, run.Code);
        Assert.Contains(said, run.Messages, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    /// <summary>The harness is as it is: no id and no cavity of a wire that is there is offered to the new load.</summary>
    [Fact]
    public void A_new_load_takes_ids_and_cavities_that_are_free()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder);
        var taken = System.Text.RegularExpressions.Regex.Matches(CliRun.Of("cut", file).Output, @"(?m)^\d+,([A-Z]\d+),").Select(m => m.Groups[1].Value).ToHashSet(StringComparer.Ordinal);
        var offered = System.Text.RegularExpressions.Regex.Matches(CliRun.Of("fit", file, "--load", "3 A", "--at", "horn").Output, @"(?m)^\s+([A-Z]\d+): ").Select(m => m.Groups[1].Value).ToList();
        Assert.NotEmpty(taken);
        Assert.NotEmpty(offered);
        Assert.DoesNotContain(offered, taken.Contains);
    }

    [Fact]
    public void A_new_load_finds_a_fuse_with_room_and_a_spare_cavity()
    {
        var run = CliRun.Of("fit", Saloon, "--load", "3 A", "--at", "left lamp", "--format", "json");
        Assert.Equal(0, run.Code);
        var best = JsonDocument.Parse(run.Output).RootElement.GetProperty("ways").EnumerateArray().First();
        Assert.True(best.GetProperty("loadA").GetDouble() <= 0.8 * best.GetProperty("ratingA").GetDouble());
        Assert.Empty(best.GetProperty("newFindings").EnumerateArray());
        Assert.Equal(2, best.GetProperty("wires").GetArrayLength());
        Assert.StartsWith("firewall.", best.GetProperty("wires")[0].GetProperty("from").GetString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3 A", "left lmp", "did you mean 'left lamp'?")]
    [InlineData("much", "left lamp", "is no load")]
    [InlineData("-3 A", "left lamp", "is no load")]
    public void A_wrong_question_is_told(string load, string place, string said)
    {
        var run = CliRun.Of("fit", Saloon, "--load", load, "--at", place);
        Assert.Equal(2, run.Code);
        Assert.Contains(said, run.Messages, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("circuits:\n  a: { size: 1 mm2, feeds: [x] }\n", "circuit.a.size=2 mm2", "circuits:\n  a: { size: '2 mm2', feeds: [x] }\n")]
    [InlineData("circuits:\n  a: { feeds: [x] }\n", "circuit.a.size=2 mm2", "circuits:\n  a: { size: '2 mm2', feeds: [x] }\n")]
    [InlineData("circuits:\n  a:\n    feeds: [x]\n", "circuit.a.size=2 mm2", "circuits:\n  a:\n    size: '2 mm2'\n    feeds: [x]\n")]
    [InlineData("circuits:\n  a.b: { size: 1 mm2 }\n", "circuit.a.b.size=it's", "circuits:\n  a.b: { size: 'it''s' }\n")]
    [InlineData("things:\n  m: { motor: { 1: 3 A, 2: 3 A }, at: x }\n", "thing.m.motor={ 1: 4 A }", "things:\n  m: { motor: { 1: 4 A }, at: x }\n")]
    public void Only_the_value_is_edited(string before, string change, string after) => Assert.Equal(after, DescriptionEdit.Set(before, change).Text);
}
