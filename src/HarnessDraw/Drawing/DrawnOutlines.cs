using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>One shape of a picture that a user brought, in the picture's own coordinates.</summary>
public sealed record DrawnShape(Outline Outline)
{
    public Rgb? Fill { get; init; }
    public Rgb? Stroke { get; init; }

    /// <summary>Width of the line in the picture's units; 0 when there is none.</summary>
    public double StrokeWidth { get; init; }
}

/// <summary>A body outline or logo as shapes; <paramref name="ViewBox"/> is the picture's frame in the same units.</summary>
public sealed record DrawnOutlines(ImmutableArray<DrawnShape> Shapes, Box ViewBox)
{
    /// <summary>The shapes as items stretched evenly into a box and centred there; for a backdrop pass its line and fill, else its own colours show.</summary>
    public GroupItem Fit(Box box, ItemRole role = ItemRole.Backdrop, Stroke? line = null, Rgb? fill = null)
    {
        var scale = Math.Min(box.Width / ViewBox.Width, box.Height / ViewBox.Height);
        var items = Shapes.Select(s => (Item)new PathItem(s.Outline)
        {
            Role = role,
            Fill = line is null ? s.Fill : fill,
            Stroke = line is not null
                ? line with { WidthMm = line.WidthMm / scale }
                : s.Stroke is { } colour ? new Stroke(colour, s.StrokeWidth) : null,
        });
        return new([.. items])
        {
            Role = role,
            Scale = scale,
            MoveXMm = box.Centre.X - (scale * ViewBox.Centre.X),
            MoveYMm = box.Centre.Y - (scale * ViewBox.Centre.Y),
        };
    }
}
