using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.FuseCards;

/// <summary>One position of a fuse card: the fuse, the colour of its body, and in plain words what it feeds.</summary>
internal sealed record FuseSeat(FuseChoice Fuse, string? BodyColour, string Feeds, bool AlwaysLive)
{
    /// <summary>More than its wires bear: the card says so instead of hiding it.</summary>
    public bool TooLarge => Fuse is { RatingA: { } rating, LargestA: { } largest } && rating > largest + 1e-9;
}

/// <summary>The fuses of one panel, in the order of their names.</summary>
internal sealed record FusePanelSeats(string Title, string Where, ImmutableArray<FuseSeat> Seats)
{
    /// <summary>What a blank position takes: the kind of the last one; null: each sits by itself, there are no blanks.</summary>
    public ProtectionKind? Blanks { get; init; }

    /// <summary>The panels of a plan; fuses that sit in a lead by themselves come last, as one group.</summary>
    public static ImmutableArray<FusePanelSeats> Of(Plan plan)
    {
        var byPanel = plan.Fuses.GroupBy(f => plan.Harness.Protections.FirstOrDefault(p => p.Id == f.Id)?.On ?? "", StringComparer.Ordinal);
        return [.. byPanel.OrderBy(g => g.Key.Length == 0).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => Panel(plan, g.Key, g))];
    }

    private static FusePanelSeats Panel(Plan plan, string on, IEnumerable<FuseChoice> fuses)
    {
        var seats = fuses.OrderBy(f => f.Id, CavityOrder.Instance).Select(f => Seat(plan, f)).ToImmutableArray();
        if (plan.Harness.Things.FirstOrDefault(t => t.Id == on) is not { } thing)
        {
            return new("IN THE WIRING", "each in its own holder", seats);
        }

        return new(thing.Label.ToUpperInvariant(), $"at {thing.Place}{(thing.Side == Side.Cabin ? ", cabin" : "")}", seats) { Blanks = seats[^1].Fuse.Kind };
    }

    private static FuseSeat Seat(Plan plan, FuseChoice fuse)
    {
        var wires = plan.Wires.Where(w => fuse.Wires.Contains(w.Id)).ToList();
        var behind = plan.Harness.Circuits.Where(c => !c.IsReturn && wires.Any(w => w.Circuit == c.Id)).ToList();
        // a circuit whose wires all stay in the vehicle is still what the fuse feeds; one that only leads to a switch is told by what comes behind it
        var kept = plan.Harness.KeptCircuits().Where(c => c.From!.Thing == fuse.Id || c.ProtectedBy.Contains(fuse.Id)).ToList();
        var loads = kept.Where(c => c.Feeds.Any(f => plan.Harness.ThingOf(f.Thing).Kind is not (ThingKind.Switch or ThingKind.FusePanel or ThingKind.Fuse))).ToList();
        var named = behind.Concat(loads).ToList() is { Count: > 0 } all ? all : [.. kept.Concat(plan.Harness.Circuits.Where(c => c.ProtectedBy.Contains(fuse.Id))).Distinct()];
        var colour = plan.Harness.Catalogue.Fuses.Where(s => s.Kind == fuse.Kind).SelectMany(s => s.Ratings).FirstOrDefault(r => r.RatingA == fuse.RatingA)?.Colour;
        var holder = plan.Harness.Protections.FirstOrDefault(p => p.Id == fuse.Id)?.On is null && plan.Harness.Things.FirstOrDefault(t => t.Id == fuse.Id) is { } own ? $"at {own.Place}: " : "";
        var words = named.Count == 0 ? "nothing in this build" : string.Join(", ", named.Select(c => c.Id));
        return new(fuse, colour, holder + words, named.Count > 0 && named.All(c => c.LiveWith == KeyPosition.Off));
    }
}
