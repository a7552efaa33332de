using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

// a chart whose places are those of one drawn before
internal sealed partial class ChartFit
{
    // no file that was edited makes names of other sizes
    private const double LeastNameMm = 5;
    private const double LargestNameMm = 7;

    // ways to pack that are settled and compared, and the order of both axes than which none is better
    private const int MostWays = 10;
    private const double AllInOrder = 2 - 1e-9;
    private FrozenChartSheet? kept;
    private KeptWay way;

    /// <summary>True when it is laid out as a chart was before.</summary>
    public bool IsKept => kept is not null;

    /// <summary>
    /// The chart as it was laid out before, where that still suits the paper. Where it does not, true distances are given up little by little, then longer stems, then other stems are
    /// sought, then panels that other sheets show as well are left out; null when even so it does not.
    /// </summary>
    public static ChartFit? AsKept(ChartDrafts drafts, Paper paper, TitleBlock title)
    {
        if (drafts.Kept is not { NameMm: >= LeastNameMm and <= LargestNameMm } sheet)
        {
            return null;
        }

        var draft = drafts.Get(sheet.NameMm, new(sheet.ColumnMm, sheet.OneSideMm, sheet.StacksAtEnds));
        var frame = Sheets.Frame.Compose(paper, title);
        foreach (var showsAll in sheet.ShowsAll ? (ReadOnlySpan<bool>)[true, false] : [false])
        {
            var fit = new ChartFit(draft, paper, frame, title) { kept = sheet, ShowsAll = showsAll };
            fit.Panels = showsAll ? fit.Panels : ChartPanel.Fewer(fit.Panels);
            if (fit.KeepMost(sheet))
            {
                return fit;
            }
        }

        return null;
    }

    // of the first ways that suit the paper the one that keeps most loads in the order in which they stood
    private bool KeepMost(FrozenChartSheet sheet)
    {
        var (best, most, suited) = ((KeptWay?)null, double.NegativeInfinity, 0);
        foreach (var one in Ways(sheet))
        {
            if (suited < MostWays && most < AllInOrder && Keep(one))
            {
                suited++;
                draft.Settle(Suits);
                (best, most) = draft.Order > most + 1e-9 ? (one, draft.Order) : (best, most);
            }
        }

        return best is { } found && Keep(found);
    }

    private bool Keep(KeptWay how)
    {
        (way, stance, wanted, naming) = (how, how.Stance, null, 0);
        room = draft.Keep(stance, how.Stems, how.MostHeightMm, Frame.Inner.Width - 2);
        return Fits = Place();
    }

    // what is nearest to the chart of before first
    private IEnumerable<KeptWay> Ways(FrozenChartSheet sheet) => from isNarrowed in (bool[])[false, true]
                                                                 from stems in (double[])[1, 0.5, 0]
                                                                 from share in (double[])(isNarrowed ? [0] : [1, 0.95, 0.9, 0.8, 0.6, 0.3, 0])
                                                                 from axis in (int[])(share == 1 ? [2] : [0, 1, 2])
                                                                 let x = sheet.StretchX * (axis == 1 ? 1 : share)
                                                                 let y = sheet.StretchY * (axis == 0 ? 1 : share)
                                                                 select new KeptWay(stems, isNarrowed ? Frame.Inner.Height - 2 : 0, new(sheet.TableShare, sheet.CornerWidthMm, sheet.CornerHeightMm, x, y));

    /// <summary>How a kept chart is packed: so much of its stems, other stems sought up to a height (0: none), and true distances.</summary>
    private readonly record struct KeptWay(double Stems, double MostHeightMm, ChartStance Stance);

    /// <summary>The finished chart; of one whose places are kept with every load in the order in which it stood, as far as the paper allows.</summary>
    public ChartFit Finished(double widest)
    {
        if (kept is null)
        {
            return Stretched(widest);
        }

        Keep(way);
        draft.Settle(Suits);
        Chart = draft.Read();
        FillCorners();
        packed = PanelPlaces;
        AlignAsKept();
        return this;
    }

    /// <summary>How this finished chart is laid out.</summary>
    public FrozenChartSheet Taken() =>
        KeptPlaces.Take(Problem.Subject, draft, stance, (MoveX, MoveY), ShowsAll, Panels.Select((p, i) =>
            new FrozenPanel(p.Name, PanelPlaces[i].Shape, packed[i].Box.X, packed[i].Box.Y) { InLineX = PanelPlaces[i].Box.X - packed[i].Box.X, InLineY = PanelPlaces[i].Box.Y - packed[i].Box.Y }));

    private ImmutableArray<KeptPanel?> KeptPanels() =>
        [.. Panels.Select(p => kept!.Panels.FirstOrDefault(k => k.Panel == p.Name) is { } was ? new KeptPanel(was.Shape, was.X, was.Y, was.InLineX, was.InLineY) : (KeptPanel?)null)];

    // where they were found to have room, before they were brought into line
    private IReadOnlyList<(Box Box, int Shape)> packed = [];

    // panels that stand where they stood are brought into line as they were
    private void AlignAsKept()
    {
        var free = new FreeRoom(this);
        var places = PanelPlaces.ToArray();
        for (var i = 0; i < places.Length; i++)
        {
            var box = places[i].Box;
            if (kept!.Panels.FirstOrDefault(k => k.Panel == Panels[i].Name) is { } was && Math.Abs(was.X - box.X) + Math.Abs(was.Y - box.Y) < 0.01)
            {
                free.Move(places, i, box.Move(was.InLineX, was.InLineY));
            }
        }

        PanelPlaces = places;
    }
}
