namespace HarnessDraw.Model;

/// <summary>Straight lines in the vehicle, mm.</summary>
internal static class Lines3
{
    /// <summary>The least distance of two pieces of straight line; a piece may be a point.</summary>
    public static double DistanceMm((double X, double Y, double Z) a, (double X, double Y, double Z) b, (double X, double Y, double Z) c, (double X, double Y, double Z) d)
    {
        var (u, v, w) = (Less(b, a), Less(d, c), Less(a, c));
        var (uu, uv, vv, uw, vw) = (Times(u, u), Times(u, v), Times(v, v), Times(u, w), Times(v, w));
        var across = (uu * vv) - (uv * uv);
        var s = across > 1e-9 * uu * vv ? Math.Clamp(((uv * vw) - (vv * uw)) / across, 0, 1) : 0;
        // the nearest point of the other for this one, and back once more where that lies beyond an end
        var t = vv > 0 ? Math.Clamp(((uv * s) + vw) / vv, 0, 1) : 0;
        s = uu > 0 ? Math.Clamp(((uv * t) - uw) / uu, 0, 1) : 0;
        var apart = (X: w.X + (s * u.X) - (t * v.X), Y: w.Y + (s * u.Y) - (t * v.Y), Z: w.Z + (s * u.Z) - (t * v.Z));
        return Math.Sqrt(Times(apart, apart));
    }

    private static (double X, double Y, double Z) Less((double X, double Y, double Z) a, (double X, double Y, double Z) b) => (a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    private static double Times((double X, double Y, double Z) a, (double X, double Y, double Z) b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);
}
