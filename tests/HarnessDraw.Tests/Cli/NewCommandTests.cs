using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Reading;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Starter;

namespace HarnessDraw.Tests.Cli;

public class NewCommandTests
{
    public static TheoryData<string, string, string> Vehicles()
    {
        var data = new TheoryData<string, string, string>();
        foreach (var voltage in StarterAnswers.Voltages)
        {
            foreach (var ground in StarterAnswers.Grounds)
            {
                foreach (var charging in StarterAnswers.Chargings)
                {
                    data.Add(voltage, ground, charging);
                }
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Vehicles))]
    public void Every_combination_reads_plans_and_draws_and_warns_of_nothing(string voltage, string ground, string charging)
    {
        foreach (var answers in Rest(new StarterAnswers("Test van") { Voltage = voltage, Ground = ground, Charging = charging }))
        {
            var files = Files(answers);
            var outcome = HarnessCompiler.Plan("van.yaml", files, RuleSettings.BuiltIn);
            Assert.Empty(outcome.Diagnostics.Select(d => $"{answers}: {d.At} {d.Message} {d.Hint}"));
            Assert.Empty(outcome.Value!.Findings.Where(f => f.Severity != Severity.Advice).Select(f => $"{answers}: {f.Rule}: {f.Message}"));
            var set = HarnessCompiler.LayOut(outcome.Value!, new DrawOrder());
            Assert.Empty(set.Findings.Where(f => f.Severity == Severity.Error).Select(f => $"{answers}: {f.Rule}: {f.Message}"));
            Assert.Empty(set.Refused.Select(r => $"{answers}: {r}"));
            Assert.True(set.Sheets.Length >= 3);
        }
    }

    [Fact]
    public void Options_write_two_files_that_draw()
    {
        using var folder = new TemporaryFolder();
        var made = CliRun.Of("new", "my-van", "--out", folder.Path, "--voltage", "12", "--heating", "blower", "--cooling-fan", "electric");
        Assert.Equal(0, made.Code);
        Assert.Equal(["my-van-layout.yaml", "my-van.yaml"], folder.Files());
        var drawn = CliRun.Of("draw", folder.File("my-van.yaml"), "--format", "svg");
        Assert.Equal(0, drawn.Code);
        Assert.Contains("my-van/my-van.wall-chart.svg", folder.Files());
    }

    [Fact]
    public void A_person_is_asked_and_asked_again_after_a_wrong_answer()
    {
        using var folder = new TemporaryFolder();
        var run = CliRun.With("13\n24\npositive\nnone\n\n\nfour\n", "new", "van", "--out", folder.Path);
        Assert.Equal(0, run.Code);
        Assert.Contains("'13' is none of them", run.Messages, StringComparison.Ordinal);
        var text = File.ReadAllText(folder.File("van.yaml"));
        Assert.Contains("nominal: 24 V", text, StringComparison.Ordinal);
        Assert.Contains("ground: positive", text, StringComparison.Ordinal);
        Assert.Contains("main lamp left", text, StringComparison.Ordinal);
        Assert.DoesNotContain("alternator", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_firewall_connector_all_is_built()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, CliRun.Of("new", "tractor", "--out", folder.Path, "--firewall", "none").Code);
        var plan = HarnessCompiler.Plan(folder.File("tractor.yaml"), new DiskFiles(), RuleSettings.BuiltIn).Value!.Plan;
        Assert.DoesNotContain(plan.Harness.Things, t => t.Kind == ThingKind.Mate || t.Side == Side.Cabin);
        Assert.DoesNotContain("firewall", File.ReadAllText(folder.File("tractor.yaml")) + File.ReadAllText(folder.File("tractor-layout.yaml")), StringComparison.OrdinalIgnoreCase);
        // switches and fuse panels are wired from the battery on
        Assert.All(["ignition switch.30", "light switch.30", "dipped fuses.1", "turn switch.49a"], p => Assert.Contains(plan.Wires, w => w.To.ToString() == p));
    }

    [Theory]
    [InlineData("van.yaml")]
    [InlineData("van-layout.yaml")]
    public void Nothing_is_overwritten(string there)
    {
        using var folder = new TemporaryFolder();
        folder.File(there, "mine");
        var run = CliRun.Of("new", "van", "--out", folder.Path);
        Assert.Equal(3, run.Code);
        Assert.Equal([there], folder.Files());
        Assert.Equal("mine", File.ReadAllText(folder.File(there)));
    }

    [Theory]
    [InlineData("../van")]
    [InlineData("a/b")]
    [InlineData("")]
    [InlineData(".hidden")]
    [InlineData("a\nb")]
    public void A_name_that_is_no_file_name_is_wrong_usage(string name)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(2, CliRun.Of("new", name, "--out", folder.File("out")).Code);
        Assert.Empty(folder.Files());
    }

    [Theory]
    [InlineData("it's: #1 {van}")]
    [InlineData("NO")]
    [InlineData("012")]
    public void A_name_that_looks_like_something_else_stays_text(string name) =>
        Assert.Equal(name, HarnessReader.Read("van.yaml", Files(new(name))).Value!.Vehicle);

    private static MemoryFiles Files(StarterAnswers answers) => new(new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["van.yaml"] = StarterDescription.Write(answers, "van-layout.yaml"),
        ["van-layout.yaml"] = StarterLayout.Write(answers),
    });

    private static IEnumerable<StarterAnswers> Rest(StarterAnswers answers) =>
        from heating in StarterAnswers.Heatings
        from fan in StarterAnswers.CoolingFans
        from lamps in StarterAnswers.LampSets
        from firewall in StarterAnswers.Firewalls
        select answers with { Heating = heating, CoolingFan = fan, Lamps = lamps, Firewall = firewall };
}
