using HarnessDraw.Drawing;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tracing;

namespace HarnessDraw.Sheets.TraceSheets;

/// <summary>Where the columns of a trace stand, mm on paper.</summary>
internal sealed class TraceColumns(Box area)
{
    public Box Area => area;

    public double FaceX => area.X;

    public double LineX => area.X + 21;

    public double WordsX => area.X + 29;

    public double OffRight => area.Right - 81.5;

    public double OnRight => area.Right - 67;

    public double CrankRight => area.Right - 52;

    public double RunRight => area.Right - 39.5;

    public double LostRight => area.Right - 27;

    public Box Reading(double y) => new(area.Right - 24, y - 4, 24, 8);

    /// <summary>Words beside a station end before the figures.</summary>
    public double StopWordsMm => OffRight - 11 - WordsX;

    /// <summary>Words between stations run under the figures, to the boxes.</summary>
    public double HopWordsMm => area.Right - 27 - WordsX;

    public void PaintHead(Pen pen, TraceWay way)
    {
        var y = area.Y + 6;
        var tint = Box.FromEdges(OffRight - 10, area.Y, RunRight + 1.5, area.Y + 8);
        pen.Tint(tint);
        const string First = "PLACE AND CONTACT";
        var after = area.X + Pen.Width(First, TextStyle.Bold) + 2;
        pen.Letters(First, area.X, y, TextStyle.Bold);
        pen.Letters("OFF", OffRight, y, TextStyle.Bold.Right);
        pen.Letters("ON", OnRight, y, TextStyle.Bold.Right);
        pen.Letters("CRANK", CrankRight, y, TextStyle.Bold.Right);
        pen.Letters("RUN", RunRight, y, TextStyle.Bold.Right);
        pen.Letters("lost", LostRight, y, TextStyle.Plain.Right);
        pen.Letters("READING V", area.Right - 12, y, TextStyle.Bold.Middle);
        pen.Rule(area.X, area.Y + 8, area.Right, 0.35);
        var state = $"ON: {way.OnState ?? Shown.Unknown}";
        if (Fits(state))
        {
            pen.Letters(state, after, y, TextStyle.Plain);
        }

        bool Fits(string words) => Pen.Width(words) <= tint.X - 2 - after;
    }
}
