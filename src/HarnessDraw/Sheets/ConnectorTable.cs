using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>The cavities of a connector as a table in cavity order. Columns take their widths from all rows, so that every page has the same.</summary>
internal sealed class ConnectorTable
{
    public const double HeadMm = 10.6;
    private const double GapMm = 1.6;
    private static readonly TextStyle Plain = TextStyle.Plain;
    private readonly ConnectorSubject subject;
    private readonly TerminalKeys terminals;
    private readonly OptionKeys options;
    private readonly ImmutableArray<Column> columns;
    private readonly ImmutableArray<TableColumn> places;
    private readonly double left;
    private readonly double width;

    public ConnectorTable(ConnectorSubject subject, TerminalKeys terminals, OptionKeys options, double left, double width)
    {
        (this.subject, this.terminals, this.options, this.left, this.width) = (subject, terminals, options, left, width);
        columns = [.. Columns()];
        places = TableColumns.Place(left, width, [.. columns.Select(Need)], [.. columns.Select(c => Math.Min(c.LeastMm ?? double.MaxValue, Need(c)))], GapMm);
    }

    /// <summary>The least width that holds the table with its names shortened, mm.</summary>
    public double LeastWidthMm => columns.Sum(c => Math.Min(c.LeastMm ?? double.MaxValue, Need(c))) + (GapMm * (columns.Length - 1)) + 0.1;

    /// <summary>Head and rows from <paramref name="top"/>; gives the y below the last row.</summary>
    public double Paint(Pen pen, IReadOnlyList<ConnectorRow> rows, double top, double rowMm)
    {
        PaintHead(pen, top);
        var y = top + HeadMm;
        pen.Rule(left, y, left + width, 0.5);
        for (var i = 0; i < rows.Count; i++)
        {
            foreach (var (column, place) in columns.Zip(places))
            {
                column.Paint(pen, rows[i], place, y + (rowMm / 2) + 1.25);
            }

            y += rowMm;
            var ends = i == rows.Count - 1 || rows[i].Half != rows[i + 1].Half;
            pen.Rule(left, y, left + width, ends ? 0.35 : 0.18, ends ? Ink.Black : Ink.Hairline);
        }

        return y;
    }

    private void PaintHead(Pen pen, double top)
    {
        var volts = columns.Zip(places).Where(c => c.First.IsVolts).Select(c => c.Second).ToList();
        var tint = Box.FromEdges(volts[0].Left - 1, top, volts[^1].Right + 1, top + HeadMm - 0.25);
        pen.Tint(tint);
        pen.Text("V, KEY IN", tint.Centre.X, top + 3.9, tint.Width, TextStyle.Bold.Middle);
        foreach (var (column, place) in columns.Zip(places))
        {
            pen.Text(column.Head, column.Right ? place.Right : place.Left, top + 9, place.Width + 0.01, column.Right ? TextStyle.Bold.Right : TextStyle.Bold);
        }
    }

    private double Need(Column column) => Math.Max(Pen.Width(column.Head, TextStyle.Bold), subject.Rows.Max(column.Need));

    private IEnumerable<Column> Columns()
    {
        yield return Text("cav.", r => r.Cavity, TextStyle.Bold, r => new Tag { Cavity = $"{subject.Thing.Id}:{r.Cavity}" });
        yield return new("", _ => 4.4, PaintDot);
        yield return Text("wire", r => r.Wire?.Id ?? "", Plain, r => new Tag { For = r.Wire?.Id }) with { LeastMm = 12 };
        yield return ColourColumn(subject.IsMate ? (subject.Side == Model.Side.Bay ? "bay" : "cabin") : "colour", r => r.Wire?.Colour, _ => false);
        if (subject.IsMate)
        {
            yield return ColourColumn(subject.Side == Model.Side.Bay ? "cabin" : "bay", r => r.Wire is null ? null : r.OtherColour ?? "–", r => r.OtherColour == r.Wire?.Colour);
        }

        yield return Text(subject.Rows.Any(r => r.Wire?.Awg is not null) ? "size" : "mm²", r => r.Wire?.SizeLabel ?? "", Plain, right: true);
        yield return Text("circuit", r => r.Wire?.Circuit ?? "spare", Plain) with { LeastMm = 15 };
        yield return new("goes to", NeedGoesTo, PaintGoesTo) { LeastMm = 22 };
        yield return Text("A", r => r.Wire is null ? "" : Current(r.Wire.Worst?.CurrentA), Plain, right: true);
        foreach (var (head, volts) in new (string, Func<ConnectorRow, double?>)[] { ("OFF", r => r.OffV), ("RUN", r => r.RunV), ("START", r => r.StartV) })
        {
            var live = head == "OFF";
            yield return new(head, r => Pen.Width(Figure(volts(r)), TextStyle.Bold), (pen, r, at, y) =>
            {
                if (r.Wire is not null)
                {
                    pen.Text(Figure(volts(r)), at.Right, y, at.Width + 0.01, live && r.AlwaysLive ? TextStyle.Bold.Right : Plain.Right);
                }
            })
            { Right = true, IsVolts = true };
        }

        yield return Text("part", r => r.Here is { } end ? terminals.KeyOf(end) : "", Plain);
        if (subject.Rows.Any(r => r.Here?.Seal is not null))
        {
            yield return Text("seal", r => r.Wire is null ? "" : r.Here?.Seal ?? "–", Plain) with { LeastMm = 12 };
        }

        if (subject.Rows.Any(r => !r.Builds.IsAlways))
        {
            yield return Text("opt", r => options.KeyOf(r.Builds), TextStyle.Bold);
        }
    }

