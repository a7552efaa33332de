using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Draws load cards and the pin table: who is where, one row a wire.</summary>
internal sealed class WallChartCards(WallChartProblem problem, ChartPen pen, bool isToScale)
{
    private readonly WallChartStyle style = problem.Style;

    public void Card(PlacedCard placed, double dx, double dy)
    {
        var card = problem.Subject.Cards[placed.Card];
        var box = placed.Box.Move(dx, dy);
        var load = new Tag { Load = card.Key };
        pen.Box(box, 0.35, 1, Ink.Paper, tag: load);
        var (lines, cap) = (style.NameLines(card), style.NameCapMm(card));
        var head = style.HeadMm(card);
        for (var i = 0; i < lines.Length; i++)
        {
            pen.Text(lines[i], box.X + 2, box.Y + 1.9 + style.NameMm + (i * style.NameMm * 1.36), cap, FaceWeight.Bold, tag: load);
        }

        if (card.Elsewhere is { } elsewhere)
        {
            pen.Text(elsewhere, box.X + 2, box.Y + style.NamesMm(card) + 2, WallChartStyle.TextMm);
        }

        Marks(card, box);
        foreach (var (lane, end, y) in placed.Rows)
        {
            var row = card.Rows[(lane, end)];
            Row(style.Columns(card), row.Wire, row.Pin, box, y + dy, placed.LanesOnLeft);
        }

        var stubY = placed.FirstStubY + dy;
        foreach (var stub in card.Stubs)
        {
            Row(style.Columns(card), stub.Wire, stub.Pin, box, stubY, placed.LanesOnLeft);
            Stub(stub, placed.LanesOnLeft ? box.X : box.Right, stubY, placed.LanesOnLeft ? -1 : 1);
            stubY += style.Metrics.RowMm;
        }

        pen.Line(box.X, box.Y + head, box.Right, box.Y + head, 0.35);
        if (placed.LeadNode >= 0)
        {
            Lead(placed, box, head);
        }
    }

    private void Lead(PlacedCard placed, Box box, double head)
    {
        var text = WallChartStyle.Caption(problem.Subject.NodeEdges[placed.LeadNode]);
        if (text.Length == 0)
        {
            return;
        }

        var away = placed.LanesOnLeft ? -1 : 1;
        var edge = placed.LanesOnLeft ? box.X : box.Right;
        var y = box.Y + Math.Min(head - 2.6, 5);
        // to scale it goes from the card to the bundle
        var (from, to) = placed.LeadMm > 0 ? (edge, edge + (away * placed.LeadMm)) : (edge + (away * 1.2), edge + (away * (2.2 + WallChartStyle.Width(text))));
        pen.Text(text, (from + to) / 2, y, WallChartStyle.TextMm, anchor: TextAnchor.Middle);
        pen.Dimension(new(from, y + 1.7), new(to, y + 1.7), hasTicks: false, isToScale && placed.LeadMm <= 0);
    }

    private void Marks(ChartCardSubject card, Box box)
    {
        var x = box.Right - 1.5;
        var y = box.Y + 1.9 + (style.NameMm / 2);
        if (card.SideMark is { } side)
        {
            var h = style.NameMm + 1.4;
            var mark = new Box(x - h, y - (h / 2), h, h);
            pen.Box(mark, 0, 0.7, Ink.Black, role: ItemRole.Plate);
            pen.Text(side, mark.Centre.X, y + (style.NameMm * 0.42), style.NameMm * 0.84, FaceWeight.Bold, TextAnchor.Middle, Ink.Paper);
            x -= h + 1.2;
        }

        if (style.LetterOf(card.OnlyWith) is { } letter)
        {
            var half = (style.NameMm / 2) + 1;
            pen.Lozenge(letter, new(x - half, y), half, 2.5);
        }
    }

    private void Row(CardColumns columns, Wire wire, string pin, Box box, double y, bool lanesOnLeft)
    {
        var half = style.Metrics.RowMm / 2;
        var tag = new Tag { For = wire.Id };
        var pinBox = lanesOnLeft ? new Box(box.X, y - half, columns.PinMm, 2 * half) : new Box(box.Right - columns.PinMm, y - half, columns.PinMm, 2 * half);
        pen.Line(box.X, y + half, box.Right, y + half, pen.BlackInk ? 0.13 : 0.18, Ink.Hairline);
        pen.Box(pinBox, 0.25, 0, Ink.QuietFill, role: ItemRole.Plate);
        pen.Text(TextFit.Ellipsis(pin, columns.PinMm - 1.2, WallChartStyle.TextMm, FaceWeight.Bold), pinBox.Centre.X, y + 1.25, WallChartStyle.TextMm, FaceWeight.Bold, TextAnchor.Middle, tag: tag);
        var x = (lanesOnLeft ? pinBox.Right : box.X) + 1.4;
        pen.Text(wire.Id, x, y + 1.25, WallChartStyle.TextMm, FaceWeight.Bold, tag: tag);
        if (style.MarkOf(wire) is { } mark)
        {
            ChangeMark(mark, x + WallChartStyle.Width(wire.Id, WallChartStyle.TextMm, FaceWeight.Bold) + 1.2, y + 1.25);
        }

        x += columns.IdMm + 1.6;
        pen.AddRange(Swatch.Paint(WireColour.Parse(wire.Colour), new Box(x, y - 1.25, 5.6, 2.5), pen.BlackInk));
        x += 5.6 + 1.4;
        pen.Text(wire.Colour, x, y + 1.25, WallChartStyle.TextMm, tag: tag);
        var right = (lanesOnLeft ? box.Right : pinBox.X) - 1.4;
        if (columns.OptionMm > 0)
        {
            if (style.LetterOf(wire.Builds) is { } letter)
            {
                pen.Lozenge(letter, new(right - 2.6, y), 2.3, 2.5);
            }

            right -= columns.OptionMm;
        }

        pen.Text(WallChartStyle.CutText(wire), right, y + 1.25, WallChartStyle.TextMm, anchor: TextAnchor.End, tag: tag);
        pen.Text(wire.SizeLabel, right - columns.CutMm - 2, y + 1.25, WallChartStyle.TextMm, anchor: TextAnchor.End, tag: tag);
    }

