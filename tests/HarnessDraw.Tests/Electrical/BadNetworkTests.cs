using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using HarnessDraw.Checking;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Model;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Findings;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Tests.Electrical;

/// <summary>Harnesses whose network says nothing, or nothing good: each gives a named finding, never an exception and never a figure that is no number.</summary>
public sealed class BadNetworkTests
{
    private static readonly Harness Small = SmallHarness.Harness;

    public static TheoryData<string, string> Cases => new()
    {
        { "no ground point", "no-ground-point" }, { "no ground at the battery", "battery-not-bonded" }, { "no source", "no-source" }, { "two batteries side by side", "sources-joined-unfused" },
        { "no states", "never-on" }, { "a circuit on in no state", "never-on" }, { "a wire without length", "no-length-left" }, { "a wire between nothing and nothing", "floating-net" },
        { "paths of no length", "" }, { "everything off", "never-on" }, { "a load of no current", "" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_bad_network_gives_a_finding_and_no_figure_that_is_no_number(string what, string rule)
    {
        var plan = Planned(what);
        var findings = HarnessChecker.Check(plan, RuleSettings.BuiltIn);
        var faults = FaultFinder.Find(plan);
        if (rule.Length > 0)
        {
            Assert.Contains(findings.Concat(plan.PlanningFindings), f => f.Rule == rule);
        }

        Assert.All(plan.Nodes.SelectMany(n => n.Volts.Values), v => Assert.True(v is null || double.IsFinite(v.Value)));
        Assert.All(NetworkSolver.Solve(plan).SelectMany(p => p.Wires), w => Assert.True(double.IsFinite(w.CurrentA) && double.IsFinite(w.DropV) && double.IsFinite(w.TemperatureC)));
        Assert.All(faults.Shorts, s => Assert.True(double.IsFinite(s.CurrentA) && double.IsFinite(s.HottestC)));
        var text = string.Join('\n', findings.Select(f => $"{f.Message} {f.Cure}")) + Encoding.UTF8.GetString(PlanJsonWriter.Write(plan, findings, null));
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", text, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", text, StringComparison.Ordinal);
    }

    /// <summary>Every sheet, list and page of a bad network is written, and none holds a figure that is no number.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void No_output_of_a_bad_network_holds_what_is_no_number(string what, string rule)
    {
        var plan = Planned(what);
        var planned = new CheckedPlan(plan, HarnessChecker.Check(plan, RuleSettings.BuiltIn));
        var order = new DrawOrder { Sheets = SheetKinds.All, Formats = [SheetFormat.Svg, SheetFormat.Html] };
        var files = HarnessCompiler.Write(HarnessCompiler.LayOut(planned, order), order).Select(f => (f.Name, Text: Encoding.UTF8.GetString(f.Make()))).ToList();
        Assert.True(files.Count > 3, $"{what} {rule}: {files.Count} files");
        files.Add(("faults", FaultText.Of(FaultFinder.Find(plan))));
        files.Add(("findings", FindingsWriter.Text(planned.Findings, HarnessChecker.Margins(plan, RuleSettings.BuiltIn), RuleSettings.BuiltIn)));
        // the page's script may use the word; the figures it is given are JSON, whose writer refuses what is no number
        Assert.All(files.Select(f => (f.Name, Text: Regex.Replace(f.Text, "<script.*?</script>", "", RegexOptions.Singleline))), f => Assert.DoesNotMatch(@"\bNaN\b|Infinity|∞|\b-0(\.0+)? (V|A|mm)\b", f.Text));
    }

    private static Plan Planned(string what) => what switch
    {
        "no ground point" => Plan(Small with { Things = [.. Small.Things.Where(t => t.Kind != ThingKind.GroundPoint)], Nets = [.. Small.Nets.Where(n => Members(n).All(m => Small.Things.First(t => t.Id == m.Thing).Kind != ThingKind.GroundPoint))] }),
        "no ground at the battery" => Plan(Small with { Nets = [.. Small.Nets.Where(n => Members(n).All(m => m.ToString() != "main battery.minus"))] }),
        "no source" => Plan(Small with { Power = Small.Power with { Sources = [] }, Things = [.. Small.Things.Select(t => t with { Elements = [.. t.Elements.Where(e => e.Kind != ElementKind.Source)] })] }),
        "two batteries side by side" => Plan(TwoBatteries()),
        "no states" => Plan(Small with { States = [] }),
        "a circuit on in no state" => Plan(Small with { Circuits = [.. Small.Circuits.Select(c => c.Id == "horn" ? c with { LiveWith = KeyPosition.Start } : c)], States = [.. Small.States.Where(s => s.Key != KeyPosition.Start)] }),
        "a wire without length" => Edited(w => w.Circuit == "horn" ? w with { CutLengthMm = 0, PathLengthMm = 0 } : w),
        "a wire between nothing and nothing" => Lost(),
        "paths of no length" => Plan(Small with { Layout = Small.Layout with { Paths = [.. Small.Layout.Paths.Select(p => p with { LengthMm = 0 })] } }),
        "everything off" => Plan(Small with { States = [.. Small.States.Select(s => s with { Key = KeyPosition.Off, Engine = EngineState.Stopped, On = [] })] }),
        _ => Plan(Small with { Things = [.. Small.Things.Select(t => t with { Elements = [.. t.Elements.Select(e => e.Kind == ElementKind.Lamp ? e with { CurrentA = 0, PowerW = null } : e)] })] }),
    };

    private static Plan Plan(Harness harness) => HarnessPlanner.Plan(harness, PlanningOptions.Usual);

    private static Plan Edited(Func<Wire, Wire> change) => SmallHarness.Plan with { Wires = [.. SmallHarness.Plan.Wires.Select(change)] };

    private static Plan Lost()
    {
        var like = SmallHarness.Plan.Wires.First(w => w.Circuit == "horn");
        return SmallHarness.Plan with { Wires = [.. SmallHarness.Plan.Wires, like with { Id = "F99", From = new("probe", "1"), To = new("second probe", "1") }] };
    }

    private static Harness TwoBatteries()
    {
        var battery = Small.ThingOf("main battery");
        var lead = Small.Nets.First(n => Members(n).Any(m => m.ToString() == "main battery.plus"));
        return Small with
        {
            Things = [.. Small.Things, battery with { Id = "second battery" }],
            Power = Small.Power with { Sources = [.. Small.Power.Sources, Small.Power.Sources.First(s => s.Id == "main battery") with { Id = "second battery" }] },
            Nets = [.. Small.Nets.Select(n => n == lead ? n with { Ends = [.. n.Ends, new("second battery", "plus")] } : n)],
        };
    }

    private static ImmutableArray<PinRef> Members(Net net) => net.Ends.Insert(0, net.Root);
}
