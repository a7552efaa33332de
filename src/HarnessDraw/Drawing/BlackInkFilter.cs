using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>
/// Turns a composed sheet into the version for black ink: every stroke and every letter black, every fill black or white. Lanes
/// and swatches must have been painted for black ink already, they carry patterns instead of colours.
/// </summary>
public static class BlackInkFilter
{
    private static readonly Rgb Black = new(0, 0, 0);

    public static ImmutableArray<Item> Apply(ImmutableArray<Item> items) => [.. items.Select(Apply)];

    private static Item Apply(Item item) => item switch
    {
        GroupItem group => group with { Items = Apply(group.Items) },
        PathItem path => Path(path),
        TextItem text => text with { Colour = IsLight(text.Colour) ? Ink.Paper : Black },
        _ => item,
    };

    private static PathItem Path(PathItem path) => path with
    {
        Fill = path.Fill is { } fill ? IsLight(fill) ? Ink.Paper : Black : null,
        Stroke = path.Stroke is { } stroke ? Line(path, stroke) : null,
    };

    // the white core of a lane and a white casing stay white; a hairline thins out, or it would shout in black
    private static Stroke Line(PathItem path, Stroke stroke)
    {
        if (stroke.Colour == Ink.Paper)
        {
            return stroke;
        }

        var hairline = stroke.Colour == Ink.Hairline && stroke.WidthMm <= 0.2;
        var dotted = path.Role == ItemRole.Backdrop && stroke.Colour == Ink.Hairline;
        return dotted
            ? stroke with { Colour = Black, WidthMm = 0.35, DashMm = [0.01, 1.4], RoundCap = true }
            : stroke with { Colour = Black, WidthMm = hairline ? 0.13 : stroke.WidthMm };
    }

    private static bool IsLight(Rgb colour) => Contrast.Luminance(colour) > 0.4;
}
