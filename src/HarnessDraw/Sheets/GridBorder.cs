using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>
/// Where the frame of a paper lies and how its border is cut into fields. ISO 5457: 20 mm left and 10 mm elsewhere, fields of
/// 50 mm counted from the centring marks, corner fields take the rest. ASME Y14.1: its margins and zone counts (from memory, no
/// source seen); letters and numbers run as on ISO sheets, so that a field name means the same on every paper.
/// </summary>
public sealed record GridBorder
{
    private const double FieldMm = 50;
    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"; // I and O are not used

    private GridBorder(Paper paper, Box frame, double stripMm, ImmutableArray<double> across, ImmutableArray<double> down) =>
        (Paper, Frame, StripMm, Across, Down) = (paper, frame, stripMm, across, down);

    public Paper Paper { get; }

    /// <summary>The frame line; drawings stay inside it.</summary>
    public Box Frame { get; }

    /// <summary>Width of the strip between the frame and the outer line, mm.</summary>
    public double StripMm { get; }

    /// <summary>The x of the lines between the numbered fields, left to right.</summary>
    public ImmutableArray<double> Across { get; }

    /// <summary>The y of the lines between the lettered fields, top to bottom.</summary>
    public ImmutableArray<double> Down { get; }

    /// <summary>The outer line of the border.</summary>
    public Box Outer => Frame.Grow(StripMm);

    /// <summary>A4 and Letter carry the field names at the top and right only.</summary>
    public bool NamesOnTwoSides => Math.Min(Paper.WidthMm, Paper.HeightMm) < 216;

    public static GridBorder Of(Paper paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        return PaperSizes.IsAsme(paper) ? Asme(paper) : Iso(paper);
    }

    /// <summary>The name of a field column or row by its place: 0 is 1 or A; after Z comes AA.</summary>
    public static string Letter(int row) => row < Letters.Length ? Letters[row].ToString() : Letter((row / Letters.Length) - 1) + Letters[row % Letters.Length];

    public static string Number(int column) => (column + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The field a point lies in, 'C4'; points beyond the frame belong to the nearest field.</summary>
    public string FieldAt(Point at) => Letter(Down.Count(y => y <= at.Y)) + Number(Across.Count(x => x <= at.X));

    private static GridBorder Iso(Paper paper)
    {
        var frame = Box.FromEdges(20, 10, paper.WidthMm - 10, paper.HeightMm - 10);
        return new(paper, frame, 5, IsoDivisions(paper.WidthMm, int.MaxValue), IsoDivisions(paper.HeightMm, Letters.Length));
    }

    // fields on a side = 2 round((half side - 5) / 50): agrees with the published count of A0 to A4
    // boards are larger than any paper of the standard: their rows grow by whole fields until one letter names each
    private static ImmutableArray<double> IsoDivisions(double sideMm, int most)
    {
        var (fieldMm, half) = (0.0, 0);
        do
        {
            fieldMm += FieldMm;
            half = Math.Max(1, (int)Math.Round(((sideMm / 2) - 5) / fieldMm, MidpointRounding.AwayFromZero));
        }
        while (half > most / 2);

        return [.. Enumerable.Range(1 - half, (2 * half) - 1).Select(k => (sideMm / 2) + (k * fieldMm))];
    }

    private static GridBorder Asme(Paper paper)
    {
        var lies = paper.WidthMm >= paper.HeightMm;
        var (level, upright, shortZones, longZones) = paper.Name switch
        {
            "ANSI C" => (0.75, 0.50, 4, 4),
            "ANSI D" => (0.50, 1.00, 4, 8),
            "ANSI E" => (1.00, 0.50, 8, 8),
            _ when paper.Name.StartsWith("Tabloid", StringComparison.Ordinal) => (0.38, 0.62, 4, 6),
            _ => (0.38, 0.38, 4, 6), // Letter: 0.25 in at the sides would print on no office printer
        };
        var (x, y) = (25.4 * (lies ? upright : level), 25.4 * (lies ? level : upright));
        var frame = Box.FromEdges(x, y, paper.WidthMm - x, paper.HeightMm - y);
        var (columns, rows) = lies ? (longZones, shortZones) : (shortZones, longZones);
        return new(paper, frame, 5, Even(frame.X, frame.Width, columns), Even(frame.Y, frame.Height, rows));
    }

    private static ImmutableArray<double> Even(double from, double length, int count) =>
        [.. Enumerable.Range(1, count - 1).Select(k => from + (length * k / count))];
}
