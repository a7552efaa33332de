using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// Connector sheets: the large connectors one by one (A3), both faces beside the table of cavities; the small ones packed by place, many to a page.
/// </summary>
public static class ConnectorSheets
{
    /// <summary>More cavities than this, or a bulkhead body, get a sheet of their own.</summary>
    private const int SmallUpTo = 8;

    /// <summary>The pages in order: large connectors by name, then pages of small ones; none where no connector holds a wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var subjects = ConnectorSubjects.Of(shown).Where(s => s.Rows.Any(r => r.Wire is not null)).ToImmutableArray();
        var keys = ConnectorKeys.Of(shown, options.Changes);
        var block = SheetTitle.Of(plan, findings, options, "Connectors", "connectors");
        var pages = ImmutableArray.CreateBuilder<ConnectorPage>();
        var refused = new List<string>();
        foreach (var subject in subjects.Where(s => !IsSmall(s)))
        {
            var own = LargeConnector.Pages(subject, keys, block, options);
            pages.AddRange(own);
            if (own.IsEmpty)
            {
                refused.Add(LargeConnector.WouldFit(subject, keys, block, options) is { } paper ? $"connector {subject.Thing.Id} needs {paper.Name}" : $"connector {subject.Thing.Id} fits no paper");
            }
        }

        pages.AddRange(SmallConnectors.Pages([.. subjects.Where(IsSmall)], keys, block, options));
        return new([.. pages.Select((page, i) => Finish(page, i, pages.Count, block, options))]) { Refused = refused.Count == 0 ? null : string.Join("; ", refused) };
    }

    private static bool IsSmall(ConnectorSubject subject) => !subject.Part.IsBulkhead && subject.Part.Cavities.Length <= SmallUpTo;

    private static Sheet Finish(ConnectorPage page, int index, int count, TitleBlock block, SheetOptions options)
    {
        var frame = Frame.Compose(page.Paper, block with { Title = page.Title, Sheet = index + 1, Sheets = count }, ConnectorPage.FrameOf);
        ImmutableArray<Item> items = [new GroupItem(page.Items) { Name = "connectors" }, .. frame.Items];
        return new("connectors", page.Title, page.Paper, options.BlackInk ? BlackInkFilter.Apply(items) : items)
        {
            Number = count > 1 ? index + 1 : null,
            BlackInk = options.BlackInk,
            Language = block.Language,
        };
    }
}

/// <summary>A composed page before it gets its frame.</summary>
internal sealed record ConnectorPage(string Title, Paper Paper, ImmutableArray<Item> Items)
{
    public static FrameOptions FrameOf => new() { Form = TitleBlockForm.Small, CentringInsideMm = 0 };
}
