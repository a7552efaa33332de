using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// The wall chart: the harness as it lies, every wire a lane that keeps its side, loads as cards, the firewall connector at its place; framed. Takes the smallest
/// paper that holds everything at the least letter sizes and then uses the room that is left for larger names and truer distances.
/// </summary>
public static class WallChart
{
    private const double WidestStretch = 0.5;

    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var subject = new WallChartSubject(shown);
        var title = SheetTitle.Of(shown, findings, options, shown.Harness.Title, "wall chart");
        ChartFit? last = null;
        foreach (var paper in options.Paper is { } asked ? [asked] : (ReadOnlySpan<Paper>)[PaperSizes.A3, PaperSizes.A2, PaperSizes.A1, PaperSizes.A0])
        {
            foreach (var nameMm in NameSizes(paper))
            {
                var fit = ChartFit.Try(subject, paper, title, nameMm, options.BlackInk);
                if (fit.Fits)
                {
                    return Drawn(fit, options, title);
                }

                last = fit;
            }
        }

        return new([]) { Refused = Refusal(subject, title, last!, options), Figures = last!.Figures with { Paper = "none" } };
    }

    private static ImmutableArray<double> NameSizes(Paper paper) => Math.Min(paper.WidthMm, paper.HeightMm) > 500 ? [7, 6, 5] : [5];

    private static string Refusal(WallChartSubject subject, TitleBlock title, ChartFit last, SheetOptions options)
    {
        var need = $"the wall chart needs {last.Chart.Bounds.Width:0} x {last.Chart.Bounds.Height:0} mm for the harness alone";
        foreach (var paper in (ReadOnlySpan<Paper>)[PaperSizes.A3, PaperSizes.A2, PaperSizes.A1, PaperSizes.A0, PaperSizes.TwoA0])
        {
            if (options.Paper?.Name != paper.Name && ChartFit.Try(subject, paper, title, 5, options.BlackInk).Fits)
            {
                return $"{need}: more than {options.Paper?.Name ?? "A0"} holds at the least letter sizes; {paper.Name} would fit";
            }
        }

        return $"{need}: more than {options.Paper?.Name ?? "A0"} holds at the least letter sizes; a roll or several sheets would fit";
    }

    private static SheetResult Drawn(ChartFit fit, SheetOptions options, TitleBlock title)
    {
        var best = fit.Stretched(WidestStretch);
        var items = WallChartPainter.Paint(best, options.BlackInk);
        var sheet = new Sheet("wall-chart", $"{title.Vehicle}: {title.Title}, wall chart", best.Paper, items) { BlackInk = options.BlackInk, Language = title.Language };
        return new([sheet]) { Figures = best.Figures };
    }
}
