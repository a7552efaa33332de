using Svg.Transforms;

namespace HarnessDraw.Drawing.Outlines;

/// <summary>A plane map: x' = A x + C y + E, y' = B x + D y + F.</summary>
internal readonly record struct Affine(double A, double B, double C, double D, double E, double F)
{
    public static readonly Affine None = new(1, 0, 0, 1, 0, 0);

    /// <summary>How much lengths grow on average.</summary>
    public double Scale => Math.Sqrt(Math.Abs((A * D) - (B * C)));

    public static Affine Move(double x, double y) => new(1, 0, 0, 1, x, y);

    public Point Map(double x, double y) => new((A * x) + (C * y) + E, (B * x) + (D * y) + F);

    /// <summary>First <paramref name="inner"/>, then this.</summary>
    public Affine Then(Affine inner) => new(
        (A * inner.A) + (C * inner.B), (B * inner.A) + (D * inner.B),
        (A * inner.C) + (C * inner.D), (B * inner.C) + (D * inner.D),
        (A * inner.E) + (C * inner.F) + E, (B * inner.E) + (D * inner.F) + F);

    public static Affine Of(SvgTransformCollection? transforms)
    {
        var all = None;
        foreach (var transform in transforms ?? [])
        {
            all = all.Then(Of(transform));
        }

        return all;
    }

    private static Affine Of(SvgTransform transform)
    {
        switch (transform)
        {
            case SvgTranslate t:
                return Move(t.X, t.Y);
            case SvgScale s:
                return new(s.X, 0, 0, s.Y, 0, 0);
            case SvgRotate r:
                var (sin, cos) = Math.SinCos(r.Angle * Math.PI / 180);
                return Move(r.CenterX, r.CenterY).Then(new(cos, sin, -sin, cos, 0, 0)).Then(Move(-r.CenterX, -r.CenterY));
            case SvgSkew k:
                return new(1, Math.Tan(k.AngleY * Math.PI / 180), Math.Tan(k.AngleX * Math.PI / 180), 1, 0, 0);
            case SvgMatrix { Points: { Count: 6 } m }:
                return new(m[0], m[1], m[2], m[3], m[4], m[5]);
            default:
                return None;
        }
    }
}
