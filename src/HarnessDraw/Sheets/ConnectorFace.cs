using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>A cavity on a drawn face: centre in mm from the body's upper left corner in the wire-entry view, radius of the circle and of the white disc in it.</summary>
internal sealed record FaceCavity(CavityPart Part, Point Centre, double RadiusMm, double DiscMm);

/// <summary>A connector body scaled for paper, wire-entry view. The mating view is the same with every x taken from the other edge.</summary>
internal sealed record ConnectorFace(ConnectorPart Part, double Scale, ImmutableArray<FaceCavity> Cavities)
{
    public double WidthMm => Part.WidthMm * Scale;

    public double HeightMm => Part.HeightMm * Scale;

    /// <summary>False where the circles are too small for the wire ids; those stand in the table only.</summary>
    public required bool ShowsWires { get; init; }

    public double X(FaceCavity cavity, bool mating) => mating ? WidthMm - cavity.Centre.X : cavity.Centre.X;
}

/// <summary>What is lettered in a cavity: its name and, below it, the wire.</summary>
internal sealed record CavityLetters(string Name, string? Wire);

/// <summary>Finds scale and circle sizes so that the circles of a body keep apart and their letters fit.</summary>
internal sealed class ConnectorFaceFitter
{
    private const double ClearMm = 0.3;
    private const double EdgeMm = 1.2;
    private const double LeastRingMm = 0.6;
    private readonly ConnectorPart part;

    // by cavity: the circle as one would like it, and half the diagonal that its letters need, without and with the wire
    private readonly double[] wantedMm;
    private readonly double[] nameMm;
    private readonly double[] withWireMm;

    public ConnectorFaceFitter(ConnectorPart part, IReadOnlyDictionary<string, CavityLetters> letters)
    {
        this.part = part;
        wantedMm = [.. part.Cavities.Select(c => ClassRadius(c.Size))];
        nameMm = [.. part.Cavities.Select(c => NeedMm(letters[c.Name], withWires: false))];
        withWireMm = [.. part.Cavities.Select(c => NeedMm(letters[c.Name], withWires: true))];
        WantedScale = WantedScaleOf();
    }

    /// <summary>Large enough for the circles as one would like them: a face is never larger.</summary>
    public double WantedScale { get; }

    /// <summary>The face in at most the given size, or null where not even the cavity names fit.</summary>
    public ConnectorFace? Fit(double widthMm, double heightMm, bool withWires)
    {
        var scale = Math.Min(Math.Min(widthMm / part.WidthMm, heightMm / part.HeightMm), WantedScale);
        var radii = Radii(scale);
        var needs = withWires ? withWireMm : nameMm;
        for (var i = 0; i < radii.Length; i++)
        {
            if (radii[i] < needs[i] + LeastRingMm)
            {
                return null;
            }
        }

        var cavities = ImmutableArray.CreateBuilder<FaceCavity>(radii.Length);
        for (var i = 0; i < radii.Length; i++)
        {
            var cavity = part.Cavities[i];
            cavities.Add(new(cavity, new(cavity.Xmm * scale, cavity.Ymm * scale), radii[i], Math.Min(Math.Max(needs[i], radii[i] * 0.74), radii[i] - LeastRingMm)));
        }

        return new(part, scale, cavities.MoveToImmutable()) { ShowsWires = withWires };
    }

    /// <summary>Half the diagonal that the letters need: two lines, or one where no wire is shown.</summary>
    private static double NeedMm(CavityLetters letters, bool withWires)
    {
        var name = Pen.DrawnWidth(letters.Name, TextStyle.Bold) / 2;
        var wire = withWires && letters.Wire is { } id ? Pen.DrawnWidth(id) / 2 : 0;
        return wire > 0 ? Math.Max(Diagonal(name, CavityPainter.TwoLinesUpMm), Diagonal(wire, CavityPainter.TwoLinesDownMm)) : Diagonal(name, 1.8);
    }

    private static double Diagonal(double x, double y) => Math.Sqrt((x * x) + (y * y)) + 0.1;

    private double WantedScaleOf()
    {
        var wanted = 0.0;
        for (var i = 0; i < part.Cavities.Length; i++)
        {
            var a = part.Cavities[i];
            wanted = Math.Max(wanted, (wantedMm[i] + EdgeMm + 1) / Math.Max(0.5, EdgeDistance(part, a)));
            for (var j = i + 1; j < part.Cavities.Length; j++)
            {
                var b = part.Cavities[j];
                wanted = Math.Max(wanted, (wantedMm[i] + wantedMm[j] + 2) / Math.Max(0.5, Distance(a, b)));
            }
        }

        return wanted;
    }

    private double[] Radii(double scale)
    {
        var radii = new double[wantedMm.Length];
        for (var i = 0; i < radii.Length; i++)
        {
            radii[i] = Math.Min(wantedMm[i], (EdgeDistance(part, part.Cavities[i]) * scale) - EdgeMm);
        }

        for (var i = 0; i < radii.Length; i++)
        {
            for (var j = i + 1; j < radii.Length; j++)
            {
                var room = (Distance(part.Cavities[i], part.Cavities[j]) * scale) - ClearMm;
                if (radii[i] + radii[j] > room)
                {
                    Share(radii, i, j, room);
                }
            }
        }

        return radii;
    }

    // the larger gives way first: a small circle holds its letters only just
    private static void Share(double[] radii, int i, int j, double room)
    {
        var (small, large) = radii[i] <= radii[j] ? (i, j) : (j, i);
        if (radii[small] * 2 <= room)
        {
            radii[large] = room - radii[small];
        }
        else
        {
            radii[small] = radii[large] = room / 2;
        }
    }

    private static double ClassRadius(string size) => ContactSize.Mm(size) switch
    {
        <= 2 => 6.2,
        <= 3.5 => 6.8,
        <= 5.5 => 7.6,
        <= 7.5 => 8.5,
        _ => 10.3,
    };

    private static double EdgeDistance(ConnectorPart part, CavityPart c) => Math.Min(Math.Min(c.Xmm, part.WidthMm - c.Xmm), Math.Min(c.Ymm, part.HeightMm - c.Ymm));

    private static double Distance(CavityPart a, CavityPart b) => Math.Sqrt(((a.Xmm - b.Xmm) * (a.Xmm - b.Xmm)) + ((a.Ymm - b.Ymm) * (a.Ymm - b.Ymm)));
}

/// <summary>A contact size as a number.</summary>
internal static class ContactSize
{
    /// <summary>'2.8' or 'M8' in mm; 2.8 where the text is no number.</summary>
    public static double Mm(string size) =>
        double.TryParse(size.TrimStart('M'), System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out var mm) ? mm : 2.8;
}
