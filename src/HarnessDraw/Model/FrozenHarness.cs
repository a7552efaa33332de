using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>A wire as it was built: ends written 'thing.pin' or a splice, cut length in mm (null: unknown), half letter or null.</summary>
public sealed record FrozenWire(string Id, string Circuit, string Net, string From, string To, string Colour, string WireType, string Size, double? CutMm)
{
    public string? Half { get; init; }

    /// <summary>Segments it lies in, from the first end to the second.</summary>
    public ImmutableArray<string> Segments { get; init; } = [];
}

/// <summary>A cavity that a built harness has filled.</summary>
public sealed record FrozenCavity(string Connector, string Cavity, string Wire, string Net);

/// <summary>A splice as it was built: distance from the beginning of its segment, mm. Segments are numbered anew by each plan: the places at their ends tell them.</summary>
public sealed record FrozenSplice(string Id, string Net, string Segment, double AtMm)
{
    public string? From { get; init; }
    public string? To { get; init; }
}

/// <summary>What a built harness has, kept beside its description so that later edits keep it.</summary>
public sealed record FrozenHarness
{
    public required string Harness { get; init; }
    public required string Title { get; init; }

    /// <summary>Null in files of versions that did not say it.</summary>
    public string? Vehicle { get; init; }
    public required string? Revision { get; init; }
    public required string SourceHash { get; init; }
    public required ImmutableArray<FrozenWire> Wires { get; init; }
    public required ImmutableArray<FrozenCavity> Cavities { get; init; }
    public required ImmutableArray<FrozenSplice> Splices { get; init; }

    /// <summary>How its wall chart was laid out; null in files of versions that did not say it.</summary>
    public FrozenChart? Chart { get; init; }

    /// <summary>Half letter to the revision it was frozen at; halves that share a connector belong together.</summary>
    public required ImmutableSortedDictionary<string, string> HalfRevisions { get; init; }
}
