using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Tracing;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.Suspects;

namespace HarnessDraw.Tests.Sheets;

/// <summary>A cavity has one name for a reader: 'firewall B10', wherever it stands.</summary>
public class PointWordsTests
{
    [Theory]
    [InlineData("firewall.B10", "firewall B10")]
    [InlineData("headlamp left.56b", "headlamp left 56b")]
    [InlineData("blower motor 2.1", "blower motor 2 – 1")]
    [InlineData("K19.out", "K19 out")]
    [InlineData("firewall.B19, cabin side", "firewall B19, cabin side")]
    [InlineData("SP8", "SP8")]
    public void A_point_is_named_in_words_and_found_by_them(string node, string words)
    {
        Assert.Equal(words, PointWords.OfNode(node));
        Assert.True(PointWords.Names(words, node));
        Assert.True(PointWords.Names(node, node));
        Assert.True(PointWords.Names(words.Replace(' ', '\u00a0'), node));
        Assert.False(PointWords.Names(words + "1", node));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_sheet_trace_or_diagnosis_writes_a_cavity_as_the_plan_file_does(string name)
    {
        var plan = ExamplePlans.Of(name);
        var written = plan.Nodes.Select(n => n.Node).Concat(plan.Wires.SelectMany(w => new[] { w.From.ToString(), w.To.ToString() })).SelectMany(n => n.Split(' ')).Where(n => n.Contains('.', StringComparison.Ordinal))
            .Where(n => n.Any(char.IsAsciiLetter)).ToHashSet(StringComparer.Ordinal);
        var sheets = SheetKinds.All.SelectMany(k => SheetKinds.Compose(k, plan, [], new()).Sheets.SelectMany(s => Items(s.Items).SelectMany(Said).Select(t => (From: k, Text: t))));
        var traces = plan.Harness.Circuits.Select(c => (From: "trace", Text: TraceTextWriter.Write(CircuitTracer.Trace(plan, c.Id).Value!)));
        var load = new FaultBench(plan, null).Loads[0].Name;
        var diagnosis = (From: "diagnose", Text: DiagnosisText.Of(new Troubleshooter(plan).Diagnose(NotesReader.Read($"dead: {load}", "notes").Notes)));
        foreach (var (from, text) in sheets.Concat(traces).Append(diagnosis))
        {
            Assert.All(text.Split([' ', '\u00a0', '\n', ',', ';', '(', ')'], StringSplitOptions.RemoveEmptyEntries), w => Assert.False(written.Contains(w.TrimEnd('.')), $"{from}: {text}"));
        }
    }

    private static IEnumerable<Item> Items(IEnumerable<Item> items) => items.SelectMany(i => i is GroupItem group ? Items(group.Items).Append(i) : [i]);

    private static IEnumerable<string> Said(Item item) => new[] { (item as TextItem)?.Text, item.Tag?.Title }.OfType<string>();
}
