namespace HarnessDraw.Model;

/// <summary>Colours that a tired or colour-blind eye takes for each other: a base, and a tracer behind a stroke.</summary>
internal static class TiredColours
{
    // red-green deficiency, and what age makes alike; judged by eye on faded samples (common practice, no source)
    private static readonly (string A, string B)[] Alike = [("RD", "BN"), ("GN", "BN"), ("RD", "GN"), ("GY", "VT"), ("BN", "OG"), ("GY", "PK"), ("BU", "VT")];

    public static (string Base, string? Tracer) Split(string colour) => colour.IndexOf('/') is > 0 and var slash ? (colour[..slash], colour[(slash + 1)..]) : (colour, null);

    /// <summary>Bases that are easily taken for each other, with the same tracer or none.</summary>
    public static bool AreConfusable(string a, string b)
    {
        var (x, y) = (Split(a), Split(b));
        return x.Tracer == y.Tracer && Alike.Any(p => (p.A == x.Base && p.B == y.Base) || (p.A == y.Base && p.B == x.Base));
    }
}
