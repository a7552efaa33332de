using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;
using HarnessDraw.Writing.PlanFile;
using NJsonSchema;

namespace HarnessDraw.Tests.Writing;

public class PlanJsonWriterTests
{
    private static readonly ImmutableArray<Finding> Findings =
    [
        new() { Rule = "fuse-above-wire", Severity = Severity.Error, Message = "F7 15 A \"above\" <E01>", Where = ["F7"], Builds = new([new("charging", ["exciter"])]) },
    ];

    private static readonly ChartFigures Chart = new() { Crossings = 3, CrossingsStraightLaneBound = 3, BoundReason = "two roots", Paper = "A2" };

    [Fact]
    public async Task The_file_is_what_the_published_schema_says()
    {
        var schema = await JsonSchema.FromJsonAsync(PlanSchema.Text, TestContext.Current.CancellationToken);
        Assert.Empty(schema.Validate(Text(SmallPlan.Plan)));
        Assert.NotEmpty(schema.Validate(Text(SmallPlan.Plan).Replace("\"decidedBy\"", "\"decided\"", StringComparison.Ordinal)));
        Assert.NotEmpty(schema.Validate(Text(SmallPlan.Plan).Replace("\"schemaVersion\": 1", "\"schemaVersion\": 2", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Absent_knowledge_is_null_and_still_fits_the_schema()
    {
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with
        {
            PathLengthMm = null,
            CutLengthMm = null,
            Worst = null,
            AmpacityA = double.NaN,
            Margin = null,
            RunnerUp = null,
            From = new WireEnd("SP9", null) { IsSplice = true },
        });
        var json = Encoding.UTF8.GetString(PlanJsonWriter.Write(plan, [], null, "needs A1"));
        var schema = await JsonSchema.FromJsonAsync(PlanSchema.Text, TestContext.Current.CancellationToken);
        Assert.Empty(schema.Validate(json));
        var wire = JsonDocument.Parse(json).RootElement.GetProperty("wires").EnumerateArray().Single(w => w.GetProperty("id").GetString() == "F01");
        Assert.All(new[] { "pathLengthMm", "cutLengthMm", "worst", "ampacityA", "margin", "runnerUp", "awg" }, n => Assert.Equal(JsonValueKind.Null, wire.GetProperty(n).ValueKind));
        Assert.Equal(JsonValueKind.Null, wire.GetProperty("from").GetProperty("pin").ValueKind);
        Assert.Equal("needs A1", JsonDocument.Parse(json).RootElement.GetProperty("layout").GetProperty("refused").GetString());
    }

    [Fact]
    public void Names_of_the_contract_are_there_in_order()
    {
        var root = JsonDocument.Parse(Text(SmallPlan.Plan)).RootElement;
        Assert.Equal(["wires", "segments", "splices", "cavities", "fuses", "options", "findings", "nodes", "layout"], root.EnumerateObject().Select(p => p.Name).SkipWhile(n => n != "wires"));
        Assert.Equal(
            ["id", "circuit", "net", "cable", "from", "to", "colour", "areaMm2", "awg", "pathLengthMm", "cutLengthMm", "estimated", "segments", "builds", "worst", "ampacityA", "protectedBy", "decidedBy", "runnerUp", "margin"],
            root.GetProperty("wires")[0].EnumerateObject().Select(p => p.Name));
        Assert.Equal(SmallPlan.Plan.Wires.Length, root.GetProperty("wires").GetArrayLength());
        Assert.Equal(3, root.GetProperty("layout").GetProperty("crossings").GetInt32());
    }

    [Fact]
    public void Numbers_are_rounded_once_and_zero_has_no_sign()
    {
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { PathLengthMm = 0.1 + 0.2, Margin = -0.00001, Worst = new("night", 1.0 / 3, 0.123456789, 61.005) });
        var text = Text(plan);
        Assert.Contains("\"pathLengthMm\": 0.3,", text, StringComparison.Ordinal);
        Assert.Contains("\"currentA\": 0.3333,", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0,", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Hostile_names_stay_data()
    {
        const string Hostile = "</script>\"\\\u202e\ud800\n\u0000配";
        var plan = SmallPlan.With(SmallPlan.Plan, "F01", w => w with { Id = Hostile, Builds = new BuildCondition([new(Hostile, [Hostile])]) });
        var wire = JsonDocument.Parse(PlanJsonWriter.Write(plan, [])).RootElement.GetProperty("wires").EnumerateArray().Select(w => w.GetProperty("id").GetString());
        Assert.Contains(Hostile.Replace('\ud800', '\ufffd'), wire);
    }

    private static string Text(Plan plan) => Encoding.UTF8.GetString(PlanJsonWriter.Write(plan, Findings, Chart));
}
