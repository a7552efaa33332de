using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Writing.CutList;
using HarnessDraw.Writing.Html;
using HarnessDraw.Writing.Pdf;
using HarnessDraw.Writing.PlanFile;
using HarnessDraw.Writing.Png;
using HarnessDraw.Writing.Svg;

namespace HarnessDraw.Writing;

/// <summary>The files that a set of sheets becomes, in a fixed order; nothing is made before it is asked for.</summary>
public static class OutputFiles
{
    public static ImmutableArray<OutputFile> Of(DrawingSet set, DrawOrder order)
    {
        ArgumentNullException.ThrowIfNull(set);
        ArgumentNullException.ThrowIfNull(order);
        var harness = set.Planned.Plan.Harness;
        var folder = order.Build is null ? "" : OutputNames.BuildFolder(order.Build) + "/";
        var files = Pages(set, order, harness.Id).Concat(Documents(set, order, harness)).Concat(Live(set, order, harness.Id)).Concat(Lists(set, harness.Id));
        return [.. files.Select(f => f with { Name = folder + f.Name })];
    }

    private static IEnumerable<OutputFile> Pages(DrawingSet set, DrawOrder order, string name)
    {
        foreach (var sheet in set.Sheets.Concat(set.Tiles))
        {
            if (order.Formats.Contains(SheetFormat.Svg))
            {
                var options = new SvgOptions { EmbedFonts = order.EmbedFonts, Faces = order.Faces, LinkedFile = target => FileOf(set, name, target, sheet.BlackInk) };
                yield return new(OutputNames.OfPage(name, sheet, "svg"), () => SvgWriter.Write(sheet, options));
            }

            if (order.Formats.Contains(SheetFormat.Png))
            {
                yield return new(OutputNames.OfPage(name, sheet, "png"), () => PngWriter.Write(sheet, order.Dpi, order.Faces))
                {
                    IsPicture = true,
                    MakeTelling = told => PngWriter.Write(sheet, order.Dpi, order.Faces, told),
                };
            }
        }
    }

    private static IEnumerable<OutputFile> Documents(DrawingSet set, DrawOrder order, Harness harness)
    {
        if (!order.Formats.Contains(SheetFormat.Pdf))
        {
            yield break;
        }

        foreach (var ink in set.Sheets.GroupBy(s => s.BlackInk))
        {
            var sheets = ink.ToImmutableArray();
            yield return new(OutputNames.OfSet(harness.Id, ink.Key), () => PdfWriter.Write(sheets, Document(harness, order, harness.Title)));
        }

        foreach (var pages in set.Sheets.Concat(set.Tiles).GroupBy(s => (s.Name, s.BlackInk)))
        {
            var sheets = pages.ToImmutableArray();
            yield return new(OutputNames.OfSheet(harness.Id, pages.Key.Name, pages.Key.BlackInk, "pdf"), () => PdfWriter.Write(sheets, Document(harness, order, sheets[0].Title)));
        }
    }

    private static IEnumerable<OutputFile> Live(DrawingSet set, DrawOrder order, string name)
    {
        if (order.Formats.Contains(SheetFormat.Html))
        {
            yield return new($"{OutputNames.Safe(name)}.html", () => LivePage.Write(set, order));
        }
    }

    private static IEnumerable<OutputFile> Lists(DrawingSet set, string name)
    {
        var plan = set.Planned.Plan;
        yield return new($"{OutputNames.Safe(name)}.cut-list.csv", () => CutListCsvWriter.Write(plan));
        yield return new($"{OutputNames.Safe(name)}.plan.json", () => PlanJsonWriter.Write(plan, set.Findings, set.Figures, set.Refused.FirstOrDefault(r => r.Kind == "wall-chart")?.Because));
    }

    private static PdfOptions Document(Harness harness, DrawOrder order, string title) => new(title)
    {
        Author = harness.Drawing.Owner,
        Subject = $"{harness.Title}, {harness.Vehicle}",
        Language = harness.Drawing.Language,
        Faces = order.Faces,
    };

    /// <summary>The SVG file that a link's target is in; null when this run writes no such sheet.</summary>
    private static string? FileOf(DrawingSet set, string name, string target, bool blackInk) =>
        set.Sheets.FirstOrDefault(s => s.BlackInk == blackInk && PdfWriter.Destination(s) == target) is { } sheet ? OutputNames.OfPage(name, sheet, "svg") : null;
}
