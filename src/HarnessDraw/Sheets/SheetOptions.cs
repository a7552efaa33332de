using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Which units a sheet prints beside each other; the design unit comes first.</summary>
public enum UnitsShown
{
    Metric,
    Inch,
    Both,
}

/// <summary>What the person asked of a sheet.</summary>
public sealed record SheetOptions
{
    /// <summary>Paper to use; null takes the smallest that fits.</summary>
    public Paper? Paper { get; init; }

    /// <summary>Small paper that the sheet is to be cut onto besides; null: none.</summary>
    public Paper? TileOnto { get; init; }

    /// <summary>True when several wall charts may be drawn where the paper asked for is too small for one.</summary>
    public bool SeveralCharts { get; init; }
    public bool BlackInk { get; init; }

    /// <summary>On the wall chart a bundle of more wires than this is one band with its count; 0: every wire has its lane.</summary>
    public int BandOver { get; init; }

    /// <summary>On the wall chart lengths between places are drawn at one scale where the paper allows.</summary>
    public bool TrueToScale { get; init; }

    /// <summary>The build to show (option to choice); null shows everything the harness may hold.</summary>
    public ImmutableSortedDictionary<string, string>? Build { get; init; }

    /// <summary>Sheets that go circuit by circuit (traces, projector) show these circuits alone; null: all.</summary>
    public ImmutableArray<string>? About { get; init; }

    /// <summary>True for a class: steps say what commonly goes wrong beside why they are done so.</summary>
    public bool Teaching { get; init; }
    public UnitsShown Units { get; init; } = UnitsShown.Metric;

    /// <summary>The rules the plan was checked by: 'built in', or the file with thresholds of the owner's.</summary>
    public string Rules { get; init; } = "built in";

    /// <summary>Drawn in the title block; null when the description names none.</summary>
    public DrawnOutlines? Logo { get; init; }

    /// <summary>What is marked as changed against a built state; null: nothing is compared.</summary>
    public ChangeMarks? Changes { get; init; }
}

/// <summary>The figures of the wall chart that the plan's JSON carries. Bounds are null where not proven, with the reason.</summary>
public sealed record ChartFigures
{
    public required int Crossings { get; init; }
    public int? CrossingsStraightLaneBound { get; init; }
    public int? CrossingsLowerBound { get; init; }
    public string? BoundReason { get; init; }
    public required string Paper { get; init; }

    /// <summary>The scale and how many lengths are to it, a chart after the other; null: nobody asked for a scale.</summary>
    public string? ToScale { get; init; }
}

/// <summary>The pages of one kind of sheet, or why there are none ('needs A1: ...').</summary>
public sealed record SheetResult(ImmutableArray<Sheet> Sheets)
{
    public ChartFigures? Figures { get; init; }
    public string? Refused { get; init; }
}
