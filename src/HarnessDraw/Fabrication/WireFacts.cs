using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>What the rest of the plan says of a wire: its branch, the splices at its ends, the temperature class of its type.</summary>
public sealed record WireFacts(string? Branch, ImmutableArray<string> Splices, double? SpliceStationMm, double? MaxC)
{
    public static WireFacts Of(Plan plan, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wire);
        var splices = plan.Splices.Where(s => Ends(wire).Any(e => e.IsSplice && e.At == s.Id)).ToList();
        var type = plan.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == wire.WireType);
        return new(BranchOf(plan, wire), [.. splices.Select(s => s.Id)], splices.Count > 0 ? splices[0].StationMm : null, type?.MaxC);
    }

    /// <summary>The branch a wire goes to: that of the end farther out; a wire between two things of one branch stays in it. Null: no named branch.</summary>
    public static string? BranchOf(Plan plan, Wire wire)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(wire);
        foreach (var end in new[] { wire.To, wire.From }.Where(e => !e.IsSplice))
        {
            if (BranchOf(plan, plan.Harness.Things.FirstOrDefault(t => t.Id == end.At)?.Place) is { } branch)
            {
                return branch;
            }
        }

        return null;
    }

    /// <summary>The branch that a place hangs on: its own, or the nearest named one towards the root.</summary>
    public static string? BranchOf(Plan plan, string? place)
    {
        ArgumentNullException.ThrowIfNull(plan);
        for (var guard = 0; place is not null && guard <= plan.Tree.Segments.Length; guard++)
        {
            if (plan.Harness.Layout.Places.FirstOrDefault(p => p.Id == place)?.Branch is { } branch)
            {
                return branch;
            }

            place = plan.Tree.Above(place)?.From;
        }

        return null;
    }

    private static IEnumerable<WireEnd> Ends(Wire wire) => [wire.From, wire.To];
}
