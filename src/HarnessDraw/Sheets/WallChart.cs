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
        var drafts = new ChartDrafts(subject, options.BlackInk);
        var title = SheetTitle.Of(shown, findings, options, shown.Harness.Title, "wall chart");
        if (options.Paper is { } asked)
        {
            return SheetFit(drafts, asked, title) is { Fits: true } fit ? Drawn(fit, options, title) : Refused(drafts, title, asked);
        }

        var found = Sheets().Select(p => SheetFit(drafts, p, title)).FirstOrDefault(f => f.Fits) ?? RollFit(drafts, title);
        return found is not null ? Drawn(found, options, title) : Refused(drafts, title, PaperSizes.A0);
    }

    private static ImmutableArray<Paper> Sheets() => [PaperSizes.A3, PaperSizes.A2, PaperSizes.A1, PaperSizes.A0];

    // fits with the least names first, then with the largest that do
    private static ChartFit SheetFit(ChartDrafts drafts, Paper paper, TitleBlock title)
    {
        var fit = ChartFit.Try(drafts, paper, title, LeastNameMm);
        foreach (var nameMm in fit is { Fits: true, ShowsAll: true } ? LargerNames(paper) : [])
        {
            if (ChartFit.Try(drafts, paper, title, nameMm, mayLeaveOut: false) is { Fits: true } larger)
            {
                return larger;
            }
        }

        return fit;
    }

    /// <summary>The narrowest usual roll that is high enough, as long as it takes (width of rolls: common practice, no source); null when none is.</summary>
    private static ChartFit? RollFit(ChartDrafts drafts, TitleBlock title)
    {
        const double longest = 20_000;
        const double step = 50;
        foreach (var widthMm in (ReadOnlySpan<double>)[841, 914, 1067])
        {
            var free = ChartFit.Try(drafts, PaperSizes.Roll(widthMm, longest), title, LeastNameMm);
            if (!free.Fits)
            {
                continue;
            }

            var lengthMm = Math.Ceiling((free.Chart.Bounds.Width + 40) / step) * step;
            for (var tries = 0; tries < 12; tries++, lengthMm += 2 * step)
            {
                var fit = ChartFit.Try(drafts, PaperSizes.Roll(widthMm, lengthMm), title, LeastNameMm);
                if (fit.Fits)
                {
                    return fit;
                }
            }

            return free;
        }

        return null;
    }

    private static ImmutableArray<double> LargerNames(Paper paper) => Math.Min(paper.WidthMm, paper.HeightMm) > 500 ? [7, 6] : [];

    private static SheetResult Refused(ChartDrafts drafts, TitleBlock title, Paper paper)
    {
        var last = ChartFit.Try(drafts, paper, title, LeastNameMm);
        var would = Sheets().Where(p => p.Name != paper.Name).Append(PaperSizes.TwoA0).FirstOrDefault(p => ChartFit.Try(drafts, p, title, LeastNameMm).Fits) ?? RollFit(drafts, title)?.Paper;
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
