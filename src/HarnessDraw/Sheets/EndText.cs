using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The end of a wire in a table cell: the name gives way before the pin does, for a cut-off pin would be another pin.</summary>
internal static class EndText
{
    private const double GapMm = 1.2;

    public static double Width(WireEnd end) => Pen.Width(end.At) + (end.Pin is { } pin ? GapMm + Pen.Width(pin, TextStyle.Bold) : 0);

    public static void Paint(Pen pen, WireEnd end, TableColumn at, double baseY)
    {
        if (end.Pin is not { } pin)
        {
            pen.Text(end.At, at.Left, baseY, at.Width + 0.01);
            return;
        }

        var pinMm = Math.Min(Pen.Width(pin, TextStyle.Bold), at.Width * 0.6);
        var name = Pen.Shortened(end.At, at.Width - pinMm - GapMm + 0.01);
        var nameMm = Pen.Width(name);
        pen.Text(name, at.Left, baseY, nameMm + 0.01);
        pen.Text(pin, at.Left + nameMm + GapMm, baseY, pinMm + 0.01, TextStyle.Bold);
    }
}
