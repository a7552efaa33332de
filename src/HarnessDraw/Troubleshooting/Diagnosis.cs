using System.Collections.Immutable;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Troubleshooting;

/// <summary>What is likely wrong with a vehicle after what was noted, and what to do next.</summary>
public sealed record Diagnosis
{
    public required FaultBench Bench { get; init; }
    public required Evidence Evidence { get; init; }

    /// <summary>Names that are none, contradictions, and what is to be said of the complaint as a whole.</summary>
    public required ImmutableArray<Diagnostic> Said { get; init; }

    /// <summary>In plain words: everything dead, nothing wrong, no single fault explains all.</summary>
    public required ImmutableArray<string> Remarks { get; init; }

    /// <summary>Likeliest group first.</summary>
    public required ImmutableArray<ExplainedGroup> Groups { get; init; }

    /// <summary>Two faults at once, only where no single one explains everything; likeliest first.</summary>
    public ImmutableArray<FaultPair> Pairs { get; init; } = [];

    /// <summary>The test that tells most a minute; null: nothing more can be told without unplugging, or all is clear.</summary>
    public NextTest? Next { get; init; }

    /// <summary>How many faults were tried.</summary>
    public required int Tried { get; init; }
}

/// <summary>Suspects that cannot be told apart, and why they are suspected.</summary>
public sealed record ExplainedGroup(SuspectGroup Group, ImmutableArray<string> Explains, ImmutableArray<string> Unexplained);

/// <summary>Two faults at once that explain everything. <paramref name="Shared"/>: what they have in common, or null.</summary>
public sealed record FaultPair(Fault First, Fault Second, string? Shared);
