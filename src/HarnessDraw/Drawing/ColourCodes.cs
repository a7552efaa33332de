using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>
/// The letter codes of IEC 60757 and the additions for what it lacks: TN tan, CL clear, and L or D before a code for a light
/// or dark shade. Inks do not correct each other: brown is dark, violet darker than blue, turquoise lighter than grey.
/// </summary>
public static class ColourCodes
{
    private static readonly Rgb Brownish = Rgb.Hex("#4A4038");

    /// <summary>IEC 60757 first, in the order of that standard's table, then the additions.</summary>
    public static ImmutableArray<ColourCode> All { get; } =
    [
        Dark("BK", "black", "#1C1C1E") with { BlackSolid = true },
        Dark("BN", "brown", "#5C2406", 7, 0.8),
        Dark("RD", "red", "#EE1C3C", 3, 3),
        Pale("OG", "orange", "#F58713", Brownish, 0.8, 1.6),
        Pale("YE", "yellow", "#FFDF00", Ink.Black, 0.7, 5),
        Dark("GN", "green", "#066E12", 4, 1, 0.8, 1),
        Dark("BU", "blue", "#0F62DC", 4, 1, 0.8, 1, 0.8, 1),
        Dark("VT", "violet", "#6C1A8A", 1.8, 0.8, 1.8, 3),
        Pale("GY", "grey", "#989B8E", Brownish, 0.4, 0.4),
        Pale("WH", "white", "#FFFFFF", Ink.Black),
        Pale("PK", "pink", "#FDA8EA", Brownish, 0.7, 2.6, 0.7, 0.8),
        Pale("GD", "gold", "#B79B3A", Brownish, 2.4, 0.8, 0.6, 2.4),
        Pale("TQ", "turquoise", "#00A4AD", Rgb.Hex("#0B4B4E"), 1.6, 5),
        Pale("SR", "silver", "#C9CCD0", Brownish, 0.4, 1.2),
        Pale("TN", "tan", "#D2B48C", Brownish, 1.2, 1.2, 0.4, 1.2) with { Extension = true },
        Pale("CL", "clear", "#FFFFFF", Rgb.Hex("#8A929A"), 0.4, 8) with { Extension = true },
    ];

    /// <summary>The code's entry ('BU', 'LBU', 'DGN'), or null when there is no such code.</summary>
    public static ColourCode? Find(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return Plain(code) ?? (code.Length == 3 ? Shade(code) : null);
    }

    private static ColourCode? Plain(string code)
    {
        foreach (var known in All)
        {
            if (known.Code == code)
            {
                return known;
            }
        }

        return null;
    }

    // black, white, clear and the metals have no shades
    private static ColourCode? Shade(string code)
    {
        if (code[0] is not ('L' or 'D') || Plain(code[1..]) is not { } full || full.Code is "BK" or "WH" or "CL" or "GD" or "SR")
        {
            return null;
        }

        var light = code[0] == 'L';
        var ink = light ? Mix(full.Ink, Ink.Paper, 0.5) : Mix(full.Ink, Ink.Black, 0.45);
        return full with
        {
            Code = code,
            Word = (light ? "light " : "dark ") + full.Word,
            Ink = ink,
            Outline = light ? Brownish : null,
            Dark = !light,
            Extension = true,
        };
    }

    private static Rgb Mix(Rgb a, Rgb b, double share)
    {
        byte Channel(byte x, byte y) => (byte)Math.Round(x + ((y - x) * share));
        return new(Channel(a.R, b.R), Channel(a.G, b.G), Channel(a.B, b.B));
    }

    private static ColourCode Dark(string code, string word, string hex, params ImmutableArray<double> dash) =>
        new(code, word, Rgb.Hex(hex)) { BlackDashMm = dash, Dark = true };

    private static ColourCode Pale(string code, string word, string hex, Rgb outline, params ImmutableArray<double> dash) =>
        new(code, word, Rgb.Hex(hex)) { BlackDashMm = dash, Outline = outline };
}
