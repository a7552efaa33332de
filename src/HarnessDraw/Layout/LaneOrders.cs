using System.Collections.Concurrent;

namespace HarnessDraw.Layout;

/// <summary>
/// Where the lanes that arrive at splices run, found once for every shape that the tree of some lanes is drawn in: drafts that differ in their letters or in the height of
/// their columns alone often have one shape. Drafts may ask side by side.
/// </summary>
public sealed class LaneOrders
{
    private readonly ConcurrentDictionary<string, Lazy<ChartLanes>> found = new(StringComparer.Ordinal);

    internal ChartLanes Of(List<Spine> spines, Func<ChartLanes> find) => found.GetOrAdd(ShapeOf(spines), _ => new(find)).Value;

    // all that the order rests on: what leaves where, in which order, and where splices sit
    private static string ShapeOf(List<Spine> spines)
    {
        var shape = new List<int>();
        foreach (var spine in spines)
        {
            shape.AddRange(spine.Parent?.Index ?? -1, spine.Stations.Count, spine.EndCards.Count);
            shape.AddRange(spine.EndCards);
            foreach (var station in spine.Stations)
            {
                shape.AddRange(station.Splices.Count, station.Left.Count, station.Right.Count);
                shape.AddRange(station.Splices);
                Add(station.Left);
                Add(station.Right);
            }
        }

        return string.Join(' ', shape);

        // a card by its number, a branch by that of its spine below all cards
        void Add(List<SpineItem> items) => shape.AddRange(items.ConvertAll(item => item.Child is { } child ? -1 - child.Index : item.Card));
    }
}
