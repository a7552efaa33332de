using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>Something that leaves the bundle at a place: a segment that goes on, or a thing that sits there.</summary>
public sealed record LeafItem(Segment? Segment, string? Thing, double AngleRad);

/// <summary>
/// The depth-first order of everything at the ends of the tree, as the wall chart with its nose to the left shows it from the top. At each place items are taken anticlockwise as seen
/// from above, starting at the way back to the root: segments by their true angle, things straight ahead; ties segments first, by name, then things as the
/// description lists them. At the root the way back points away from the nose. Cavities use this order.
/// </summary>
public sealed class LeafOrder
{
    private readonly Dictionary<string, ImmutableArray<LeafItem>> rotation = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> place = new(StringComparer.Ordinal);

    private LeafOrder(ImmutableArray<string> things)
    {
        Things = things;
        for (var i = 0; i < things.Length; i++)
        {
            place[things[i]] = i;
        }
    }

    /// <summary>Ids of the things in the order in which a walk round the tree meets them.</summary>
    public ImmutableArray<string> Things { get; }

    /// <summary>Number of a thing in the walk; things that are not on the tree come last.</summary>
    public int IndexOf(string thing) => place.GetValueOrDefault(thing, int.MaxValue);

    /// <summary>What leaves at a place, anticlockwise from the way back.</summary>
    public ImmutableArray<LeafItem> Rotation(string placeId) => rotation.GetValueOrDefault(placeId, []);

    public static LeafOrder Of(HarnessTree tree, Harness harness)
    {
        ArgumentNullException.ThrowIfNull(tree);
        ArgumentNullException.ThrowIfNull(harness);
        var places = harness.Layout.Places.GroupBy(p => p.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
        var below = tree.Segments.ToLookup(s => s.From, StringComparer.Ordinal);
        var sitting = harness.Things.Where(t => t.Side == Side.Bay).ToLookup(t => t.Place, StringComparer.Ordinal);
        var rotations = new List<(string Place, ImmutableArray<LeafItem> Items)>();
        var things = ImmutableArray.CreateBuilder<string>();
        void Walk(string at, string? from)
        {
            var back = from is null ? Math.PI : Angle(places, at, from);
            ImmutableArray<LeafItem> items =
            [
                .. below[at].Select(s => new LeafItem(s, null, Clockwise(Angle(places, at, s.To), back)))
                    .Concat(sitting[at].Select(t => new LeafItem(null, t.Id, Math.PI)))
                    .OrderByDescending(i => Math.Round(i.AngleRad, 9)).ThenBy(i => i.Segment is null).ThenBy(i => i.Segment?.To, StringComparer.Ordinal),
            ];
            rotations.Add((at, items));
            foreach (var item in items)
            {
                if (item.Segment is { } segment)
                {
                    Walk(segment.To, at);
                }
                else
                {
                    things.Add(item.Thing!);
                }
            }
        }

        Walk(tree.Root, null);
        var order = new LeafOrder(things.ToImmutable());
        foreach (var (id, items) in rotations)
        {
            order.rotation[id] = items;
        }

        return order;
    }

    /// <summary>From above with x to the right, y (the vehicle's right) is down, so a growing angle turns clockwise.</summary>
    private static double Angle(Dictionary<string, Place> places, string from, string to) =>
        places.TryGetValue(from, out var a) && places.TryGetValue(to, out var b) ? Math.Atan2(b.Ymm - a.Ymm, b.Xmm - a.Xmm) : 0;

    private static double Clockwise(double angle, double from)
    {
        var turn = (angle - from) % (2 * Math.PI);
        return turn <= 1e-12 ? turn + (2 * Math.PI) : turn;
    }
}
