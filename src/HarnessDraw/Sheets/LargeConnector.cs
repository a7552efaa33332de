using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// The sheet of one large connector: both faces, words and caution on the left, the table on the right. A table too long for a page is parted by halves and the faces
/// stand on every page; faces too large for half a page get one of their own.
/// </summary>
internal static class LargeConnector
{
    private const double RowMm = 5.4;
    private const double LowRowMm = 5;
    private const double WidestTableMm = 205;
    private const double FaceTopMm = 37;

    /// <summary>On the paper asked for, else the smallest of A3 and A2 whose circles hold the wire ids; empty where nothing fits.</summary>
    public static ImmutableArray<ConnectorPage> Pages(ConnectorSubject subject, ConnectorKeys keys, TitleBlock block, SheetOptions options)
    {
        ImmutableArray<Paper> papers = options.Paper is { } asked ? [asked] : [PaperSizes.A3, PaperSizes.A2];
        foreach (var withWires in new[] { true, false })
        {
            foreach (var paper in papers)
            {
                var pages = PagesOn(paper, subject, keys, block, options, withWires);
                if (!pages.IsEmpty)
                {
                    return pages;
                }
            }
        }

        return [];
    }

    /// <summary>The smallest ISO paper that would hold the connector, or null.</summary>
    public static Paper? WouldFit(ConnectorSubject subject, ConnectorKeys keys, TitleBlock block, SheetOptions options) =>
        PaperSizes.Iso.FirstOrDefault(paper => !PagesOn(paper, subject, keys, block, options, withWires: true).IsEmpty);

    private static ImmutableArray<ConnectorPage> PagesOn(Paper paper, ConnectorSubject subject, ConnectorKeys keys, TitleBlock block, SheetOptions options, bool withWires)
    {
        var frame = Frame.Compose(paper, block, ConnectorPage.FrameOf);
        var inner = frame.Border.Frame.Grow(-4);
        var plan = new ConnectorTable(new ConnectorColumns(keys, subject.Rows).Full(subject), subject.Rows, 0, WidestTableMm, RowMm);
        for (var tableMm = Math.Min(WidestTableMm, plan.WantedWidthMm + 12); tableMm >= plan.LeastWidthMm && inner.Width - tableMm - 6 >= 150; tableMm -= 2)
        {
            if (FaceBlock.Fit(subject, new Box(inner.X, inner.Y, inner.Width - tableMm - 6, inner.Height), FaceTopMm, options.Units, withWires: withWires) is { } beside)
            {
                return Beside(subject, keys, plan, options, paper, Box.FromEdges(inner.Right - tableMm, inner.Y, inner.Right, frame.TitleBox.Y - 3), beside);
            }
        }

        var wordsMm = frame.TitleBox.X - 4 - inner.X;
        var below = wordsMm < 80 || inner.Width < plan.LeastWidthMm ? null : FaceBlock.Fit(subject, inner, FaceTopMm, options.Units, wordsMm, withWires);
        var clear = below is not null && inner.Y + FaceTopMm + below.Face.HeightMm < frame.TitleBox.Y - 4;
        return clear ? [FacesAlone(subject, options, paper, below!), .. TablesAlone(subject, keys, plan, options, paper, frame, inner)] : [];
    }

    private static ImmutableArray<ConnectorPage> Beside(ConnectorSubject subject, ConnectorKeys keys, ConnectorTable plan, SheetOptions options, Paper paper, Box area, FaceBlock faces)
    {
        var (table, parts) = Parts(subject, keys, plan.At(area.X, area.Width), area.Height);
        return [.. parts.Select((lines, i) =>
        {
            var title = parts.Length == 1 ? $"Connector {subject.Thing.Id}" : $"Connector {subject.Thing.Id}, {i + 1} of {parts.Length}";
            var pen = new Pen(options.BlackInk);
            faces.Paint(pen);
            TablePart.Paint(pen, table, subject, keys, lines, area, goesOn: i > 0);
            return new ConnectorPage(title, paper, pen.Items);
        })];
    }

