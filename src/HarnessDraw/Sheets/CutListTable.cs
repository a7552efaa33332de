using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Fabrication;

namespace HarnessDraw.Sheets;

/// <summary>The rows of the cut list: columns take their widths from all rows, so that every page has the same.</summary>
internal sealed class CutListTable
{
    /// <summary>Height of a row of one line, mm.</summary>
    public const double RowMm = 5.45;
    private const double TypeMm = 6;
    private const double WideFromMm = 340;
    private readonly Box frame;
    private readonly SheetTable<CutRow> table;

    public CutListTable(ImmutableArray<CutRow> rows, TerminalKeys terminals, SealKeys seals, CableKeys cables, RevisionMarks revisions, SheetOptions options, Box frame)
    {
        Revisions = revisions;
        (Rows, Terminals, Seals, this.frame) = (rows, terminals, seals, frame);
        Keys = new OptionKeys(rows.Select(r => r.Wire.Builds));
        HeadMm = frame.Width >= WideFromMm ? 11.6 : 7;
        Units = options.Units;
        var columns = new CutListColumns(rows, terminals, seals, cables, Keys, revisions, options.Units, frame.Width >= WideFromMm).All();
        table = new(columns, rows, frame.X + 4, frame.Width - 8, gapMm: 1.7) { RowMm = RowMm };
    }

    public ImmutableArray<CutRow> Rows { get; }

    /// <summary>Height of the heads, mm.</summary>
    public double HeadMm { get; }

    public UnitsShown Units { get; }

    public bool ShowsInches => Units != UnitsShown.Metric;

    public OptionKeys Keys { get; }

    public TerminalKeys Terminals { get; }

    public SealKeys Seals { get; }

    public RevisionMarks Revisions { get; }

    /// <summary>False where even whole words need more than the sheet has.</summary>
    public bool Fits => table.LeastWidthMm <= table.Width;

    /// <summary>The rows page by page, as many as a height holds.</summary>
    public ImmutableArray<ImmutableArray<CutRow>> Pages(double heightMm)
    {
        var pages = ImmutableArray.CreateBuilder<ImmutableArray<CutRow>>();
        var page = ImmutableArray.CreateBuilder<CutRow>();
        var used = 0.0;
        foreach (var row in Rows)
        {
            var own = table.HeightOf(row) + (page.Count == 0 || page[^1].Reel.WireType != row.Reel.WireType ? TypeMm : 0);
            if (page.Count > 0 && used + own > heightMm)
            {
                pages.Add(page.DrainToImmutable());
                (used, own) = (0, table.HeightOf(row) + TypeMm);
            }

            page.Add(row);
            used += own;
        }

        pages.Add(page.DrainToImmutable());
        return pages.ToImmutable();
    }

    /// <summary>The height of a page's rows with the lines that name their wire types, mm.</summary>
    public double HeightOf(ImmutableArray<CutRow> rows) => rows.Sum(table.HeightOf) + (rows.Select(r => r.Reel.WireType).Distinct().Count() * TypeMm);

    /// <summary>Paints head and rows; gives the y below the last row.</summary>
    public double Paint(Pen pen, ImmutableArray<CutRow> rows, double top)
    {
        pen.Tint(new Box(frame.X, top, frame.Width, HeadMm));
        pen.Rule(frame.X, top, frame.Right, 0.35);
        table.PaintHeads(pen, top + HeadMm - 2.2);
        var y = top + HeadMm;
        pen.Rule(frame.X, y, frame.Right, 0.35);
        for (var i = 0; i < rows.Length; i++)
        {
            if (i == 0 || rows[i - 1].Reel.WireType != rows[i].Reel.WireType)
            {
                y = PaintType(pen, rows[i].Reel.WireType, y);
            }

            y = table.PaintRow(pen, rows[i], y);
            var changes = i == rows.Length - 1 || rows[i].Reel != rows[i + 1].Reel;
            pen.Rule(frame.X, y, frame.Right, changes ? 0.35 : 0.18, changes ? Ink.Black : Ink.Hairline);
        }

        return y;
    }

    // names the wire that the rows below are cut from, with its total
    private double PaintType(Pen pen, string type, double top)
    {
        var own = Rows.Where(r => r.Reel.WireType == type).ToList();
        var sum = LengthWords.Sum(own.Sum(r => r.Wire.CutLengthMm ?? 0), own.Count(r => r.Wire.CutLengthMm is null), Units);
        pen.Text(type, frame.X + 4, top + 4.3, frame.Width / 2, TextStyle.Bold);
        pen.Text($"{own.Count} {(own.Count == 1 ? "wire" : "wires")} of this type, {sum}", frame.X + 4 + Pen.Width(type, TextStyle.Bold) + 3, top + 4.3, frame.Width / 2, TextStyle.Plain.Quiet);
        pen.Rule(frame.X, top + TypeMm, frame.Right, 0.35);
        return top + TypeMm;
    }
}
