using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>What the rest of the plan says of a wire: its branch, the splices at its ends, the temperature class of its type.</summary>
public sealed record WireFacts(string? Branch, ImmutableArray<string> Splices, double? SpliceStationMm, double? MaxC);

/// <summary>Finds the facts of the wires of one plan; things, places and splices are looked up by name, each branch is found once.</summary>
public sealed class WireFactFinder
{
    private readonly Dictionary<string, string> placeOfThing = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string?> branchAt = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> above = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Splice Splice, int Order)> splices = new(StringComparer.Ordinal);
    private readonly Dictionary<string, double> maxC = new(StringComparer.Ordinal);

    public WireFactFinder(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        foreach (var thing in plan.Harness.Things)
        {
            placeOfThing.TryAdd(thing.Id, thing.Place);
        }

        foreach (var place in plan.Harness.Layout.Places.Where(p => p.Branch is not null))
        {
            branchAt.TryAdd(place.Id, place.Branch);
        }

        foreach (var segment in plan.Tree.Segments)
        {
            above.TryAdd(segment.To, segment.From);
        }

        foreach (var splice in plan.Splices)
        {
            splices.TryAdd(splice.Id, (splice, splices.Count));
        }

        foreach (var type in plan.Harness.Catalogue.WireTypes)
        {
            maxC.TryAdd(type.Id, type.MaxC);
        }
    }

    public WireFacts Of(Wire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        var (first, second) = (SpliceAt(wire.To), SpliceAt(wire.From));
        if (first is null || (second is not null && second.Value.Order < first.Value.Order))
        {
            (first, second) = (second, first);
        }

        ImmutableArray<string> met = first is null ? [] : second is null || second == first ? [first.Value.Splice.Id] : [first.Value.Splice.Id, second.Value.Splice.Id];
        return new(BranchOf(wire), met, first?.Splice.StationMm, maxC.TryGetValue(wire.WireType, out var celsius) ? celsius : null);
    }

    /// <summary>The branch a wire goes to: that of the end farther out; a wire between two things of one branch stays in it. Null: no named branch.</summary>
    public string? BranchOf(Wire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return BranchAt(wire.To) ?? BranchAt(wire.From);
    }

    private (Splice Splice, int Order)? SpliceAt(WireEnd end) => end.IsSplice && splices.TryGetValue(end.At, out var met) ? met : null;

    private string? BranchAt(WireEnd end) => end.IsSplice ? null : BranchOf(placeOfThing.GetValueOrDefault(end.At));

    /// <summary>The branch that a place hangs on: its own, or the nearest named one towards the root.</summary>
    private string? BranchOf(string? place)
    {
        var passed = new List<string>();
        string? branch = null;
        for (; place is not null && !branchAt.TryGetValue(place, out branch) && passed.Count <= above.Count; place = above.GetValueOrDefault(place))
        {
            passed.Add(place);
        }

        foreach (var p in passed)
        {
            branchAt[p] = branch;
        }

        return branch;
    }
}
