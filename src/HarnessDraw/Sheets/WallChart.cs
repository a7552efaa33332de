using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>
/// The wall chart: the harness as it lies, every wire a lane that keeps its side, loads as cards, the firewall connector at its place; framed. Takes the smallest
/// paper that holds everything at the least letter sizes and then uses the room that is left for larger names and truer distances. What no sheet holds is shared
/// among several charts, whole circuits on each.
/// </summary>
public static class WallChart
{
    private const double WidestStretch = 0.5;
    private const double LeastNameMm = 5;
    private const int FewCharts = 8;
    private const int MostCharts = 400;

    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var (title, fits, refused) = Fits(plan, findings, options);
        return fits is null ? refused! : Drawn(fits, options, title);
    }

    /// <summary>How the chart is laid out, so that one drawn after a small change keeps its places; null when it is refused.</summary>
    public static FrozenChart? Taken(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        return Fits(plan, findings, options).Fits is { } fits ? new(fits[0].Paper.Name, [.. fits.Select(f => f.Finished(WidestStretch).Taken())]) : null;
    }

    // the charts with their room on paper, or why there are none
    private static (TitleBlock Title, List<ChartFit>? Fits, SheetResult? Refused) Fits(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var subject = new WallChartSubject(shown) { Changes = options.Changes, BandOver = options.BandOver, TrueToScale = options.TrueToScale };
        var title = SheetTitle.Of(shown, findings, options, shown.Harness.Title, "wall chart");
        var before = options.TrueToScale ? null : options.Changes?.Chart;
        var drafts = new ChartDrafts(subject, options.BlackInk, kept: before is { Sheets: [var sheet] } ? sheet : null);
        if (before is not null && (options.Paper ?? PaperSizes.Find(before.Paper)) is { } paper && AsKept(before, drafts, paper, title) is { } kept)
        {
            return (title, kept, null);
        }

        var one = options.Paper is { } asked ? SheetFit(drafts, asked, title) : Sheets().Select(p => SheetFit(drafts, p, title)).FirstOrDefault(f => f.Fits);
        if (one is { Fits: true })
        {
            return (title, [options is { TrueToScale: true, Paper: null } ? RoomierToScale(drafts, one, title) : one], null);
        }

        if (drafts.Kept is not null)
        {
            // what is kept asks for more paper than there is
            return Fits(plan, findings, options with { Changes = options.Changes! with { Chart = null } });
        }

        var several = options.Paper is null ? Several(drafts, PaperSizes.A1, title, 4) ?? Several(drafts, PaperSizes.A0, title, MostCharts)
            : options.SeveralCharts ? Several(drafts, options.Paper, title, MostCharts) : null;
        return several is not null ? (title, several, null) : (title, null, Refused(drafts, title, options.Paper ?? PaperSizes.A0, options.TileOnto));
    }

    // the charts as they were laid out before, circuits on the sheets on which they were; null when one does not bear what is new
    private static List<ChartFit>? AsKept(FrozenChart before, ChartDrafts drafts, Paper paper, TitleBlock title)
    {
        if (before.Sheets.Length == 1)
        {
            return ChartFit.AsKept(drafts, paper, title) is { } fit ? [fit] : null;
        }

        var parts = new ChartParts(drafts.Subject, drafts.Get(LeastNameMm, CardColumnRule.All[0]).CardOrder, before);
        return parts.KeptCuts is { } cuts ? TryParts(parts.Share(cuts), drafts.BlackInk, paper, title, (_, _) => { }, before.Sheets) : null;
    }

    // the fewest charts of one paper that hold everything in about equal shares; where many are needed, one is filled after the other
    private static List<ChartFit>? Several(ChartDrafts drafts, Paper paper, TitleBlock title, int most)
    {
        var draft = drafts.Get(LeastNameMm, CardColumnRule.All[0]);
        var parts = new ChartParts(drafts.Subject, draft.CardOrder);
        var whole = ChartFit.Untried(draft, paper, title);
        var least = Math.Max(2, whole.LeastCharts);
        for (var count = least; count <= Math.Min(Math.Min(most, FewCharts), parts.Most); count++)
        {
            if (!whole.IsFarTooFullWith(1.0 / count) && Balanced(parts, count, drafts.BlackInk, paper, title) is { } fits)
            {
                return fits;
            }
        }

        return most <= FewCharts || parts.Most <= FewCharts ? null
            : Filled(parts, whole, least, drafts.BlackInk, title, most) ?? Filled(parts with { IsBare = true }, whole, least, drafts.BlackInk, title, most);
    }

    // equal shares, then less for the chart that was too full: as many wires need more paper in a wide part of a vehicle than in a narrow one
    private static List<ChartFit>? Balanced(ChartParts parts, int count, bool blackInk, Paper paper, TitleBlock title)
    {
        const double Less = 0.85;
        const int MostTries = 3;
        var shares = Enumerable.Repeat(1.0, count).ToArray();
        var mayFit = true;
        for (var again = 0; again < MostTries && mayFit; again++)
        {
            if (TryParts(parts.Share(parts.Cuts(shares)), blackInk, paper, title, TooFull) is { } fits)
            {
                return fits;
            }
        }

        return null;

        void TooFull(int n, ChartFit fit)
        {
            shares[n] *= Less;
            mayFit = !fit.IsFarTooFull;
        }
    }

    // Fills one chart after the other: each begins with a little more wires than the one before it held, and what is too much is cut back until it fits; the last two
    // share evenly. How a part fits depends a little on how many there are, so all are tried again in the end.
    private static List<ChartFit>? Filled(ChartParts parts, ChartFit whole, int least, bool blackInk, TitleBlock title, int most)
    {
        var paper = whole.Paper;
        const double More = 1.02;
        const double MuchMore = 1.3;
        const double Less = 0.9;
        const int MostTries = 20;
        var known = new Dictionary<(int From, int To), Filling>();

        // what was too much last, and its wires: what holds far too many of them is not laid out
        var (tooMuch, tooMany) = (whole, parts.Rows(0, parts.Most));
        for (var again = 0; again < MostTries && Cuts() is { } cuts; again++)
        {
            if (TryParts(parts.Share(cuts), blackInk, paper, title, (n, _) => known[(n == 0 ? 0 : cuts[n - 1], n == cuts.Count ? parts.Most : cuts[n])] = Filling.TooMuch) is { } fits)
            {
                return fits;
            }
        }

        return null;

        List<int>? Cuts()
        {
            var cuts = new List<int>();
            var from = 0;
            for (var take = parts.Rows(0, parts.Most) / (double)least; ;)
            {
                if (Fullest(cuts, from, take) is not { } to)
                {
                    return null;
                }

                if (to == parts.Most)
                {
                    return Evened(cuts);
                }

                if (cuts.Count + 1 == most)
                {
                    return null;
                }

                cuts.Add(to);
                take = parts.Rows(from, to) * More;
                from = to;
            }
        }

        // where the chart ends that begins at a place: what is too much is cut back until it fits; where much room is left more is tried until it does not
        int? Fullest(List<int> before, int from, double take)
        {
            int? fullest = null;
            var isTooMuch = false;
            (tooMuch, tooMany) = (whole, parts.Rows(0, parts.Most));
            for (var to = parts.End(from, take); to > (fullest ?? from);)
            {
                var tried = Tried(before, from, to);
                isTooMuch |= tried == Filling.TooMuch;
                fullest = tried == Filling.TooMuch ? fullest : to;
                if (tried == Filling.Full || (tried == Filling.Roomy && (isTooMuch || to == parts.Most)))
                {
                    break;
                }

                to = isTooMuch ? Math.Min(to - 1, parts.End(from, parts.Rows(from, to) * Less)) : Math.Max(to + 1, parts.End(from, parts.Rows(from, to) * MuchMore));
            }

            return fullest;
        }

        List<int> Evened(List<int> cuts)
        {
            if (cuts.Count == 0)
            {
                return cuts;
            }

            (tooMuch, tooMany) = (whole, parts.Rows(0, parts.Most));
            var before = cuts[..^1];
            var from = before.Count == 0 ? 0 : before[^1];
            return parts.Middle(from, parts.Most) is { } middle && Fits(before, from, middle) && Fits([.. before, middle], middle, parts.Most) ? [.. before, middle] : cuts;
        }

        bool Fits(List<int> before, int from, int to) => Tried(before, from, to) != Filling.TooMuch;

        Filling Tried(List<int> before, int from, int to)
        {
            if (tooMuch.IsFarTooFullWith((double)parts.Rows(from, to) / tooMany))
            {
                return Filling.TooMuch;
            }

            if (!known.TryGetValue((from, to), out var filling))
            {
                // those behind it may hold as much
                var (subject, part) = parts.At([.. before, .. parts.Cuts(from, to)], before.Count);
                var fit = ChartFit.Try(new(subject, blackInk, part), paper, title, LeastNameMm);
                known[(from, to)] = filling = !fit.Fits ? Filling.TooMuch : fit.IsRoomy ? Filling.Roomy : Filling.Full;
                (tooMuch, tooMany) = fit.Fits ? (tooMuch, tooMany) : (fit, parts.Rows(from, to));
            }

            return filling;
        }
    }

    // how full a chart is of what was tried on it
    private enum Filling
    {
        TooMuch,
        Full,
        Roomy,
    }

    // side by side; the first that does not fit is told
    private static List<ChartFit>? TryParts(ImmutableArray<Func<(WallChartSubject Subject, ChartPart Part)>> parts, bool blackInk, Paper paper, TitleBlock title, Action<int, ChartFit> tooFull, ImmutableArray<FrozenChartSheet> kept = default)
    {
        var (drafts, fits) = (new ChartDrafts[parts.Length], new ChartFit[parts.Length]);
        // the first of those that were seen not to fit; the charts behind it need not be tried
        var first = parts.Length;
        SideBySide.For(parts.Length, n =>
        {
            if (n > Volatile.Read(ref first))
            {
                return;
            }

            var (subject, part) = parts[n]();
            drafts[n] = new(subject, blackInk, part, kept.IsDefault ? null : kept[n]);
            fits[n] = ChartFit.AsKept(drafts[n], paper, TitleOf(n)) ?? ChartFit.Try(drafts[n], paper, TitleOf(n), LeastNameMm);
            if (!fits[n].Fits)
            {
                int seen;
                while (n < (seen = Volatile.Read(ref first)) && Interlocked.CompareExchange(ref first, n, seen) != seen)
                {
                }
            }
        });
        if (first < parts.Length)
        {
            tooFull(first, fits[first]);
            return null;
        }

        // larger names once all fit
        SideBySide.For(parts.Length, n => fits[n] = fits[n].IsKept ? fits[n] : WithLargestNames(drafts[n], fits[n], paper, TitleOf(n)));
        return [.. fits];

        TitleBlock TitleOf(int n) => title with { Type = $"wall chart {drafts[n].Part!.Number} of {drafts[n].Part!.Of}" };
    }

    private static ImmutableArray<Paper> Sheets() => [PaperSizes.A3, PaperSizes.A2, PaperSizes.A1, PaperSizes.A0];

    // fits with the least names first, then with the largest that do
    private static ChartFit SheetFit(ChartDrafts drafts, Paper paper, TitleBlock title) => WithLargestNames(drafts, ChartFit.Try(drafts, paper, title, LeastNameMm), paper, title);

    private static ChartFit WithLargestNames(ChartDrafts drafts, ChartFit fit, Paper paper, TitleBlock title)
    {
        foreach (var nameMm in fit is { Fits: true, ShowsAll: true } ? LargerNames(paper) : [])
        {
            if (ChartFit.Try(drafts, paper, title, nameMm, mayLeaveOut: false) is { Fits: true } larger)
            {
                return larger;
            }
        }

        return fit;
    }

    // the smallest paper on which most lengths are to scale, else the one that keeps most of them
    private static ChartFit RoomierToScale(ChartDrafts drafts, ChartFit smallest, TitleBlock title)
    {
        const double Most = 0.5;
        var (best, share) = (smallest, 0.0);
        foreach (var paper in Sheets().SkipWhile(p => p.Name != smallest.Paper.Name))
        {
            var fit = ChartFit.Try(drafts, paper, title, LeastNameMm);
            var kept = fit.Fits ? fit.ToScale().ShareToScale : 0;
            (best, share) = kept > share ? (fit, kept) : (best, share);
            if (share >= Most)
            {
                break;
            }
        }

        return best;
    }

    /// <summary>The narrowest usual roll that is high enough, as long as it takes (width of rolls: common practice, no source); null when none is.</summary>
    private static Paper? Roll(ChartDrafts drafts, TitleBlock title)
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

            var lengthMm = Math.Ceiling((free.Bounds.Width + 40) / step) * step;
            for (var tries = 0; tries < 12; tries++, lengthMm += 2 * step)
            {
                var roll = PaperSizes.Roll(widthMm, lengthMm);
                if (ChartFit.Try(drafts, roll, title, LeastNameMm).Fits)
                {
                    return roll;
                }
            }

            return free.Paper;
        }

        return null;
    }

    private static ImmutableArray<double> LargerNames(Paper paper) => Math.Min(paper.WidthMm, paper.HeightMm) > 500 ? [7, 6] : [];

    private static SheetResult Refused(ChartDrafts drafts, TitleBlock title, Paper paper, Paper? tile)
    {
        var last = ChartFit.Try(drafts, paper, title, LeastNameMm);
        var would = Sheets().Where(p => p.Name != paper.Name).Append(PaperSizes.TwoA0).FirstOrDefault(p => ChartFit.Try(drafts, p, title, LeastNameMm).Fits) ?? Roll(drafts, title);
        var several = Several(drafts, paper, title, MostCharts);
        var takes = would is null ? last : ChartFit.Try(drafts, would, title, LeastNameMm);
        var cures = new[] { would is null ? null : LargerPaper(would, paper, tile), several is null ? null : $"{several.Count} charts on {paper.Name} would fit (--several-charts)" }.OfType<string>().ToList();
        return new([])
        {
            Refused = $"the wall chart does not fit {paper.Name} at the least letter sizes (the harness alone takes {takes.Bounds.Width:0} x {takes.Bounds.Height:0} mm{(would is null ? "" : $" on {would.Name}")}); {(cures.Count == 0 ? "not even one circuit fits this paper" : string.Join(", or ", cures))}",
            Figures = Figures([last]) with { Paper = "none" },
        };
    }

    private static string LargerPaper(Paper would, Paper asked, Paper? tile)
    {
        var page = tile ?? Tiler.Pages.FirstOrDefault(p => p.Name == asked.Name.Split(' ')[0]) ?? (PaperSizes.IsAsme(asked) ? PaperSizes.Letter : PaperSizes.A4);
        return $"{would.Name} would fit (--paper '{would.Name}' --tile {page.Name} prints it on {page.Name} pages to be joined)";
    }

    private static SheetResult Drawn(List<ChartFit> fits, SheetOptions options, TitleBlock title)
    {
        var sheets = new Sheet[fits.Count];
        SideBySide.For(sheets.Length, n =>
        {
            var best = options.TrueToScale ? fits[n].ToScale() : fits[n].Finished(WidestStretch);
            var words = sheets.Length == 1 ? "wall chart" : $"wall chart {n + 1} of {sheets.Length}";
            sheets[n] = new("wall-chart", $"{title.Vehicle}: {title.Title}, {words}", best.Paper, WallChartPainter.Paint(best, options.BlackInk))
            {
                Number = sheets.Length == 1 ? null : n + 1,
                BlackInk = options.BlackInk,
                Language = title.Language,
            };
        });
        return new([.. sheets]) { Figures = Figures(fits) };
    }

    private static ChartFigures Figures(List<ChartFit> fits)
    {
        var each = fits.Select(f => f.Figures).ToList();
        return each[0] with
        {
            Crossings = each.Sum(f => f.Crossings),
            CrossingsStraightLaneBound = each.Exists(f => f.CrossingsStraightLaneBound is null) ? null : each.Sum(f => f.CrossingsStraightLaneBound),
            CrossingsLowerBound = each.Exists(f => f.CrossingsLowerBound is null) ? null : each.Sum(f => f.CrossingsLowerBound),
            BoundReason = each.Select(f => f.BoundReason).FirstOrDefault(r => r is not null),
            Paper = fits.Count == 1 ? each[0].Paper : $"{fits.Count} x {each[0].Paper}",
            ToScale = each[0].ToScale is null ? null : string.Join("; ", each.Select(f => f.ToScale)),
        };
    }
}
