using HarnessDraw.Drawing;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>Shares ways among pages in their order: several on a page where they fit whole, one that no page holds over as few as it needs.</summary>
internal sealed class TracePages
{
    // rule and headline of a way below another
    private const double FurtherMm = 4 + PageMaker.HeadlineMm;

    // a way that goes over does not leave less on a page that it shares
    private const int LeastStations = 4;
    private readonly PageMaker maker;
    private readonly double commonMm;
    private readonly List<List<Part>> pages = [];

    public TracePages(PageMaker maker) => (this.maker, commonMm) = (maker, TraceFoot.CommonMm(maker.Area.Width));

    /// <summary>Some stations of a way; the last one stands first again in what goes on.</summary>
    private sealed record Part(TraceBlock Block, int From, int Count)
    {
        public bool Ends => From + Count == Block.Stations;

        public double HeightMm => Block.HeightMm(From, Count);
    }

    public void Add(TraceBlock block)
    {
        var (last, anew) = (pages.Count > 0 ? pages[^1] : [], Parts(block, []));
        var shared = Parts(block, last);
        var fits = last.Count > 0 && Fits(last, shared[0]) && (shared.Count == 1 || (shared[0].Count >= LeastStations && shared.Count <= anew.Count && anew.Count > 1));
        var here = fits ? shared : anew;
        for (var i = 0; i < here.Count; i++)
        {
            if (i > 0 || !fits)
            {
                pages.Add([]);
            }

            pages[^1].Add(here[i]);
        }
    }

    public void Paint()
    {
        Even();
        foreach (var page in pages)
        {
            Paint(page);
        }
    }

    private double Used(List<Part> page) => page.Sum(p => p.HeightMm) + (FurtherMm * Math.Max(0, page.Count - 1)) + (page.Exists(p => p.Ends) ? commonMm : 0);

    private bool Fits(List<Part> page, Part part) => Used([.. page, part]) <= maker.Area.Height + 0.01;

    // as much on each page as it holds, below what stands on the first
    private List<Part> Parts(TraceBlock block, List<Part> page)
    {
        var parts = new List<Part>();
        for (var from = 0; from < block.Stations - 1; page = [])
        {
            var part = new Part(block, from, 2);
            while (!part.Ends && part with { Count = part.Count + 1 } is var longer && Fits(page, longer))
            {
                part = longer;
            }

            parts.Add(part);
            from += part.Count - 1;
        }

        return parts;
    }

    // no page is left for one hop: stations go on to the next page as long as that is the emptier one
    private void Even()
    {
        for (var i = pages.Count - 2; i >= 0; i--)
        {
            var (page, next) = (pages[i], pages[i + 1]);
            while (!page[^1].Ends && page[^1].Count > 2)
            {
                var (part, rest) = (page[^1] with { Count = page[^1].Count - 1 }, next[0] with { From = next[0].From - 1, Count = next[0].Count + 1 });
                if (Used([rest, .. next[1..]]) > Used([.. page[..^1], part]))
                {
                    break;
                }

                (page[^1], next[0]) = (part, rest);
            }
        }
    }

    private void Paint(List<Part> page)
    {
        var spare = Math.Min(TraceBlock.MostMm - TraceBlock.LeastMm, (maker.Area.Height - Used(page)) / page.Sum(p => p.Count - 1));
        var pen = maker.Begin(Title(page), page[0].Block.Headline, Aside(page[0]));
        var y = maker.Area.Y;
        foreach (var part in page)
        {
            var own = new Pen(maker.BlackInk);
            if (part != page[0])
            {
                pen.Rule(maker.Area.X, y + 2.5, maker.Area.Right, 0.7);
                maker.Headline(own, y + 2, part.Block.Headline, Aside(part));
                y += FurtherMm;
            }

            y = part.Block.Paint(own, maker.Area, y, part.From, part.Count, Math.Max(0, spare));
            pen.Add(new GroupItem(own.Items) { Tag = new() { Circuit = part.Block.Circuit } });
        }

        if (page.Exists(p => p.Ends))
        {
            TraceFoot.PaintCommon(pen, maker.Area);
        }
    }

    private static string Aside(Part part) => part.From > 0 ? "continued" : part.Block.Aside;

    private static string Title(List<Part> page)
    {
        var names = page.Select(p => p.Block.Circuit).Distinct(StringComparer.Ordinal).ToList();
        return names.Count > 1 ? $"Traces, {string.Join(", ", names)}" : $"Trace, {names[0]}{(page[0].From > 0 ? ", continued" : "")}";
    }
}
