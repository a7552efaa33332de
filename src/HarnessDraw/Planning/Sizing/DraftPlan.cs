using System.Collections.Immutable;
using HarnessDraw.Planning.Splicing;

namespace HarnessDraw.Planning.Sizing;

/// <summary>The plan so far, with what the network of its states needs: wires between their ends, segments with their zones, fuse ratings. Nothing has its name yet.</summary>
internal static class DraftPlan
{
    public static Plan Of(RoutedHarness routed, IEnumerable<KeyValuePair<string, ChosenRating>> fuses) => new()
    {
        Harness = routed.Index.Harness,
        Tree = TreeMaker.Skeleton(routed.Tree),
        Wires = [],
        Splices = [],
        Cavities = [],
        Fuses = [.. fuses.Select(f => new FuseChoice { Id = f.Key, Kind = routed.Index.Protection(f.Key)!.Kind, RatingA = f.Value.RatingA, LargestA = null, Wires = [] })],
        Nodes = [],
        GivenBeyondLoadsA = routed.Flow.ExtraLoadA.ToImmutableSortedDictionary(StringComparer.Ordinal),
        Builds = [],
        BuildCount = 0,
        PlanningFindings = [],
        RoutingObjective = "",
    };

    public static Wire WireOf(HarnessIndex index, TerminalChooser terminals, WireRow row, int number) => new()
    {
        Id = $"{number}",
        Circuit = row.Circuit.Id,
        Net = row.Net.Id,
        From = End(index, terminals, row, row.Draft.From, row.FromCavity),
        To = End(index, terminals, row, row.Draft.To, row.ToCavity),
        Colour = "",
        WireType = row.Type.Id,
        AreaMm2 = row.SizeNow.AreaMm2,
        SizeLabel = row.SizeNow.Label,
        OutsideMm = row.SizeNow.OutsideMm,
        PathLengthMm = row.PathMm,
        CutLengthMm = row.ConductorMm,
        Segments = row.SegmentIds,
        Builds = row.Draft.Builds,
        DecidedBy = "",
    };

    private static WireEnd End(HarnessIndex index, TerminalChooser terminals, WireRow row, DraftEnd end, string? cavity) => end.Pin is { } pin
        ? new(pin.Thing, index.PinOf(pin)?.Name ?? pin.Pin ?? "") { Terminal = TerminalChooser.Fitting(terminals.For(pin, cavity), row.SizeNow)?.Id }
        : new($"{end.Splice}", null) { IsSplice = true };
}
