using System.Text.RegularExpressions;

namespace HarnessDraw.Tests.Cli;

/// <summary>A cure that is told is one: it is applied through 'try', and the finding is gone with no other in its place.</summary>
public sealed partial class CureTests
{
    [Theory]
    // a fuse that is too large for what lies behind it
    [InlineData("fuse-above-wire", "  fan feed: {", "  fan feed: { size: 2.5 mm2,", "  F4: { kind: bolt-in,", "  F4: { kind: bolt-in, rating: 60 A,")]
    [InlineData("fuse-load-high", "  K6: { kind: blade,", "  K6: { kind: blade, rating: 4 A,")]
    [InlineData("fuse-overloaded", "  K11: { kind: blade,", "  K11: { kind: blade, rating: 2 A,")]
    [InlineData("alternator-fuse-small", "  F3: { kind: bolt-in,", "  F3: { kind: bolt-in, rating: 40 A,")]
    [InlineData("no-such-fuse-rating", "  K8: { kind: blade,", "  K8: { kind: blade, rating: 9 A,")]
    [InlineData("wire-overloaded", "  blower feed: {", "  blower feed: { size: 0.5 mm2,", "motor: { '1': 70 W }", "motor: { '1': 150 W }")]
    [InlineData("loop-drop", "  dipped beam left: {", "  dipped beam left: { size: 0.5 mm2,")]
    // what kept wiring loses no copper of ours brings back: a relay does
    [InlineData("loop-drop", "  dipped beam left: {", "  dipped beam left: { cavity: B5,", "circuits:  ", "kept:\n  pins: { B5: { comes-from: K11, adds: 150 mohm } }\n\ncircuits:  ")]
    [InlineData("wire-too-thin", "  turn left: {", "  turn left: { size: 0.35 mm2,")]
    [InlineData("strap-small", "feeds: [starter.B],", "feeds: [starter.B], size: 50 mm2,", "engine strap: { from: body ground, to: engine ground, colour: BK, size: 50 mm2", "engine strap: { from: body ground, to: engine ground, colour: BK, size: 16 mm2")]
    [InlineData("starter-loop-drop", "feeds: [starter.B],", "feeds: [starter.B], size: 6 mm2,")]
    [InlineData("fuse-above-contact", "  charge lead: {", "  charge lead: { size: 4 mm2,", "output: 45 A", "output: 60 A")]
    [InlineData("relay-contact-overloaded", "contact: 40 A", "contact: 5 A")]
    [InlineData("contact-overloaded", "blower feed: { from: K9, enters-by: firewall, half: engine,", "blower feed: { from: K9, enters-by: firewall, cavity: A12,", "motor: { '1': 70 W }", "motor: { '1': 110 W }")]
    // a size more or a hotter wire
    [InlineData("wire-overloaded", "  blower feed: {", "  blower feed: { size: 0.75 mm2,", "motor: { '1': 70 W }", "motor: { '1': 140 W }")]
    [InlineData("charge-lead-drop", "  charge lead: {", "  charge lead: { size: 10 mm2,")]
    [InlineData("exciter-current-low", "lamp: { 15: 2 W }", "lamp: { 15: 0.9 W }")]
    public void A_cure_cures_when_it_is_tried(string rule, string from, string to, string? alsoFrom = null, string? alsoTo = null)
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text =>
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            return (alsoFrom is null ? text : text.Replace(alsoFrom, alsoTo, StringComparison.Ordinal)).Replace(from, to, StringComparison.Ordinal);
        });
        Cured(file, rule);
    }

    public static TheoryData<int, string> Seeds => [.. CureSeeds.All.Select((s, i) => (i, s.Rule))];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_sown_fault_goes_with_its_cure(int seed, string rule)
    {
        using var folder = new TemporaryFolder();
        var sown = CureSeeds.All[seed];
        var file = StarterFiles.WriteTo(folder, change: sown.Description.Length == 0 ? null : text => Replaced(text, sown.Description));
        var layout = Path.Combine(Path.GetDirectoryName(file)!, "van-layout.yaml");
        File.WriteAllText(layout, Replaced(File.ReadAllText(layout), sown.Layout));
        Cured(file, rule);
    }

    private static string Replaced(string text, (string From, string To)[] changes) => changes.Aggregate(text, (t, c) =>
    {
        Assert.Contains(c.From, t, StringComparison.Ordinal);
        return t.Replace(c.From, c.To, StringComparison.Ordinal);
    });

    private static void Cured(string file, string rule)
    {
        var told = CliRun.Of("check", file, "--advice").Output;
        var cures = Cures(told, rule);
        Assert.True(cures.Count > 0, told);
        foreach (var cure in cures)
        {
            var tried = CliRun.Of(["try", file, .. cure.SelectMany(c => new[] { "--set", c })]).Output;
            // what is said anew may be advice at the most
            Assert.DoesNotMatch(@"New findings:[^#]*?\n  (error|warning) [^#]*Findings that are gone", tried);
            Assert.Matches($@"Findings that are gone:[^#]*\b{rule}:", tried);
        }
    }

    [Fact]
    public void A_hotter_class_of_wire_is_among_the_cures()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text => text.Replace("  blower feed: {", "  blower feed: { size: 0.75 mm2,", StringComparison.Ordinal).Replace("motor: { '1': 70 W }", "motor: { '1': 140 W }", StringComparison.Ordinal));
        Assert.Contains(Cures(CliRun.Of("check", file).Output, "wire-overloaded"), c => c is ["circuit.blower feed.wire-type=cross-linked-125"]);
    }

    /// <summary>A wire too thin for its load and for its fuse is told one size that does for both.</summary>
    [Fact]
    public void Two_rules_about_one_wire_tell_one_size()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text => text.Replace("  blower feed: {", "  blower feed: { size: 0.5 mm2,", StringComparison.Ordinal).Replace("motor: { '1': 70 W }", "motor: { '1': 150 W }", StringComparison.Ordinal));
        var told = CliRun.Of("check", file).Output;
        string[] sizes = [.. new[] { "wire-overloaded", "fuse-above-wire" }.Select(rule => Cures(told, rule).SelectMany(c => c).Single(c => c.StartsWith("circuit.blower feed.size=", StringComparison.Ordinal)))];
        Assert.Single(sizes.Distinct());
    }

    /// <summary>Nobody lays a starter cable to a lamp: beyond three standard sizes more the load is split, the run shortened or a relay put near the load. Common practice, no source.</summary>
    [Fact]
    public void No_cure_asks_for_a_wire_more_than_three_sizes_up()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text => text.Replace("  dipped beam left: {", "  dipped beam left: { cavity: B5, size: 1 mm2,", StringComparison.Ordinal)
            .Replace("circuits:  ", "kept:\n  pins: { B5: { comes-from: K11, adds: 400 mohm } }\n\ncircuits:  ", StringComparison.Ordinal));
        var told = CliRun.Of("check", file).Output;
        Assert.Contains("loop-drop: ", told, StringComparison.Ordinal);
        // thin-wall sizes from 1 mm2 on: 1.5, 2, 2.5
        Assert.All(Regex.Matches(told, @"'dipped beam left' of ([\d.]+) mm2"), m => Assert.InRange(double.Parse(m.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), 1.5, 2.5));
    }

    /// <summary>Where no more plans are made for cures, the rule's own words stay.</summary>
    [Fact]
    public void Every_finding_keeps_a_cure_that_says_what_to_do()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text => text.Replace("suppression: resistor", "suppression: none", StringComparison.Ordinal).Replace("dipped beam left: {", "dipped beam left: { size: 0.5 mm2,", StringComparison.Ordinal)
            .Replace("main beam left: {", "main beam left: { size: 0.35 mm2,", StringComparison.Ordinal).Replace("blower feed: {", "blower feed: { size: 0.5 mm2,", StringComparison.Ordinal));
        Assert.All(Regex.Matches(CliRun.Of("check", file).Output, @"\n  cure: ([^\n]*)"), m => Assert.False(m.Groups[1].Value.StartsWith('('), m.Value));
    }

    [Fact]
    public void No_cure_thins_a_cable_to_suit_a_terminal()
    {
        using var folder = new TemporaryFolder();
        var file = StarterFiles.WriteTo(folder, change: text => text.Replace("stud: { B: M8 }, blades: { S: 6.3 mm }", "blades: { B: 6.3 mm, S: 6.3 mm }", StringComparison.Ordinal).Replace("  starter cable: {", "  starter cable: { size: 50 mm2,", StringComparison.Ordinal));
        var cure = Regex.Match(CliRun.Of("check", file).Output, @"error no-terminal-fits: starter B: [^\n]*\n  cure: (?<cure>[^\n]*)").Groups["cure"].Value;
        Assert.Contains("a stud M8", cure, StringComparison.Ordinal);
        Assert.DoesNotContain("--set", cure, StringComparison.Ordinal);
    }

    /// <summary>The changes of each cure that the first finding of the rule is told with.</summary>
    private static List<List<string>> Cures(string told, string rule)
    {
        var line = Regex.Match(told, $@"(error|warning|advice) {rule}: [^\n]*\n  cure: (?<cure>[^\n]*)").Groups["cure"].Value;
        return [.. Regex.Split(line, @"\. Or ").Select(c => Change().Matches(c).Select(m => m.Groups[1].Value + m.Groups[2].Value).ToList()).Where(c => c.Count > 0)];
    }

    [GeneratedRegex("--set (?:'([^']+)'|\"([^\"]+)\")")]
    private static partial Regex Change();
}
