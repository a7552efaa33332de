using HarnessDraw.Comparing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Marks of what has changed since a harness was built: words and triangles that read in black.</summary>
public class ChangeSheetsTests
{
    private static readonly Plan Plan = ExamplePlans.Of("brackmere-six");

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Changed_wires_are_marked_on_cut_list_and_connectors_and_told_on_a_sheet(bool blackInk)
    {
        var built = HarnessFreezer.Freeze(Plan);
        var (cut, move, gone) = (built.Wires[0], built.Wires.First(w => w.From.StartsWith("firewall.", StringComparison.Ordinal)), new FrozenWire("Z9", "old circuit", "old", "horn.1", "horn.2", "BK", "thin-wall-105", "1", 900));
        var added = built.Wires.Last();
        built = built with { Wires = [.. built.Wires.Where(w => w != added).Select(w => w == cut ? w with { CutMm = 111 } : w == move ? w with { To = "elsewhere.1" } : w), gone] };
        var changes = HarnessCompiler.ChangesSince(built, Plan);
        Assert.False(changes.Failed);
        Assert.Equal(new HashSet<(string, string)> { ("cut", cut.Id), ("move", move.Id), ("remove", "Z9"), ("add", added.Id) }, changes.Value!.Lines.Select(l => (l.Word, l.Wire)).ToHashSet());
        var options = new SheetOptions { Changes = changes.Value, BlackInk = blackInk };
        var list = Texts(CutListSheets.Compose(Plan, [], options));
        foreach (var word in new[] { "ADD", "CUT", "MOVE" })
        {
            Assert.Single(list, t => t == word);
        }

        Assert.Contains(Texts(ConnectorSheets.Compose(Plan, [], options)), t => t == "MOVE");
        var chart = WallChart.Compose(Plan, [], options);
        Assert.Contains(Texts(chart), t => t == "CUT");
        Assert.Contains(Texts(chart), t => t.Contains("Taken out: Z9.", StringComparison.Ordinal));
        Assert.Empty(chart.Sheets.SelectMany(s => SheetChecker.Check(s)));
        var sheet = SheetKinds.Compose(SheetKinds.Changes, Plan, [], options);
        var told = Texts(sheet);
        Assert.All(changes.Value.Lines, l => Assert.Contains(l.Wire, told));
        Assert.Contains(told, t => t.Contains("REMOVE: take the wire out", StringComparison.Ordinal));
        Assert.All(sheet.Sheets, s => Assert.Empty(SheetChecker.Check(s)));
        Assert.Empty(CutListSheets.Compose(Plan, [], options).Sheets.SelectMany(s => SheetChecker.Check(s)));
    }

    [Fact]
    public void Without_a_built_state_nothing_is_marked_and_no_sheet_of_changes_is_drawn()
    {
        Assert.Empty(SheetKinds.Compose(SheetKinds.Changes, Plan, [], new()).Sheets);
        Assert.DoesNotContain(SheetKinds.Changes, SheetKinds.All);
        Assert.DoesNotContain(Texts(CutListSheets.Compose(Plan, [], new())), t => t is "ADD" or "MOVE");
    }

    private static List<string> Texts(SheetResult result) => [.. result.Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text)];
}
