using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>An opaque sRGB colour.</summary>
public readonly record struct Rgb(byte R, byte G, byte B)
{
    public static Rgb Hex(string hex)
    {
        ArgumentNullException.ThrowIfNull(hex);
        var h = hex.AsSpan(hex.StartsWith('#') ? 1 : 0);
        return new(byte.Parse(h[..2], System.Globalization.NumberStyles.HexNumber), byte.Parse(h[2..4], System.Globalization.NumberStyles.HexNumber), byte.Parse(h[4..6], System.Globalization.NumberStyles.HexNumber));
    }

    public override string ToString() => "#" + Convert.ToHexString([R, G, B]);
}

/// <summary>How a line is drawn. Widths and dashes in millimetres.</summary>
public sealed record Stroke(Rgb Colour, double WidthMm)
{
    public ImmutableArray<double> DashMm { get; init; } = [];
    public double DashPhaseMm { get; init; }
    public bool RoundCap { get; init; }
    public bool RoundJoin { get; init; } = true;
}

/// <summary>What an item is to a reader, used by the sheet checks (text over text, wire through text, text on an edge).</summary>
public enum ItemRole
{
    /// <summary>Behind everything: body outline, tints, bands. May lie under text.</summary>
    Backdrop,
    /// <summary>The one line of a wire that carries its id.</summary>
    Lane,
    /// <summary>Outline, casing or tracer of a lane.</summary>
    LaneDress,
    /// <summary>Box edges, ticks, leaders, dots, rules, symbols: no text may sit on one.</summary>
    Edge,
    /// <summary>A filled plate that carries its own text (branch flag, disc, pin box, swatch).</summary>
    Plate,
    /// <summary>Lettering.</summary>
    Lettering,
}

/// <summary>
/// What an item stands for, in the words of the output contract (data-wire, data-circuit, data-for, data-cavity,
/// data-segment) and a spoken title. All null: nothing in particular.
/// </summary>
public sealed record Tag
{
    public string? Wire { get; init; }
    public string? Circuit { get; init; }
    public string? For { get; init; }
    public string? Cavity { get; init; }
    public string? Segment { get; init; }

    /// <summary>A load's or a fuse's name in the description; written only where the drawing is part of a page that can be pressed.</summary>
    public string? Load { get; init; }
    public string? Fuse { get; init; }
    public string? Title { get; init; }
}

/// <summary>Anything placed on a sheet. A closed set: group, path, text, image, link.</summary>
public abstract record Item
{
    public ItemRole Role { get; init; } = ItemRole.Edge;
    public Tag? Tag { get; init; }
}

/// <summary>Items that move, turn and are clipped together. Turned about the group's own origin, then moved.</summary>
public sealed record GroupItem(ImmutableArray<Item> Items) : Item
{
    public double MoveXMm { get; init; }
    public double MoveYMm { get; init; }
    public double TurnDegrees { get; init; }
    public double Scale { get; init; } = 1;

    /// <summary>Clip in the group's own coordinates (before the move), or none.</summary>
    public Box? Clip { get; init; }

    /// <summary>A short machine name of the part ('frame', 'trunk', 'cards'); an id in the SVG.</summary>
    public string? Name { get; init; }
}

/// <summary>A stroked and or filled outline.</summary>
public sealed record PathItem(Outline Outline) : Item
{
    public Stroke? Stroke { get; init; }
    public Rgb? Fill { get; init; }
}

/// <summary>Where a text's anchor point lies along its base line.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>The two weights of the shipped faces.</summary>
public enum FaceWeight
{
    Medium = 500,
    Bold = 700,
}

/// <summary>One line of lettering. <see cref="At"/> is on the base line; the size is the height of capitals in millimetres.</summary>
public sealed record TextItem(string Text, Point At, double CapHeightMm) : Item
{
    public FaceWeight Weight { get; init; } = FaceWeight.Medium;
    public TextAnchor Anchor { get; init; }
    public Rgb Colour { get; init; } = Ink.Black;
    public double TurnDegrees { get; init; }

    /// <summary>How far off it must be read, m: at arm's length, or farther for what is read across a room.</summary>
    public double ReadFromM { get; init; } = 0.6;

    /// <summary>True for the field 'sheet n of m': the set fills it in when all its sheets are known.</summary>
    public bool IsSheetCount { get; init; }
}

/// <summary>A raster picture (PNG bytes) stretched over a box.</summary>
public sealed record ImageItem(ImmutableArray<byte> Png, Box Box) : Item;

/// <summary>A region that leads to another sheet or a named place on it.</summary>
public sealed record LinkItem(Box Box, string Target) : Item;

/// <summary>The inks of the sheets that are not wire colours.</summary>
public static class Ink
{
    public static readonly Rgb Black = Rgb.Hex("#16202A");
    public static readonly Rgb Secondary = Rgb.Hex("#5B6670");
    public static readonly Rgb Hairline = Rgb.Hex("#C3C9CF");
    public static readonly Rgb QuietFill = Rgb.Hex("#EEF1F4");
    public static readonly Rgb BodyFill = Rgb.Hex("#F7F8F9");

    /// <summary>Engine, wheels and the like, on the body.</summary>
    public static readonly Rgb PartFill = Rgb.Hex("#F0F2F4");
    public static readonly Rgb Caution = Rgb.Hex("#B3141C");
    public static readonly Rgb Paper = Rgb.Hex("#FFFFFF");
}

/// <summary>A paper size in millimetres as the sheet lies (width first).</summary>
public sealed record Paper(string Name, double WidthMm, double HeightMm);

/// <summary>
/// One page of the drawing set: geometry in millimetres on paper and nothing about file formats.
/// <paramref name="Name"/> is the file part ('wall-chart'); <see cref="Number"/> is null for a single page,
/// else the page of that sheet (1-based).
/// </summary>
public sealed record Sheet(string Name, string Title, Paper Paper, ImmutableArray<Item> Items)
{
    public int? Number { get; init; }

    /// <summary>True for the version in black ink only.</summary>
    public bool BlackInk { get; init; }

    /// <summary>BCP 47 language of the lettering.</summary>
    public string Language { get; init; } = "en";
}
