using HarnessDraw.Drawing;

namespace HarnessDraw.Writing.Pdf;

/// <summary>What a PDF says about itself. No date: the same set gives the same file.</summary>
public sealed record PdfOptions(string Title)
{
    public string? Author { get; init; }
    public string? Subject { get; init; }

    /// <summary>BCP 47 language of the lettering.</summary>
    public string Language { get; init; } = "en";

    public FaceSet Faces { get; init; } = FaceSet.Shipped;
}