    private static ConnectorPage FacesAlone(ConnectorSubject subject, SheetOptions options, Paper paper, FaceBlock faces)
    {
        var pen = new Pen(options.BlackInk);
        faces.Paint(pen);
        return new($"Connector {subject.Thing.Id}, faces", paper, pen.Items);
    }

    private static IEnumerable<ConnectorPage> TablesAlone(ConnectorSubject subject, ConnectorKeys keys, ConnectorTable plan, SheetOptions options, Paper paper, FrameLayout frame, Box inner)
    {
        var columns = inner.Width >= (2 * plan.LeastWidthMm) + 8 ? 2 : 1;
        var width = (inner.Width - (8 * (columns - 1))) / columns;
        var height = frame.TitleBox.Y - 3 - inner.Y - 16;
        var (table, parts) = Parts(subject, keys, plan.At(0, width), height);
        for (var from = 0; from < parts.Length; from += columns)
        {
            var pen = new Pen(options.BlackInk);
            pen.Text(FaceBlock.Title(subject), inner.X, inner.Y + 8, inner.Width, TextStyle.Bold.At(7));
            pen.Text($"Check which side you look at. {ConnectorWords.Live(subject)}", inner.X, inner.Y + 13.5, inner.Width, TextStyle.Bold with { Colour = Ink.Caution });
            for (var column = 0; column < columns && from + column < parts.Length; column++)
            {
                var area = new Box(inner.X + (column * (width + 8)), inner.Y + 16, width, height);
                TablePart.Paint(pen, table.At(area.X, area.Width), subject, keys, parts[from + column], area, goesOn: from + column > 0);
            }

            yield return new($"Connector {subject.Thing.Id}, table{(parts.Length > columns ? $" {(from / columns) + 1}" : "")}", paper, pen.Items);
        }
    }

    /// <summary>Rows of comfortable height unless low ones save a page.</summary>
    private static (ConnectorTable Table, ImmutableArray<ImmutableArray<ConnectorLine>> Parts) Parts(ConnectorSubject subject, ConnectorKeys keys, ConnectorTable table, double heightMm)
    {
        var parts = Parts(subject, keys, table, table.WidthMm, heightMm);
        if (parts.Length == 1)
        {
            return (table, parts);
        }

        var low = table.At(table.LeftMm, table.WidthMm, LowRowMm);
        var lowParts = Parts(subject, keys, low, low.WidthMm, heightMm);
        return lowParts.Length < parts.Length ? (low, lowParts) : (table, parts);
    }

    /// <summary>All lines if they fit, else a part for each half, each cut again where even that is too long.</summary>
    private static ImmutableArray<ImmutableArray<ConnectorLine>> Parts(ConnectorSubject subject, ConnectorKeys keys, ConnectorTable table, double width, double heightMm)
    {
        double Room(IEnumerable<ConnectorLine> of) => heightMm - TablePart.AboveMm - TablePart.BelowMm(subject, keys, of.SelectMany(l => l.Rows), width);
        var lines = ConnectorLine.Of(subject.Rows);
        return table.HeightOf(lines) <= Room(lines) ? [lines] : [.. lines.GroupBy(l => l.Half ?? "", StringComparer.Ordinal).SelectMany(half => Cut(half, table, Room(half)))];
    }

    private static IEnumerable<ImmutableArray<ConnectorLine>> Cut(IEnumerable<ConnectorLine> lines, ConnectorTable table, double heightMm)
    {
        var part = ImmutableArray.CreateBuilder<ConnectorLine>();
        var height = 0.0;
        foreach (var line in lines)
        {
            var own = table.HeightOf(line);
            if (part.Count > 0 && height + own > heightMm)
            {
                yield return part.DrainToImmutable();
                height = 0;
            }

            part.Add(line);
            height += own;
        }

        yield return part.DrainToImmutable();
    }
}
