using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Svg;

/// <summary>Choices for SVG output. The defaults name the faces and leave them out of the file.</summary>
public sealed record SvgOptions
{
    /// <summary>Put the faces a sheet uses into the file (base64), for viewers that do not have them.</summary>
    public bool EmbedFonts { get; init; }

    public FaceSet Faces { get; init; } = FaceSet.Shipped;

    /// <summary>
    /// The file a link to another sheet leads to, or null for none. Gets the target without '#...'; links inside the sheet need no answer.
    /// </summary>
    public Func<string, string?>? LinkedFile { get; init; }

    /// <summary>Put before every id when several drawings share one page; loads and fuses are then named too. Null: a file of its own.</summary>
    public string? PagePart { get; init; }
}
