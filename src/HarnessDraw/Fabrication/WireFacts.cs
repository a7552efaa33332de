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
        Splice[] met = [.. Ends(wire).Where(e => e.IsSplice && splices.ContainsKey(e.At)).Select(e => splices[e.At]).Distinct().OrderBy(s => s.Order).Select(s => s.Splice)];
        return new(BranchOf(wire), [.. met.Select(s => s.Id)], met.Length > 0 ? met[0].StationMm : null, maxC.TryGetValue(wire.WireType, out var celsius) ? celsius : null);
    }

    /// <summary>The branch a wire goes to: that of the end farther out; a wire between two things of one branch stays in it. Null: no named branch.</summary>
    public string? BranchOf(Wire wire)
    {
        ArgumentNullException.ThrowIfNull(wire);
        return Ends(wire).Where(e => !e.IsSplice).Select(e => BranchOf(placeOfThing.GetValueOrDefault(e.At))).FirstOrDefault(b => b is not null);
    }

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

    private static IEnumerable<WireEnd> Ends(Wire wire) => [wire.To, wire.From];
}
