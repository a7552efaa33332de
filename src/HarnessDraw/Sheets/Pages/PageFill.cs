namespace HarnessDraw.Sheets.Pages;

/// <summary>Fills the pages of a sheet so that no last page is left for a few lines.</summary>
internal static class PageFill
{
    // closer rows save less than this of a page; a last page that is used less than the second gets more from those before, which give no more than the third
    private const double CloserShare = 0.1;
    private const double LeastShare = 0.18;
    private const double MostFreeShare = 0.3;

    /// <summary>As many pages as it takes; rows stand closer where that saves one, else the pages before a nearly empty last one end earlier.</summary>
    /// <param name="begin">Makes the pages, anew for every try.</param>
    /// <param name="fill">Puts everything on them.</param>
    public static SheetResult Of(Func<PageMaker> begin, Action<PageFlow> fill)
    {
        // the lines of tables stay as they are however they are shared among pages
        var tables = new List<object>();
        var usual = Try(closer: false, freeMm: 0);
        var close = usual.Used < CloserShare * usual.Count ? Try(closer: true, freeMm: 0) : usual;
        var closer = close.Count < usual.Count;
        var best = closer ? close : usual;
        if (best.Count == 1 || best.Used >= LeastShare)
        {
            return best.ToResult();
        }

        var height = begin().Area.Height;
        for (var free = Math.Max(2, (LeastShare - best.Used) * height / (best.Count - 1)); free < MostFreeShare * height; free *= 1.4)
        {
            var even = Try(closer, free);
            if (even.Count > best.Count)
            {
                break;
            }

            if (even.Used >= LeastShare)
            {
                return even.ToResult();
            }
        }

        return best.ToResult();

        PageFlow Try(bool closer, double freeMm)
        {
            var flow = new PageFlow(begin(), closer, freeMm, tables);
            fill(flow);
            return flow;
        }
    }
}
