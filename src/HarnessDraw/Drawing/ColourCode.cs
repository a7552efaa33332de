using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>
/// One colour letter code with its word, the ink it is drawn in (not the colour of real insulation: hues are moved apart in
/// lightness so that they differ to every eye), its outline on white paper, and its pattern when there is only black ink.
/// </summary>
public sealed record ColourCode(string Code, string Word, Rgb Ink)
{
    /// <summary>Colour of the outline that pale inks need; null for none.</summary>
    public Rgb? Outline { get; init; }

    /// <summary>Dash and gap lengths of the black core, mm; empty for a solid or an empty core.</summary>
    public ImmutableArray<double> BlackDashMm { get; init; } = [];

    /// <summary>The core is solid in black ink.</summary>
    public bool BlackSolid { get; init; }

    /// <summary>As a tracer in black ink it is one solid bar; a pale one is two thin strokes.</summary>
    public bool Dark { get; init; }

    /// <summary>Not in IEC 60757: an addition of this program, listed in the glossary.</summary>
    public bool Extension { get; init; }
}
