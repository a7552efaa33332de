using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Writing.Painting;
using SkiaSharp;

namespace HarnessDraw.Writing.Pdf;

/// <summary>
/// Links from the id of a wire to the place where another kind of sheet in the same file shows it: from the lists to the wall chart, from the chart to the cut list.
/// </summary>
internal sealed class WireLinks
{
    private readonly Dictionary<(string Kind, string Wire), (string Page, TextItem Text)> homes = [];
    private readonly ImmutableArray<string> kinds;

    public WireLinks(ImmutableArray<Sheet> pages)
    {
        kinds = [.. pages.Select(p => p.Name).Distinct()];
        foreach (var page in kinds.Length > 1 ? pages : [])
        {
            foreach (var text in Labels(page.Items))
            {
                homes.TryAdd((page.Name, text.Text), (PdfWriter.Destination(page), text));
            }
        }
    }

    /// <summary>Names the place where a kind of sheet shows a wire first, and links every label to the place on another kind.</summary>
    public void Mark(SKCanvas canvas, Sheet page, TextItem text)
    {
        if (homes.Count == 0 || !IsLabel(text))
        {
            return;
        }

        if (homes.TryGetValue((page.Name, text.Text), out var own) && ReferenceEquals(own.Text, text))
        {
            canvas.DrawNamedDestinationAnnotation(new SKPoint((float)text.At.X, (float)(text.At.Y - (3 * text.CapHeightMm))), Name(own.Page, text.Text));
        }

        // the last kind that lists wires is the cut list or what stands for it
        var other = kinds.FirstOrDefault(k => k != page.Name && homes.ContainsKey((k, text.Text)));
        if (page.Name == kinds[0])
        {
            other = kinds.LastOrDefault(k => k != page.Name && homes.ContainsKey((k, text.Text)));
        }

        if (other is not null && text.TurnDegrees == 0)
        {
            canvas.DrawLinkDestinationAnnotation(SheetPainter.Rect(TextMeasure.Bounds(text)), Name(homes[(other, text.Text)].Page, text.Text));
        }
    }

    private static string Name(string page, string wire) => $"{page}#wire-{wire}";

    private static bool IsLabel(TextItem text) => text.Tag?.For == text.Text;

    private static IEnumerable<TextItem> Labels(ImmutableArray<Item> items) =>
        items.SelectMany(i => i switch { GroupItem group => Labels(group.Items), TextItem text when IsLabel(text) => [text], _ => Enumerable.Empty<TextItem>() });
}
