using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>The rings on one stud from its seat up, the largest first: drawn in section, each with its wire, its terminal and its boot.</summary>
internal sealed record RingStack(Thing Thing, Pin Stud, ImmutableArray<(Wire Wire, WireEnd End)> Rings)
{
    public const double WidthMm = 115;
    private const double HeadMm = 10.5;
    private const double SeatMm = 4;
    private const double PlateMm = 3;
    private const double WasherMm = 1.4;
    private const double NutMm = 5;
    private const double RowMm = 5.2;
    private const double TextMm = 33;

    public double HeightMm => HeadMm + 1 + Math.Max(SeatMm + (Rings.Length * PlateMm) + WasherMm + NutMm + 2.6, Rings.Length * RowMm);

    /// <summary>The studs of the parts that the power drawing shows, in its order.</summary>
    public static ImmutableArray<RingStack> Of(Plan plan, IEnumerable<PowerNode> nodes) =>
    [
        .. nodes.Select(n => n.Thing).DistinctBy(t => t.Id, StringComparer.Ordinal)
            .SelectMany(t => t.Pins.Where(p => p.Style == PinStyle.Stud).Select(p => new RingStack(t, p,
            [
                .. plan.Wires.SelectMany(w => new[] { (Wire: w, End: w.From), (Wire: w, End: w.To) }).Where(e => e.End.At == t.Id && e.End.Pin == p.Name)
                    .OrderByDescending(e => e.Wire.AreaMm2).ThenBy(e => e.Wire.Id, StringComparer.Ordinal),
            ]))).Where(s => s.Rings.Length > 0),
    ];

    public void Paint(Pen pen, double x, double y)
    {
        var nm = Thing.TorqueNm is { } torque ? $"{torque.ToString("0.#", CultureInfo.InvariantCulture)} N·m" : "torque: maker";
        pen.Text($"{Thing.Label.ToUpperInvariant()}{(Thing.SideMark is { } mark ? $" {mark}" : "")}, {Stud.Name}", x, y + 4, WidthMm - 4, TextStyle.Bold);
        pen.Text($"{Stud.Size}, {nm}", x, y + 8.4, WidthMm - 4);
        var bottom = y + HeightMm - 1;
        var middle = x + 12;
        var seat = bottom - SeatMm;
        var nut = seat - (Rings.Length * PlateMm) - WasherMm - NutMm;
        pen.Frame(Box.FromEdges(middle - 1.8, nut - 2.6, middle + 1.8, seat), 0.35, fill: Ink.Paper);
        pen.Frame(new Box(middle - 11, seat, 22, SeatMm), 0.35, fill: Ink.QuietFill);
        for (var i = 0; i < Rings.Length; i++)
        {
            Ring(pen, Rings[i], middle, seat - ((i + 1) * PlateMm), x + TextMm, bottom - 0.6 - (i * RowMm));
        }

        pen.Frame(new Box(middle - 6.6, nut + NutMm, 13.2, WasherMm), 0.35, fill: Ink.Black);
        pen.Frame(new Box(middle - 5.6, nut, 11.2, NutMm), 0.35, fill: Ink.Paper);
        pen.Upright(middle - 2.7, nut, nut + NutMm, 0.25);
        pen.Upright(middle + 2.7, nut, nut + NutMm, 0.25);
    }

    // a plate on the stud with its barrel to the right, and a leader from there to the words
    private static void Ring(Pen pen, (Wire Wire, WireEnd End) ring, double middle, double top, double textX, double baseY)
    {
        pen.Frame(new Box(middle - 8, top, 16, PlateMm), 0.35, fill: Ink.Paper);
        pen.Frame(new Box(middle + 8, top + 0.4, 7, PlateMm - 0.8), 0.35, fill: Ink.QuietFill);
        var (from, row) = (new Point(middle + 15, top + (PlateMm / 2)), baseY - (Pen.CapMm / 2));
        pen.Add(new PathItem(Outline.Polyline([from, new(from.X + 1, from.Y), new(textX - 3, row), new(textX - 1, row)])) { Stroke = new(Ink.Black, 0.25) });
        var (wire, end) = ring;
        var tag = new Tag { For = wire.Id };
        pen.Swatch(wire.Colour, textX, baseY);
        var words = $"{wire.SizeLabel}{(wire.Awg is null ? " mm²" : "")}, {end.Terminal ?? "no terminal"}{(end.ThreadOnFirst.Any(t => t.Contains("boot", StringComparison.OrdinalIgnoreCase)) ? ", boot" : "")}";
        var idX = textX + 7;
        pen.Letters(wire.Id, idX, baseY, TextStyle.Bold, tag);
        var wordsX = idX + Pen.Width(wire.Id, TextStyle.Bold) + 1.6;
        pen.Text(words, wordsX, baseY, middle - 12 + WidthMm - 2 - wordsX, tag: tag);
    }
}
