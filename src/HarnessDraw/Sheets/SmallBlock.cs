using System.Collections.Immutable;

namespace HarnessDraw.Sheets;

/// <summary>How the two faces of a small connector stand: beside each other left of the table, above each other left of it, or beside each other above it.</summary>
internal enum FacesLie
{
    Beside,
    Stacked,
    Above,
}

/// <summary>
/// One small connector on a page: its name and what it is, both faces, its lines of the table. The table stands at the same place in every block, so that one head
/// serves a whole column of blocks.
/// </summary>
internal sealed record SmallBlock(ConnectorSubject Subject, ConnectorFace? Face, FacesLie Lie, ImmutableArray<ConnectorLine> Lines, ImmutableArray<string> About, double HeightMm)
{
    /// <summary>Room for the faces left of the table, mm.</summary>
    public const double FacesMm = 63;
    public const double TableGapMm = 2;
    private const double FaceMm = 31.2;
    private const double NameMm = 8;
    private const double AboutMm = 4.3;
    private const double LabelMm = 4.4;
    private const double AfterMm = 3;
    private const double LineMm = 0.4;
    private const double RibMm = 2.3;
    private static readonly TextStyle NameStyle = TextStyle.Bold.At(5);

    private double FaceHeightMm => LabelMm + FacePainter.LatchMm + (Face?.HeightMm ?? 0) + BelowMm(Subject);

    /// <summary>The lowest block that holds all of it in a column of that width.</summary>
    public static SmallBlock Of(ConnectorSubject subject, ConnectorTable table, double widthMm)
    {
        var lines = ConnectorLine.Of(subject.Rows);
        var faces = new ConnectorFaceFitter(subject.Part, FacePainter.Letters(subject));
        var rows = table.HeightOf(lines);
        var about = Pen.Wrapped(AboutOf(subject), widthMm);
        if (NameWidth(subject) + 4 + Pen.Width(AboutOf(subject)) <= widthMm)
        {
            about = [];
        }

        SmallBlock? best = null;
        foreach (var withWires in new[] { true, false })
        {
            foreach (var (lie, room) in new[] { (FacesLie.Beside, FaceMm), (FacesLie.Stacked, FacesMm), (FacesLie.Above, (widthMm / 2) - 4) })
            {
                if (Smallest(subject, faces, room, withWires) is { } face)
                {
                    var block = new SmallBlock(subject, face, lie, lines, about, 0);
                    var height = lie switch
                    {
                        FacesLie.Beside => Math.Max(rows, block.FaceHeightMm),
                        FacesLie.Stacked => Math.Max(rows, 2 * block.FaceHeightMm),
                        _ => rows + block.FaceHeightMm + 1.5,
                    };
                    height += NameMm + (about.Length * AboutMm) + AfterMm;
                    if (best is null || height < best.HeightMm - 0.01)
                    {
                        best = block with { HeightMm = height };
                    }
                }
            }

            if (best is not null)
            {
                return best;
            }
        }

        return new(subject, null, FacesLie.Beside, lines, about, NameMm + (about.Length * AboutMm) + Math.Max(rows, LabelMm) + AfterMm);
    }

    /// <summary>The block's upper edge at <paramref name="top"/>; the table is the one of its column.</summary>
    public void Paint(Pen pen, ConnectorTable table, double left, double top, double widthMm)
    {
        pen.Rule(left, top, left + widthMm, 0.5);
        pen.Text(NameOf(Subject), left, top + 6.6, widthMm, NameStyle);
        if (About.IsEmpty)
        {
            var from = left + NameWidth(Subject) + 4;
            pen.Text(AboutOf(Subject), from, top + 6.6, left + widthMm - from + 0.01);
        }

        var y = top + NameMm;
        foreach (var line in About)
        {
            pen.Text(line, left, y + 2.7, widthMm + 0.01);
            y += AboutMm;
        }

        PaintFaces(pen, left, y, widthMm);
        table.PaintLines(pen, Lines, Lie == FacesLie.Above ? y + FaceHeightMm + 1.5 : y);
    }

    private void PaintFaces(Pen pen, double left, double top, double widthMm)
    {
        var (acrossMm, downMm) = Lie switch
        {
            FacesLie.Beside => (FaceMm + 0.6, 0.0),
            FacesLie.Stacked => (0.0, FaceHeightMm),
            _ => (widthMm / 2, 0.0),
        };
        foreach (var (mating, words) in new[] { (false, "wire-entry side"), (true, "mating side") })
        {
            var (x, y) = mating ? (left + acrossMm, top + downMm) : (left, top);
            pen.Text(words, x, y + 3.4, FaceMm + 0.6);
            if (Face is { } face)
            {
                FacePainter.Paint(pen, Subject, face, new(x + BesideMm(Subject), y + LabelMm + FacePainter.LatchMm), mating);
            }
        }
    }

    // a key rib stands out at the side or below
    private static double BesideMm(ConnectorSubject subject) => subject.Part.Key is "left" or "right" ? RibMm : LineMm;

    private static double BelowMm(ConnectorSubject subject) => subject.Part.Key is "bottom" ? RibMm : LineMm;

    // the smallest face that holds its letters
    private static ConnectorFace? Smallest(ConnectorSubject subject, ConnectorFaceFitter faces, double roomMm, bool withWires)
    {
        const double FirstMm = 12;
        const double StepMm = 0.5;
        const double HighestMm = 60;

        // in more room than that a face is no larger
        var largestMm = Math.Min(faces.WantedScale, HighestMm / subject.Part.HeightMm) * subject.Part.WidthMm;
        for (var bodyMm = FirstMm; bodyMm <= roomMm - (2 * BesideMm(subject)); bodyMm += StepMm)
        {
            if (faces.Fit(bodyMm, HighestMm, withWires) is { } face)
            {
                return face;
            }

            if (bodyMm > largestMm)
            {
                return null;
            }
        }

        return null;
    }

    private static string NameOf(ConnectorSubject subject) => subject.Thing.SideMark is { } mark ? $"{subject.Thing.Label}  {mark}" : subject.Thing.Label;

    private static double NameWidth(ConnectorSubject subject) => Pen.Width(NameOf(subject), NameStyle);

    // the id only where the name on the sheet is another
    private static string AboutOf(ConnectorSubject subject)
    {
        var id = string.Equals(subject.Thing.Id, subject.Thing.Label, StringComparison.OrdinalIgnoreCase) ? "" : $"{subject.Thing.Id}, ";
        var side = subject.IsMate ? subject.Side == Model.Side.Bay ? "bay side, " : "cabin side, " : "";
        return $"{id}{side}at {subject.Thing.Place}. {subject.Part.Title} ({subject.Part.Id}).";
    }
}
