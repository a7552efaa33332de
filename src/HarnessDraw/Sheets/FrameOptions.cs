using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>The two forms of the title block: 180 x 62 mm for charts, 180 x 30 mm for A4 and A3 sheets.</summary>
public enum TitleBlockForm
{
    Chart,
    Small,
}

/// <summary>Choices for the frame.</summary>
public sealed record FrameOptions
{
    public TitleBlockForm Form { get; init; } = TitleBlockForm.Chart;

    /// <summary>How far the centring marks reach inside the frame, mm (ISO 5457: 5); 0 where a table fills the frame.</summary>
    public double CentringInsideMm { get; init; } = 5;

    /// <summary>The most revision lines shown; older ones are counted in words.</summary>
    public int RevisionLines { get; init; } = 6;
}

/// <summary>
/// A drawn frame. <paramref name="Inner"/> is free of frame and marks (the title box still lies in it); <paramref name="TitleBox"/>
/// holds title block, revision table and the NOT FOR BUILD stamp, in the lower right corner of the frame.
/// </summary>
public sealed record FrameLayout(ImmutableArray<Item> Items, Box Inner, Box TitleBox)
{
    public required GridBorder Border { get; init; }
}
