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
    private const double LeastNameMm = 5;

    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var subject = new WallChartSubject(shown);
        var title = SheetTitle.Of(shown, findings, options, shown.Harness.Title, "wall chart");
        if (options.Paper is { } asked)
        {
            return SheetFit(subject, asked, title, options) is { Fits: true } fit ? Drawn(fit, options, title) : Refused(subject, title, asked, options);
        }

        var found = Sheets().Select(p => SheetFit(subject, p, title, options)).FirstOrDefault(f => f.Fits) ?? RollFit(subject, title, options);
        return found is not null ? Drawn(found, options, title) : Refused(subject, title, PaperSizes.A0, options);
    }

    private static ImmutableArray<Paper> Sheets() => [PaperSizes.A3, PaperSizes.A2, PaperSizes.A1, PaperSizes.A0];

    // the largest names that fit, else the attempt with the least
    private static ChartFit SheetFit(WallChartSubject subject, Paper paper, TitleBlock title, SheetOptions options)
    {
        ChartFit? fit = null;
        foreach (var nameMm in NameSizes(paper))
        {
            fit = ChartFit.Try(subject, paper, title, nameMm, options.BlackInk);
            if (fit.Fits)
            {
                break;
            }
        }

        return fit!;
    }

    /// <summary>The narrowest usual roll that is high enough, as long as it takes (width of rolls: common practice, no source); null when none is.</summary>
    private static ChartFit? RollFit(WallChartSubject subject, TitleBlock title, SheetOptions options)
    {
        const double longest = 20_000;
        const double step = 50;
        foreach (var widthMm in (ReadOnlySpan<double>)[841, 914, 1067])
        {
            var free = ChartFit.Try(subject, PaperSizes.Roll(widthMm, longest), title, LeastNameMm, options.BlackInk);
            if (!free.Fits)
            {
                continue;
            }

            var lengthMm = Math.Ceiling((free.Chart.Bounds.Width + 40) / step) * step;
            for (var tries = 0; tries < 12; tries++, lengthMm += 2 * step)
            {
                var fit = ChartFit.Try(subject, PaperSizes.Roll(widthMm, lengthMm), title, LeastNameMm, options.BlackInk);
                if (fit.Fits)
                {
                    return fit;
                }
            }

            return free;
        }

        return null;
    }

    private static ImmutableArray<double> NameSizes(Paper paper) => Math.Min(paper.WidthMm, paper.HeightMm) > 500 ? [7, 6, LeastNameMm] : [LeastNameMm];

    private static SheetResult Refused(WallChartSubject subject, TitleBlock title, Paper paper, SheetOptions options)
    {
        var last = ChartFit.Try(subject, paper, title, LeastNameMm, options.BlackInk);
        var would = Sheets().Where(p => p.Name != paper.Name).Append(PaperSizes.TwoA0).FirstOrDefault(p => ChartFit.Try(subject, p, title, LeastNameMm, options.BlackInk).Fits) ?? RollFit(subject, title, options)?.Paper;
        var cure = would is null ? $"no usual roll is wide enough; a sheet of about {last.Chart.Bounds.Width + 200:0} x {last.Chart.Bounds.Height + 100:0} mm would fit, or one build by itself" : $"{would.Name} would fit";
        return new([])
        {
            Refused = $"the wall chart needs {last.Chart.Bounds.Width:0} x {last.Chart.Bounds.Height:0} mm for the harness alone: more than {paper.Name} holds at the least letter sizes; {cure}",
            Figures = last.Figures with { Paper = "none" },
        };
    }

    private static SheetResult Drawn(ChartFit fit, SheetOptions options, TitleBlock title)
    {
        var best = fit.Stretched(WidestStretch);
        var items = WallChartPainter.Paint(best, options.BlackInk);
        var sheet = new Sheet("wall-chart", $"{title.Vehicle}: {title.Title}, wall chart", best.Paper, items) { BlackInk = options.BlackInk, Language = title.Language };
        return new([sheet]) { Figures = best.Figures };
    }
}
