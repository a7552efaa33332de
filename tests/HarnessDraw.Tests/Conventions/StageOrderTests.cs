using System.Text.RegularExpressions;

namespace HarnessDraw.Tests.Conventions;

public partial class StageOrderTests
{
    /// <summary>What the code of each folder may use of the others. A stage uses records of earlier stages and nothing of later ones.</summary>
    private static readonly Dictionary<string, string[]> MayUse = new(StringComparer.Ordinal)
    {
        ["Diagnostics"] = [],
        ["Units"] = ["Diagnostics"],
        ["Model"] = ["Diagnostics", "Units"],
        ["Drawing"] = ["Diagnostics", "Units"],
        ["Reading"] = ["Diagnostics", "Units", "Model"],
        ["Planning"] = ["Diagnostics", "Units", "Model", "Electrical"],
        ["Electrical"] = ["Diagnostics", "Units", "Model", "Planning"],
        ["Checking"] = ["Diagnostics", "Units", "Model", "Planning", "Electrical", "Drawing"],
        ["Tracing"] = ["Diagnostics", "Units", "Model", "Planning", "Electrical", "Drawing"],
        ["Troubleshooting"] = ["Diagnostics", "Units", "Model", "Planning", "Electrical"],
        ["Layout"] = ["Diagnostics", "Units", "Model", "Planning", "Drawing"],
        ["Fabrication"] = ["Diagnostics", "Units", "Model", "Planning"],
        ["Comparing"] = ["Diagnostics", "Units", "Model", "Planning", "Fabrication"],
        ["Sheets"] = ["Diagnostics", "Units", "Model", "Planning", "Electrical", "Fabrication", "Tracing", "Troubleshooting", "Layout", "Drawing"],
        ["Writing"] = ["Diagnostics", "Units", "Model", "Planning", "Electrical", "Checking", "Fabrication", "Comparing", "Sheets", "Tracing", "Troubleshooting", "Drawing"],
    };

    [Fact]
    public void Stages_use_only_what_comes_before_them()
    {
        var wrong = new List<string>();
        foreach (var file in Repository.Sources("src", "HarnessDraw"))
        {
            var parts = Repository.Relative(file).Split('/');
            if (parts.Length < 4)
            {
                continue; // the file at the root tells the whole run and uses every stage
            }

            var stage = parts[2];
            Assert.True(MayUse.ContainsKey(stage), $"{stage} is not a stage of the design");
            wrong.AddRange(UsedStages(File.ReadAllText(file)).Where(used => used != stage && !MayUse[stage].Contains(used)).Select(used => $"{Repository.Relative(file)} uses {used}"));
        }

        Assert.Empty(wrong);
    }

    [Fact]
    public void Yaml_is_known_to_the_reading_stage_only() => AssertUsedOnlyIn("YamlDotNet", "src/HarnessDraw/Reading/");

    [Fact]
    public void The_painter_is_known_to_the_writers_only() => AssertUsedOnlyIn("SkiaSharp", "src/HarnessDraw/Writing/");

    [Fact]
    public void Only_the_command_line_prints()
    {
        var printing = Repository.Sources("src", "HarnessDraw").Where(f => File.ReadAllText(f).Contains("Console.", StringComparison.Ordinal));
        Assert.Empty(printing.Select(Repository.Relative));
    }

    [Fact]
    public void The_check_sees_a_use_of_a_later_stage()
    {
        Assert.Equal(["Sheets", "Writing"], UsedStages("using HarnessDraw.Sheets;\nvar x = HarnessDraw.Writing.Svg.SvgWriter.Write(s);\n"));
    }

    private static void AssertUsedOnlyIn(string package, string folder)
    {
        var elsewhere = Repository.Sources("src")
            .Where(f => !Repository.Relative(f).StartsWith(folder, StringComparison.Ordinal))
            .Where(f => Regex.IsMatch(File.ReadAllText(f), $@"\busing (static )?{package}\b|\b{package}\.\w"));
        Assert.Empty(elsewhere.Select(Repository.Relative));
    }

    private static IEnumerable<string> UsedStages(string source) =>
        StageName().Matches(source).Select(m => m.Groups[1].Value).Where(MayUse.ContainsKey).Distinct().Order(StringComparer.Ordinal);

    [GeneratedRegex(@"(?<!namespace )\bHarnessDraw\.([A-Z]\w+)")]
    private static partial Regex StageName();
}
