using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>One line of the revision table.</summary>
public sealed record RevisionLine(string Rev, string Date, string Changed, string Where = "", string By = "");

/// <summary>
/// What the title block says: the fields of ISO 7200 and those the trade adds (build, waivers, source hash). Pure text: dates
/// come from the description, never from a clock. Empty values leave their field blank to be filled in by hand.
/// </summary>
public sealed record TitleBlock
{
    /// <summary>The legal owner of the drawing.</summary>
    public string Owner { get; init; } = "";

    /// <summary>The owner's logo, at the right of the title; null when there is none.</summary>
    public DrawnOutlines? Logo { get; init; }

    /// <summary>The vehicle, set largest.</summary>
    public required string Vehicle { get; init; }

    /// <summary>What the sheet shows: 'Cut list by reel'.</summary>
    public required string Title { get; init; }

    /// <summary>The build in words: 'A/C: yes, fog lamps: no'.</summary>
    public string Build { get; init; } = "";

    /// <summary>Identification number of the drawing.</summary>
    public string Number { get; init; } = "";
    public string Rev { get; init; } = "";
    public string Date { get; init; } = "";

    /// <summary>The creator (ISO 7200).</summary>
    public string Drawn { get; init; } = "";
    public string Approved { get; init; } = "";
    public string Checked { get; init; } = "";

    /// <summary>Document type: 'wall chart'.</summary>
    public string Type { get; init; } = "";
    public string Language { get; init; } = "en";
    public string Scale { get; init; } = "not to scale";

    /// <summary>Sheet of the set, 1-based.</summary>
    public int Sheet { get; init; } = 1;
    public int Sheets { get; init; } = 1;

    /// <summary>Number of waivers, or 'none'; the wall chart lists them.</summary>
    public string Waivers { get; init; } = "none";

    /// <summary>The rules the plan was checked by.</summary>
    public string Rules { get; init; } = "built in";

    /// <summary>Short hash of the description the set was made from.</summary>
    public string Source { get; init; } = "";

    /// <summary>A sentence at the foot of the chart's block.</summary>
    public string Note { get; init; } = "";

    /// <summary>Oldest first; the newest is drawn on top.</summary>
    public ImmutableArray<RevisionLine> Revisions { get; init; } = [];

    /// <summary>Why the sheet must not be built from ('3 errors'); null when nothing speaks against it.</summary>
    public string? NotForBuild { get; init; }
}
