using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Checking;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;
using HarnessDraw.Writing.Findings;

namespace HarnessDraw.Tests.Writing;

public class FindingsWriterTests
{
    private static readonly ImmutableArray<Finding> Findings =
    [
        new()
        {
            Rule = "fuse-above-wire", Severity = Severity.Error, Message = "Fuse F7 (30 A) feeds 0.5 wire.", Cure = "Largest safe fuse: 10 A.", Source = "common practice, no source", Where = ["F7", "E01"],
            At = new("a b/small.yaml", 12, 5, 3), Builds = new([new("charging", ["exciter"])]),
        },
        new() { Rule = "own-of-planning", Severity = Severity.Advice, Message = "Name with \u001b[31m and\nline", WaivedBy = new("own-of-planning", [], "kept", "owner", "2026-09-11", null) },
    ];

    [Fact]
    public void Text_names_place_severity_rule_builds_cure_source_and_waiver()
    {
        var text = FindingsWriter.Text(Findings, [new("fuse-above-wire", "fuse F1 over wire P04", 40, 50, "A", 0.2)], RuleSettings.BuiltIn);
        Assert.StartsWith("a b/small.yaml:12:5: error fuse-above-wire: only with charging=exciter: Fuse F7 (30 A) feeds 0.5 wire.\n  cure: Largest safe fuse: 10 A.\n  source: common practice, no source\n", text);
        Assert.Contains("  waived: kept (owner, 2026-09-11)\n", text, StringComparison.Ordinal);
        Assert.Contains("Closest to the limit:\n  fuse-above-wire: fuse F1 over wire P04: 40 A of 50 A, 20 % to spare\n", text, StringComparison.Ordinal);
        Assert.EndsWith("1 error, 0 warnings, 0 pieces of advice, 1 waived.\n", text);
        Assert.DoesNotContain('\u001b', text);
    }

    [Fact]
    public void Json_carries_the_keys_of_the_contract()
    {
        using var json = JsonDocument.Parse(FindingsWriter.Json(Findings, [], RuleSettings.BuiltIn));
        var first = json.RootElement.GetProperty("findings")[0];
        Assert.Equal(["rule", "severity", "message", "cure", "source", "where", "builds", "at", "waivedBy"], first.EnumerateObject().Select(p => p.Name));
        Assert.Equal("error", first.GetProperty("severity").GetString());
        Assert.Equal(12, first.GetProperty("at").GetProperty("line").GetInt32());
        Assert.Equal("owner", json.RootElement.GetProperty("findings")[1].GetProperty("waivedBy").GetProperty("by").GetString());
    }

    /// <summary>
    /// OASIS SARIF 2.1.0: 3.13 version and runs required; 3.14.6 tool; 3.18.2 driver; 3.19.8 name; 3.49.3 rule id; 3.27.11 result message; 3.27.10 level one of none,
    /// note, warning, error; 3.27.6 ruleIndex points at the rule; 3.30 lines and columns from 1; 3.35.2 suppression kind inSource or external.
    /// </summary>
    [Fact]
    public void Sarif_has_the_required_properties_of_the_standard()
    {
        using var json = JsonDocument.Parse(FindingsWriter.Sarif(Findings, "0.1.0"));
        var root = json.RootElement;
        Assert.Equal("2.1.0", root.GetProperty("version").GetString());
        Assert.Contains("sarif-schema-2.1.0.json", root.GetProperty("$schema").GetString(), StringComparison.Ordinal);
        var run = Assert.Single(root.GetProperty("runs").EnumerateArray());
        var driver = run.GetProperty("tool").GetProperty("driver");
        Assert.Equal("HarnessDraw", driver.GetProperty("name").GetString());
        var rules = driver.GetProperty("rules").EnumerateArray().ToList();
        Assert.Equal(rules.Count, rules.Select(r => r.GetProperty("id").GetString()).Distinct().Count());
        Assert.All(rules.Where(r => r.TryGetProperty("defaultConfiguration", out _)), r => Assert.Contains(r.GetProperty("defaultConfiguration").GetProperty("level").GetString(), Levels));
        foreach (var result in run.GetProperty("results").EnumerateArray())
        {
            Assert.NotEmpty(result.GetProperty("message").GetProperty("text").GetString()!);
            Assert.Contains(result.GetProperty("level").GetString(), Levels);
            Assert.Equal(result.GetProperty("ruleId").GetString(), rules[result.GetProperty("ruleIndex").GetInt32()].GetProperty("id").GetString());
        }

        var at = run.GetProperty("results")[0].GetProperty("locations")[0].GetProperty("physicalLocation");
        Assert.Equal("a%20b/small.yaml", at.GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Equal((12, 5, 8), (at.GetProperty("region").GetProperty("startLine").GetInt32(), at.GetProperty("region").GetProperty("startColumn").GetInt32(), at.GetProperty("region").GetProperty("endColumn").GetInt32()));
        var suppression = Assert.Single(run.GetProperty("results")[1].GetProperty("suppressions").EnumerateArray());
        Assert.Equal("external", suppression.GetProperty("kind").GetString());
        Assert.Equal("kept (owner, 2026-09-11)", suppression.GetProperty("justification").GetString());
        Assert.False(run.GetProperty("results")[0].TryGetProperty("suppressions", out _));
    }

    private static readonly string?[] Levels = ["none", "note", "warning", "error"];
}
