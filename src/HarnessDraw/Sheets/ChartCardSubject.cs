using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>A row of a card or of the pin table: the wire, and the pin it ends on there.</summary>
internal sealed record ChartRow(Wire Wire, string Pin);

/// <summary>A wire that ends beside its card: the mark of the ground point, or what the far end is called.</summary>
internal sealed record ChartStub(Wire Wire, string Pin, string To, bool IsGround);

/// <summary>A load's table on the chart.</summary>
internal sealed class ChartCardSubject
{
    /// <summary>Its place in the list of cards.</summary>
    public required int Number { get; init; }
    public required string Key { get; init; }
    public required string Place { get; init; }
    public required string Name { get; set; }
    public string? SideMark { get; set; }
    public BuildCondition OnlyWith { get; set; } = BuildCondition.Always;
    public bool IsGround { get; set; }
    public Dictionary<(int Lane, int End), ChartRow> Rows { get; } = [];
    public List<ChartStub> Stubs { get; } = [];
    public int Node { get; set; } = -1;

    /// <summary>What other charts show of this load ('3 more on charts 1, 4'); null when all is here.</summary>
    public string? Elsewhere { get; set; }
}

/// <summary>An edge of the drawn tree: the plan's segments it stands for, from the parent on.</summary>
internal sealed record ChartEdge(ImmutableArray<Segment> Segments)
{
    public bool IsEstimated => Segments.Any(s => s.Estimated || s.Assumed);

    public double? LengthMm => Segments.Any(s => s.LengthMm is null) ? null : Segments.Sum(s => s.LengthMm!.Value);
}
