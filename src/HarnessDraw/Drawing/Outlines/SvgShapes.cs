using System.Collections.Immutable;
using Svg;

namespace HarnessDraw.Drawing.Outlines;

/// <summary>Walks a loaded SVG document and turns every drawn shape into an outline with all moves and turns applied.</summary>
internal sealed class SvgShapes(SvgDocument document)
{
    private const int DeepestNest = 200;
    private const int MostShapes = 20_000;
    private const int MostVisits = 500_000; // parts that show each other many times over
    private readonly ImmutableArray<DrawnShape>.Builder shapes = ImmutableArray.CreateBuilder<DrawnShape>();
    private int visits;

    public ImmutableArray<DrawnShape> Read()
    {
        Walk(document, Affine.None, 0);
        return shapes.ToImmutable();
    }

    private void Walk(SvgElement element, Affine outer, int depth)
    {
        if (++visits > MostVisits || depth > DeepestNest || shapes.Count >= MostShapes || element is SvgDefinitionList or SvgClipPath or SvgMask or SvgSymbol or SvgPatternServer or SvgMarker || IsHidden(element))
        {
            return;
        }

        var affine = outer.Then(Affine.Of(element.Transforms));
        if (element is SvgUse use)
        {
            // only a part of the same document is followed
            if (use.ReferencedElement is { } target && target.ToString().StartsWith('#') && document.GetElementById(target.ToString()[1..]) is { } part)
            {
                Walk(part, affine.Then(Affine.Move(use.X.Value, use.Y.Value)), depth + 10);
            }

            return;
        }

        if (SvgSteps.Of(element, affine) is { Steps.IsEmpty: false } outline)
        {
            shapes.Add(Shape(element, outline, affine));
        }

        foreach (var child in element.Children)
        {
            Walk(child, affine, depth + 1);
        }
    }

    private static bool IsHidden(SvgElement element) => element is SvgVisualElement { Visible: false } || element.Display == "none";

    private static DrawnShape Shape(SvgElement element, Outline outline, Affine affine) => new(outline)
    {
        Fill = Colour(element.Fill),
        Stroke = Colour(element.Stroke),
        StrokeWidth = element.StrokeWidth.Value * affine.Scale,
    };

    private static Rgb? Colour(SvgPaintServer? paint) =>
        paint is SvgColourServer server && server != SvgPaintServer.None && server != SvgPaintServer.NotSet
            ? new(server.Colour.R, server.Colour.G, server.Colour.B)
            : null;
}