    private void ChangeMark(string word, double x, double baseY)
    {
        pen.Add(new PathItem(Outline.Polyline([new(x, baseY), new(x + 1.4, baseY - 2.5), new(x + 2.8, baseY)], closed: true)) { Stroke = new(Ink.Black, 0.3) });
        pen.Text(word, x + WallChartStyle.TriangleMm - 1.2, baseY, WallChartStyle.TextMm, FaceWeight.Bold);
    }

    private void Stub(ChartStub stub, double x, double y, int away)
    {
        WallChartLanes.Paint(pen, Outline.Line(x, y, x + (away * 3.4), y), stub.Wire, 0, 0);
        if (stub.IsGround)
        {
            pen.Ground(x + (away * 3.75), y, away);
        }

        pen.Text(WallChartStyle.StubText(stub), x + (away * 7.2), y + 1.25, WallChartStyle.TextMm, anchor: away < 0 ? TextAnchor.End : TextAnchor.Start, tag: new Tag { For = stub.Wire.Id });
    }

    /// <summary>The pin table at the root, lanes to its left.</summary>
    public void Table(Point at, double dx, double dy)
    {
        var table = problem.Problem.Table!;
        var (x, y) = (at.X + dx, at.Y + dy);
        var boxX = x + problem.LabelMm;
        pen.Flag(null, problem.PlateText, new Box(x + table.WidthMm - 1 - ChartPen.FlagWidth(null, problem.PlateText, WallChartStyle.FlagCapMm), y, ChartPen.FlagWidth(null, problem.PlateText, WallChartStyle.FlagCapMm), 10.2), WallChartStyle.FlagCapMm);
        foreach (var (title, headY) in problem.HalfHeads)
        {
            pen.Text(title, boxX + problem.PinBoxMm, y + headY, WallChartStyle.TextMm, FaceWeight.Bold, TextAnchor.End);
        }

        foreach (var (top, bottom) in problem.HalfBoxes)
        {
            pen.Box(new Box(boxX, y + top, problem.PinBoxMm, Math.Max(1, bottom - top)), 0.7, 1, Ink.Paper);
        }

        for (var i = 0; i < problem.Subject.Pins.Count; i++)
        {
            PinRow(problem.Subject.Pins[i], x, boxX, y + table.RowsMm[i]);
        }

        foreach (var (cavity, rowY) in problem.SpareRows)
        {
            CavityRow(cavity, boxX, y + rowY, isSpare: true);
            pen.Text("spare, plugged", boxX - 1.5, y + rowY + 1.25, WallChartStyle.TextMm, anchor: TextAnchor.End, colour: Ink.Secondary);
        }

        foreach (var (text, textY) in problem.SpareTexts)
        {
            pen.Text(text, boxX + problem.PinBoxMm, y + textY, WallChartStyle.TextMm, anchor: TextAnchor.End, colour: Ink.Secondary);
        }
    }

    private void PinRow(ChartRow pin, double x, double boxX, double y)
    {
        CavityRow(pin.Pin, boxX, y, isSpare: false);
        var right = boxX - 1.5;
        if (style.LetterOf(pin.Wire.Builds) is { } letter)
        {
            pen.Lozenge(letter, new(boxX + problem.PinBoxMm - 8.6, y), 2.3, 2.5);
        }

        pen.Text(WallChartProblem.LaneLabel(pin.Wire), right, y - 1.05, WallChartStyle.TextMm, anchor: TextAnchor.End, tag: new Tag { For = pin.Wire.Id });
    }

    private void CavityRow(string cavity, double boxX, double y, bool isSpare)
    {
        var half = style.Metrics.RowMm / 2;
        var part = problem.Part?.Cavities.FirstOrDefault(c => c.Name == cavity);
        var mm = part is null ? 2.8 : ContactSize.Mm(part.Size);
        var radius = mm <= 2 ? 0.8 : mm <= 3.5 ? 1.1 : mm <= 7 ? 1.5 : 1.8;
        pen.Line(boxX, y + half, boxX + problem.PinBoxMm, y + half, 0.18, Ink.Hairline);
        pen.Text(cavity, boxX + 2, y + 1.25, WallChartStyle.TextMm, mm > 5 ? FaceWeight.Bold : FaceWeight.Medium, colour: isSpare ? Ink.Secondary : null, tag: new Tag { Cavity = $"{problem.Subject.Mate!.Id}:{cavity}" });
        var dot = new Point(boxX + problem.PinBoxMm - 3, y);
        if (isSpare)
        {
            pen.Circle(dot, radius, 0.25);
            pen.Line(dot.X - 1.6, dot.Y - 1.6, dot.X + 1.6, dot.Y + 1.6, 0.25);
        }
        else
        {
            pen.Circle(dot, radius, 0, Ink.Black, role: ItemRole.Edge);
        }
    }
}
