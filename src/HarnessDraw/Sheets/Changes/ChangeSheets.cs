using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Changes;

/// <summary>What is done to a built harness, wire by wire, with a box to tick; wires that go are told here alone.</summary>
public static class ChangeSheets
{
    private static readonly ImmutableArray<(string Word, string Head)> Groups =
        [("remove", "REMOVE: take the wire out, plug its cavities"), ("cut", "CUT: cut a new piece in place of the old one"), ("move", "MOVE: the same piece, an end elsewhere"), ("add", "ADD: a wire that was not there")];

    /// <summary>One page or more; none where no earlier state was named.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        if (options.Changes is not { } changes)
        {
            return new([]);
        }

        var form = new PageForm(SheetKinds.Changes, "CHANGES", "changes")
        {
            Aside = $"from {changes.From} to {changes.To}; {Shown.Count(changes.Unchanged, "wire")} as they were",
            Caution = "Battery disconnected before you undo anything. Cap or take out what no longer leads anywhere: an end left in may be live and bare.",
        };
        var flow = new PageFlow(new(plan, findings, options, form));
        if (changes.Lines.IsEmpty)
        {
            flow.Heading("NOTHING CHANGES", 12);
            flow.Paragraph("Every wire has the length, size, colour, ends and way that it was built with.");
            return flow.ToResult();
        }

        flow.Table(new TextTable<ChangeLine>(
            [.. changes.Lines.OrderBy(l => Rank(l.Word))], flow.Area,
            new TextColumn<ChangeLine>("do", l => l.Word.ToUpperInvariant()) { Style = TextStyle.Bold },
            new TextColumn<ChangeLine>("wire", l => l.Wire) { Style = TextStyle.Bold, LeastMm = 14, Tag = l => new Tag { For = l.Wire } },
            new TextColumn<ChangeLine>("function", l => l.Circuit) { LeastMm = 26 },
            new TextColumn<ChangeLine>("what becomes what", l => l.How) { LeastMm = 70 },
            TextColumn<ChangeLine>.Tick("done"),
            TextColumn<ChangeLine>.Tick("tested"))
        { GroupOf = l => Groups[Rank(l.Word)].Head });
        return flow.ToResult();
    }

    private static int Rank(string word) => Math.Max(0, Groups.Select(g => g.Word).ToList().IndexOf(word));
}
