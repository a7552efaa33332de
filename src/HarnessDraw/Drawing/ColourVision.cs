namespace HarnessDraw.Drawing;

/// <summary>The eyes that see colours differently, all at full severity.</summary>
public enum Eye
{
    Usual,
    Protan,
    Deutan,
    Tritan,
}

/// <summary>
/// How far apart two colours are to an eye: CIE 1976 distance in L*a*b* (D65), after the simulation of Machado, Oliveira and
/// Fernandes (2009), severity 1. Under 10 is easily mistaken; neighbours in a bundle should have 25.
/// </summary>
public static class ColourVision
{
    /// <summary>What lanes side by side should be apart to every eye (common practice, no source).</summary>
    public const double NeighbourDistance = 20;

    public static double Distance(Rgb a, Rgb b, Eye eye = Eye.Usual) => Between(Lab(a, eye), Lab(b, eye));

    private static double Between((double L, double A, double B) x, (double L, double A, double B) y) =>
        Math.Sqrt(((x.L - y.L) * (x.L - y.L)) + ((x.A - y.A) * (x.A - y.A)) + ((x.B - y.B) * (x.B - y.B)));

    /// <summary>The least distance over all four eyes.</summary>
    public static double LeastDistance(Rgb a, Rgb b) =>
        Math.Min(Math.Min(Distance(a, b), Distance(a, b, Eye.Protan)), Math.Min(Distance(a, b, Eye.Deutan), Distance(a, b, Eye.Tritan)));

    /// <summary>
    /// The same for two wires: striped wires are told apart by what differs most, base or tracer (a wire without a tracer shows its base there too); by the eye that sees least of it.
    /// </summary>
    public static double LeastDistance(WireColour a, WireColour b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var (bases, tracers) = (ByEye(a.Base.Ink, b.Base.Ink), ByEye((a.Tracer ?? a.Base).Ink, (b.Tracer ?? b.Base).Ink));
        var least = double.MaxValue;
        for (var eye = 0; eye < bases.Length; eye++)
        {
            least = Math.Min(least, Math.Max(bases[eye], tracers[eye]));
        }

        return least;
    }

    private static double[] ByEye(Rgb a, Rgb b) => Known.Value.TryGetValue((a, b), out var known) ? known : DistancesOf(a, b);

    private static double[] DistancesOf(Rgb a, Rgb b) => DistancesOf(SeenBy(a), SeenBy(b));

    private static double[] DistancesOf((double, double, double)[] a, (double, double, double)[] b) => [Between(a[0], b[0]), Between(a[1], b[1]), Between(a[2], b[2]), Between(a[3], b[3])];

    private static (double L, double A, double B)[] SeenBy(Rgb colour) => [Lab(colour), Lab(colour, Eye.Protan), Lab(colour, Eye.Deutan), Lab(colour, Eye.Tritan)];

    // of the colours that wires come in, once
    private static readonly Lazy<Dictionary<(Rgb A, Rgb B), double[]>> Known = new(() =>
    {
        var known = new Dictionary<(Rgb, Rgb), double[]>();
        var inks = ColourCodes.All.Select(c => (c.Ink, Seen: SeenBy(c.Ink))).ToArray();
        foreach (var a in inks)
        {
            foreach (var b in inks)
            {
                known[(a.Ink, b.Ink)] = DistancesOf(a.Seen, b.Seen);
            }
        }

        return known;
    });

    /// <summary>Lightness and the two colour axes as the eye has them.</summary>
    public static (double L, double A, double B) Lab(Rgb colour, Eye eye = Eye.Usual) => Lab(Linear(colour), eye);

    private static (double L, double A, double B) Lab((double R, double G, double B) c, Eye eye)
    {
        var (r, g, b) = Seen(c, eye);
        var x = Curve(((0.4124564 * r) + (0.3575761 * g) + (0.1804375 * b)) / 0.95047);
        var y = Curve((0.2126729 * r) + (0.7151522 * g) + (0.0721750 * b));
        var z = Curve(((0.0193339 * r) + (0.1191920 * g) + (0.9503041 * b)) / 1.08883);
        return ((116 * y) - 16, 500 * (x - y), 200 * (y - z));
    }

    // the matrices work on linear light; what falls outside the gamut is clipped
    private static (double R, double G, double B) Seen((double R, double G, double B) c, Eye eye) => eye switch
    {
        Eye.Protan => Apply(c, 0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
        Eye.Deutan => Apply(c, 0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
        Eye.Tritan => Apply(c, 1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900),
        _ => c,
    };

    private static (double R, double G, double B) Apply((double R, double G, double B) c, double rr, double rg, double rb, double gr, double gg, double gb, double br, double bg, double bb) =>
    (
        Math.Clamp((rr * c.R) + (rg * c.G) + (rb * c.B), 0, 1),
        Math.Clamp((gr * c.R) + (gg * c.G) + (gb * c.B), 0, 1),
        Math.Clamp((br * c.R) + (bg * c.G) + (bb * c.B), 0, 1));

    private static double Curve(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : ((24389.0 / 27 * t) + 16) / 116;

    private static (double R, double G, double B) Linear(Rgb c) => (Contrast.Linear(c.R), Contrast.Linear(c.G), Contrast.Linear(c.B));
}
