using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Checking;

/// <summary>Items of a sheet as they lie on paper: groups opened, moved and scaled; what a clip hides is left out. Turned groups keep their upright boxes.</summary>
internal sealed record PrintedItem(Item Item, Box Box, double Scale)
{
    public static IEnumerable<PrintedItem> Of(ImmutableArray<Item> items) => items.SelectMany(i => Of(i, new(0, 0, 1), null));

    private static IEnumerable<PrintedItem> Of(Item item, Place place, Box? clip)
    {
        if (item is not GroupItem group)
        {
            if (ItemBounds.Of(item) is { } own && place.Of(own) is var box && (clip is not { } window || box.Overlaps(window)))
            {
                yield return new(item, box, place.Scale);
            }

            yield break;
        }

        // a turned group is rare and small: it counts as one box
        if (group.TurnDegrees != 0)
        {
            foreach (var inside in group.Items.SelectMany(i => i is GroupItem ? [] : new[] { i }))
            {
                if (ItemBounds.Of(group with { Items = [inside] }) is { } turned)
                {
                    yield return new(inside, place.Of(turned), place.Scale * group.Scale);
                }
            }

            yield break;
        }

        var inner = new Place(place.X + (place.Scale * group.MoveXMm), place.Y + (place.Scale * group.MoveYMm), place.Scale * group.Scale);
        foreach (var inside in group.Items.SelectMany(i => Of(i, inner, group.Clip is { } cut ? inner.Of(cut) : clip)))
        {
            yield return inside;
        }
    }

    private readonly record struct Place(double X, double Y, double Scale)
    {
        public Box Of(Box box) => new(X + (Scale * box.X), Y + (Scale * box.Y), Scale * box.Width, Scale * box.Height);
    }
}
