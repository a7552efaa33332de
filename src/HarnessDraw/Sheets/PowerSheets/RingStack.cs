using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>
/// The rings on one stud from its seat up, the largest first: drawn in section, each with its wire, its terminal and its boot. <paramref name="Scale"/> enlarges the section, <paramref name="CapMm"/> the letters.
/// </summary>
internal sealed record RingStack(Thing Thing, Pin Stud, ImmutableArray<(Wire Wire, WireEnd End)> Rings, double Scale = 1, double CapMm = Pen.CapMm)
{
    private const double LeastMm = 90;
    private const double BetweenMm = 6;
    private const double HeadMm = 10.5;
    private const double SeatMm = 4;
    private const double PlateMm = 3;
    private const double WasherMm = 1.4;
    private const double NutMm = 5;
    private const double RowMm = 5.2;
    private const double MiddleMm = 12;
    private const double TextMm = 33;
    private const double SwatchMm = 7;

    public double HeightMm => Scale * (HeadMm + 1 + Math.Max(SeatMm + (Rings.Length * PlateMm) + WasherMm + NutMm + 2.6, Rings.Length * RowMm));

    /// <summary>What holds every word, with the room to the next stack, mm.</summary>
    public double WidthMm => BetweenMm + Math.Max(LeastMm, Math.Max(
        Math.Max(Pen.Width(Name, Bold), Pen.Width(Facts, Plain)),
        Rings.Select(r => (TextMm * Scale) + SwatchMm + Pen.Width(r.Wire.Id, Bold) + 1.6 + Pen.Width(Words(r), Plain)).DefaultIfEmpty(0).Max()));

    private TextStyle Plain => TextStyle.Plain.At(CapMm);

    private TextStyle Bold => TextStyle.Bold.At(CapMm);

    private string Name => $"{Thing.Label.ToUpperInvariant()}{(Thing.SideMark is { } mark ? $" {mark}" : "")}, {Stud.Name}";

    private string Facts => $"{Stud.Size}, {(Thing.TorqueNm is { } torque ? $"{torque.ToString("0.#", CultureInfo.InvariantCulture)} N·m" : "torque: maker")}";

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

    public void Paint(Pen pen, double x, double y, double widthMm)
    {
        pen.Text(Name, x, y + (4 * Scale), widthMm - BetweenMm, Bold);
        pen.Text(Facts, x, y + (8.4 * Scale), widthMm - BetweenMm, Plain);
        var bottom = y + HeightMm - Scale;
        var middle = x + (MiddleMm * Scale);
        var seat = bottom - (SeatMm * Scale);
        var nut = seat - (((Rings.Length * PlateMm) + WasherMm + NutMm) * Scale);
        var washer = nut + (NutMm * Scale);
        pen.Frame(Box.FromEdges(middle - (1.8 * Scale), nut - (2.6 * Scale), middle + (1.8 * Scale), seat), 0.35, fill: Ink.Paper);
        pen.Frame(Across(middle, 22, seat, SeatMm), 0.35, fill: Ink.QuietFill);
        for (var i = 0; i < Rings.Length; i++)
        {
            Ring(pen, Rings[i], middle, seat - ((i + 1) * PlateMm * Scale), x + (TextMm * Scale), bottom - ((0.6 + (i * RowMm)) * Scale), x + widthMm - BetweenMm);
        }

        pen.Frame(Across(middle, 13.2, washer, WasherMm), 0.35, fill: Ink.Black);
        pen.Frame(Across(middle, 11.2, nut, NutMm), 0.35, fill: Ink.Paper);
        pen.Upright(middle - (2.7 * Scale), nut, washer, 0.25);
        pen.Upright(middle + (2.7 * Scale), nut, washer, 0.25);
    }

    private Box Across(double middle, double widthMm, double top, double heightMm) => new(middle - (widthMm * Scale / 2), top, widthMm * Scale, heightMm * Scale);

    // a plate on the stud with its barrel to the right, and a leader from there to the words
    private void Ring(Pen pen, (Wire Wire, WireEnd End) ring, double middle, double top, double textX, double baseY, double right)
    {
        pen.Frame(Across(middle, 16, top, PlateMm), 0.35, fill: Ink.Paper);
        pen.Frame(new Box(middle + (8 * Scale), top + (0.4 * Scale), 7 * Scale, (PlateMm - 0.8) * Scale), 0.35, fill: Ink.QuietFill);
        var (from, row) = (new Point(middle + (15 * Scale), top + (PlateMm * Scale / 2)), baseY - (CapMm / 2));
        pen.Add(new PathItem(Outline.Polyline([from, new(from.X + Scale, from.Y), new(textX - 3, row), new(textX - 1, row)])) { Stroke = new(Ink.Black, 0.25) });
        var tag = new Tag { For = ring.Wire.Id };
        pen.Swatch(ring.Wire.Colour, textX, row + (Pen.CapMm / 2));
        var idX = textX + SwatchMm;
        pen.Letters(ring.Wire.Id, idX, baseY, Bold, tag);
        var wordsX = idX + Pen.Width(ring.Wire.Id, Bold) + 1.6;
        pen.Text(Words(ring), wordsX, baseY, right - wordsX + 0.01, Plain, tag);
    }

    private static string Words((Wire Wire, WireEnd End) ring) =>
        $"{ring.Wire.SizeLabel}{(ring.Wire.Awg is null ? " mm²" : "")}, {ring.End.Terminal ?? "no terminal"}{(ring.End.ThreadOnFirst.Any(t => t.Contains("boot", StringComparison.OrdinalIgnoreCase)) ? ", boot" : "")}";
}
