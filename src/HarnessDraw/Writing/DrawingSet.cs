using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;

namespace HarnessDraw.Writing;

/// <summary>A sheet that fits no paper, and what would fit.</summary>
public sealed record RefusedSheet(string Kind, string Because);

/// <summary>The sheets of a run with the plan they show and everything that was found in both.</summary>
public sealed record DrawingSet(CheckedPlan Planned, ImmutableArray<Sheet> Sheets)
{
    /// <summary>Pieces of the wall chart for small paper; not part of the set's own PDF.</summary>
    public ImmutableArray<Sheet> Tiles { get; init; } = [];
    public ChartFigures? Figures { get; init; }
    public ImmutableArray<RefusedSheet> Refused { get; init; } = [];

    /// <summary>What the print and drawing rules find on the sheets; they look when it is first asked for, which may be while the sheets are written.</summary>
    public ImmutableArray<Finding> SheetFindings => OnSheets.Value;

    internal Lazy<ImmutableArray<Finding>> OnSheets { get; init; } = new([]);

    public ImmutableArray<Finding> Findings => [.. Planned.Findings, .. SheetFindings];
}
