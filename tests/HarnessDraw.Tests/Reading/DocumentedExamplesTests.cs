using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Tests.Conventions;

namespace HarnessDraw.Tests.Reading;

/// <summary>
/// Every YAML block of the format pages is read: 'whole' blocks as files, 'piece' blocks added to the whole description of the page, 'circuits'
/// blocks in place of its circuits.
/// </summary>
public class DocumentedExamplesTests
{
    private const string Fence = "```";

    [Fact]
    public void The_blocks_of_the_format_pages_are_read_without_a_message()
    {
        var description = Blocks("examples");
        var layout = Blocks("layouts").Single().Text;
        var whole = description.Single(b => b.Kind == "yaml whole").Text;
        AssertRead(whole, layout);
        foreach (var (kind, text) in description.Where(b => b.Kind != "yaml whole"))
        {
            AssertRead(kind == "yaml piece" ? whole + text : whole[..whole.IndexOf("circuits:", StringComparison.Ordinal)] + text, layout);
        }

        Assert.Equal(7, description.Length);
    }

    /// <summary>Whoever begins with the pages' own description and layout has nothing to mend first.</summary>
    [Fact]
    public void The_whole_description_of_the_pages_can_be_built()
    {
        var findings = Check(Blocks("examples").Single(b => b.Kind == "yaml whole").Text);
        Assert.Empty(findings.Where(f => f.Severity == Severity.Error).Select(f => f.Message));
    }

    [Fact]
    public void A_fuse_that_nothing_feeds_is_told_as_such()
    {
        var whole = Blocks("examples").Single(b => b.Kind == "yaml whole").Text;
        var found = Assert.Single(Check(whole.Replace("rating: 10 A, on: lamp panel", "rating: 10 A, at: dash, side: cabin", StringComparison.Ordinal)), f => f.Rule == "on-but-dead");
        Assert.Contains("nothing feeds fuse F7", found.Message, StringComparison.Ordinal);
        Assert.StartsWith("Put F7 on what feeds it", found.Cure, StringComparison.Ordinal);
    }

    [Fact]
    public void All_colours_and_all_blocks_are_marked()
    {
        var page = File.ReadAllText(Repository.PathOf("examples", "README.md"));
        Assert.All(ColourLetters.All, c => Assert.Contains($"{c} ", page, StringComparison.Ordinal));
        Assert.All(Blocks("examples").Concat(Blocks("layouts")), b => Assert.Contains(b.Kind, new[] { "yaml whole", "yaml piece", "yaml circuits" }));
    }

    private static ImmutableArray<Finding> Check(string description)
    {
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["a.yaml"] = description, ["van.yaml"] = Blocks("layouts").Single().Text });
        return HarnessCompiler.Plan("a.yaml", files, RuleSettings.BuiltIn).Value!.Findings;
    }

    private static void AssertRead(string description, string layout)
    {
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["a.yaml"] = description, ["van.yaml"] = layout });
        var outcome = HarnessReader.Read("a.yaml", files);
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.File}:{d.At?.Line}:{d.At?.Column} {d.Code} {d.Message}"));
    }

    private static (string Kind, string Text)[] Blocks(string folder)
    {
        var parts = File.ReadAllText(Repository.PathOf(folder, "README.md")).Split(Fence);
        return [.. parts.Where((_, i) => i % 2 == 1).Select(p => (p[..p.IndexOf('\n')].Trim(), p[(p.IndexOf('\n') + 1)..]))];
    }
}