    // the dot grows with the contact; hollow where nothing is fitted
    private static void PaintDot(Pen pen, ConnectorRow row, TableColumn at, double baseY)
    {
        var radius = ContactSize.Mm(row.ContactSize) switch { <= 2 => 0.7, <= 3.5 => 1.0, <= 5.5 => 1.3, <= 7.5 => 1.6, _ => 2.1 };
        var dot = Outline.Circle(new(at.Middle, baseY - 1.25), radius);
        pen.Add(row.Wire is null ? new PathItem(dot) { Stroke = new(Ink.Black, 0.25) } : new PathItem(dot) { Fill = Ink.Black });
    }

    private static Column ColourColumn(string head, Func<ConnectorRow, string?> colour, Func<ConnectorRow, bool> same) =>
        new(head, r => colour(r) is { } c ? same(r) ? Pen.Width("same") : 7 + Pen.Width(c, TextStyle.Bold) : 0, (pen, r, at, y) =>
        {
            if (colour(r) is not { } code)
            {
                return;
            }

            var differs = head is "cabin" or "bay" && r.OtherColour is not null && code == r.OtherColour && code != r.Wire?.Colour;
            if (same(r) || WireColour.TryParse(code) is null)
            {
                pen.Text(same(r) ? "same" : code, at.Left, y, at.Width + 0.01);
                return;
            }

            pen.Swatch(code, at.Left, y);
            pen.Text(code, at.Left + 7, y, at.Width - 6.99, differs ? TextStyle.Bold : Plain, new Tag { For = r.Wire?.Id });
        });

    private static double NeedGoesTo(ConnectorRow row) => row switch
    {
        { Wire: null } => Pen.Width(SpareWords(row)),
        { Beyond: { } beyond } => Pen.Width(beyond),
        _ => EndText.Width(row.There!),
    };

    private static void PaintGoesTo(Pen pen, ConnectorRow row, TableColumn at, double baseY)
    {
        if (row.Wire is null)
        {
            pen.Text(SpareWords(row), at.Left, baseY, at.Width + 0.01, Plain.Quiet);
        }
        else if (row.Beyond is { } beyond)
        {
            pen.Text(beyond, at.Left, baseY, at.Width + 0.01);
        }
        else
        {
            EndText.Paint(pen, row.There!, at, baseY);
        }
    }

    private static string SpareWords(ConnectorRow row) => row.Plug is { } plug ? plug : "no plug";

    private static Column Text(string head, Func<ConnectorRow, string> text, TextStyle style, Func<ConnectorRow, Tag?>? tag = null, bool right = false)
    {
        var column = new Column(head, r => Pen.Width(text(r), style), (_, _, _, _) => { }) { Right = right };
        return column with
        {
            Paint = (pen, r, at, y) => pen.Text(text(r), right ? at.Right : at.Left, y, at.Width + 0.01, (right ? style.Right : style) with { Colour = r.Wire is null && text(r) == "spare" ? Ink.Secondary : Ink.Black }, tag?.Invoke(r)),
        };
    }

    // a trickle is not nothing
    private static string Current(double? value) => value is > 0 and < 0.05 ? "<0.1" : Figure(value);

    // one decimal for volts and amperes; what is not known is a dash, never a nought
    private static string Figure(double? value)
    {
        if (value is not { } known || !double.IsFinite(known))
        {
            return "–";
        }

        var text = (Math.Round(known, 1, MidpointRounding.AwayFromZero) + 0.0).ToString("0.0", CultureInfo.InvariantCulture);
        return text.StartsWith('-') ? "−" + text[1..] : text;
    }

    private sealed record Column(string Head, Func<ConnectorRow, double> Need, Action<Pen, ConnectorRow, TableColumn, double> Paint)
    {
        public bool Right { get; init; }

        public bool IsVolts { get; init; }

        public double? LeastMm { get; init; }
    }
}
