using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.SetChecks;

namespace HarnessDraw.Tests.Sheets;

/// <summary>The last look before writing: whole sets pass it, and each of its sentences refuses a sheet that breaks it.</summary>
public class SetCheckTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_sets_of_the_examples_pass_in_every_unit(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var units in Enum.GetValues<UnitsShown>())
        {
            Assert.Empty(SetCheck.Check(plan, SheetKinds.All.SelectMany(k => SheetKinds.Compose(k, plan, [], new() { Units = units }).Sheets)));
        }
    }

    [Fact]
    public void A_sheet_that_leaves_a_wire_out_or_names_a_foreign_one_is_refused()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        foreach (var kind in new[] { SheetKinds.CutList, SheetKinds.Labels, SheetKinds.BenchTest, SheetKinds.FoundWires, SheetKinds.LayOrder })
        {
            var sheets = Sheets(kind, plan);
            var extra = plan with { Wires = plan.Wires.Add(plan.Wires[0] with { Id = "Z99" }) };
            Assert.Equal([(kind, "it does not show Z99")], SetCheck.Check(extra, sheets));
            var fewer = plan with { Wires = plan.Wires.RemoveAt(0) };
            Assert.Equal([(kind, $"it shows what is not in the plan, {plan.Wires[0].Id}")], SetCheck.Check(fewer, sheets));
            Assert.Contains(SetCheck.Check(plan, [.. sheets, .. sheets]), f => f.Because.StartsWith("it shows too often", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_wire_without_its_cavity_on_the_connector_sheets_is_named()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var sheets = Sheets(SheetKinds.Connectors, plan);
        var use = plan.Cavities.First(c => c.Wire is not null);
        var other = plan with { Cavities = plan.Cavities.Add(use with { Cavity = "Q9" }) };
        Assert.Contains($"names {use.Wire} ", Assert.Single(SetCheck.Check(other, sheets)).Because, StringComparison.Ordinal);
        Assert.Empty(SetCheck.Check(other, sheets, [SheetKinds.Connectors]));
    }

    [Fact]
    public void A_run_that_is_not_as_long_as_its_segment_is_named()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var longer = plan with { Tree = plan.Tree with { Segments = [.. plan.Tree.Segments.Select((s, i) => i == 0 ? s with { LengthMm = s.LengthMm + 1 } : s)] } };
        Assert.Contains("it draws the run", Assert.Single(SetCheck.Check(longer, Sheets(SheetKinds.BuildBoard, plan))).Because, StringComparison.Ordinal);
    }

    [Fact]
    public void A_trace_that_shows_another_circuit_is_named()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var sheets = Sheets(SheetKinds.Trace, plan);
        var foreign = sheets.Select(s => Told(s, g => [g with { Tag = new() { Circuit = g.Tag!.Circuit == "horns" ? "choke feed" : g.Tag.Circuit } }]));
        Assert.Contains("the trace of choke feed shows ", Assert.Single(SetCheck.Check(plan, foreign)).Because, StringComparison.Ordinal);
        var missing = sheets.Select(s => Told(s, g => g.Tag!.Circuit == "horns" ? [] : [g]));
        Assert.Contains("the trace of horns does not show", Assert.Single(SetCheck.Check(plan, missing)).Because, StringComparison.Ordinal);
    }

    // what is drawn for each circuit put otherwise
    private static Sheet Told(Sheet sheet, Func<GroupItem, IEnumerable<Item>> told) => sheet with { Items = [.. sheet.Items.SelectMany(i => Told(i, told))] };

    private static IEnumerable<Item> Told(Item item, Func<GroupItem, IEnumerable<Item>> told) =>
        item is not GroupItem group ? [item] : group.Tag?.Circuit is not null ? told(group) : [group with { Items = [.. group.Items.SelectMany(i => Told(i, told))] }];

    [Fact]
    public void Another_source_revision_or_length_is_named()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var sheets = Sheets(SheetKinds.CutList, plan);
        var hash = plan with { Harness = plan.Harness with { SourceHash = "0123456789" } };
        Assert.Contains("does not name the source 0123456789", Assert.Single(SetCheck.Check(hash, sheets)).Because, StringComparison.Ordinal);
        var drawing = plan.Harness.Drawing;
        var rev = plan with { Harness = plan.Harness with { Drawing = drawing with { Revisions = [.. drawing.Revisions.Select(r => r with { Rev = "Q" })] } } };
        Assert.Contains("does not name revision Q", Assert.Single(SetCheck.Check(rev, sheets)).Because, StringComparison.Ordinal);
        var length = plan with { Wires = [.. plan.Wires.Select(w => w.Id == "F04" ? w with { CutLengthMm = w.CutLengthMm + 10 } : w)] };
        foreach (var kind in new[] { SheetKinds.CutList, SheetKinds.Trace })
        {
            Assert.Contains("for F04, whose cut length is", Assert.Single(SetCheck.Check(length, Sheets(kind, plan))).Because, StringComparison.Ordinal);
        }
    }

    private static System.Collections.Immutable.ImmutableArray<Sheet> Sheets(string kind, Plan plan) => SheetKinds.Compose(kind, plan, [], new()).Sheets;
}
