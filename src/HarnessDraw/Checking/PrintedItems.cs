using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Checking;

/// <summary>Items of a sheet as they lie on paper: groups opened, moved and scaled; what a clip hides is left out. Turned groups keep their upright boxes.</summary>
internal sealed record PrintedItem(Item Item, Box Box, double Scale)
{
    public static List<PrintedItem> Of(ImmutableArray<Item> items)
    {
        var printed = new List<PrintedItem>(items.Length);
        foreach (var item in items)
        {
            Add(item, new(0, 0, 1), null, printed);
        }

        return printed;
    }

    private static void Add(Item item, Place place, Box? clip, List<PrintedItem> printed)
    {
        if (item is not GroupItem group)
        {
            if (ItemBounds.Of(item) is { } own && place.Of(own) is var box && (clip is not { } window || box.Overlaps(window)))
            {
                printed.Add(new(item, box, place.Scale));
            }

            return;
        }

        // a turned group is rare and small: it counts as one box
        if (group.TurnDegrees != 0)
        {
            foreach (var inside in group.Items)
            {
                if (inside is not GroupItem && ItemBounds.Of(group with { Items = [inside] }) is { } turned)
                {
                    printed.Add(new(inside, place.Of(turned), place.Scale * group.Scale));
                }
            }

            return;
        }

        var inner = new Place(place.X + (place.Scale * group.MoveXMm), place.Y + (place.Scale * group.MoveYMm), place.Scale * group.Scale);
        foreach (var inside in group.Items)
        {
            Add(inside, inner, group.Clip is { } cut ? inner.Of(cut) : clip, printed);
        }
    }

    private readonly record struct Place(double X, double Y, double Scale)
    {
        public Box Of(Box box) => new(X + (Scale * box.X), Y + (Scale * box.Y), Scale * box.Width, Scale * box.Height);
    }
}
