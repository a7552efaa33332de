using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Sheets;

namespace HarnessDraw.Tests.Writing;

/// <summary>A sheet with every kind of item: frame, lanes in every colour, swatches, two faces, turned and clipped groups, links.</summary>
internal static class SampleSheet
{
    public static Sheet Make(Paper paper, bool black = false)
    {
        var frame = Frame.Compose(paper, FrameTests.Full(), new() { Form = TitleBlockForm.Small });
        var items = ImmutableArray.CreateBuilder<Item>();
        items.AddRange(frame.Items);
        AddLegend(items, frame.Inner, black);
        AddBundle(items, frame.Inner, black);
        items.Add(new TextItem("→ Жгут ≤ 2.5 мм² Ωμέγα 0O 1Il", new(frame.Inner.X + 70, frame.Inner.Y + 100), 5) { Role = ItemRole.Lettering, Weight = FaceWeight.Bold });
        items.Add(new TextItem("turned", new(frame.Inner.X + 66, frame.Inner.Y + 80), 3.5) { Role = ItemRole.Lettering, TurnDegrees = -90 });
        items.Add(new GroupItem([new PathItem(Outline.Circle(new(0, 0), 10)) { Fill = Ink.Caution }]) { MoveXMm = frame.Inner.X + 80, MoveYMm = frame.Inner.Y + 120, Clip = new(-10, -10, 10, 20), Name = "clipped" });
        items.Add(new LinkItem(new(frame.Inner.X + 70, frame.Inner.Y + 90, 20, 10), "#frame"));
        var all = items.ToImmutable();
        return new("sample", "Sample", paper, black ? BlackInkFilter.Apply(all) : all) { BlackInk = black };
    }

    private static void AddLegend(ImmutableArray<Item>.Builder items, Box inner, bool black)
    {
        var y = inner.Y + 5;
        foreach (var code in ColourCodes.All)
        {
            items.AddRange(Swatch.Paint(new(code), new(inner.X, y, 5.6, 2.5), black));
            items.Add(new TextItem($"{code.Code} {code.Word}", new(inner.X + 8, y + 2.5), 2.5) { Role = ItemRole.Lettering });
            y += 4.8;
        }
    }

    private static void AddBundle(ImmutableArray<Item>.Builder items, Box inner, bool black)
    {
        string[] codes = ["BU/OG", "GN/WH", "YE", "WH", "BK/WH", "GY/RD", "PK/BK", "VT", "TQ"];
        var (x, y) = (inner.X + 72, inner.Y + 10);
        for (var i = 0; i < codes.Length; i++)
        {
            var (offset, radius) = (i * 1.5, 3 + ((codes.Length - 1 - i) * 1.5));
            var line = new Outline([
                new PathStep.MoveTo(new(x, y + offset)), new PathStep.LineTo(new(x + 60, y + offset)),
                new PathStep.ArcTo(new(x + 60 + radius, y + offset + radius), radius, true), new PathStep.LineTo(new(x + 60 + radius, y + 70)),
            ]);
            items.AddRange(LanePainter.Paint(line, new(WireColour.Parse(codes[i])) { Index = i, BlackInk = black }, new() { Wire = $"W{i}", Circuit = $"C{i}", Title = $"wire W{i}, {codes[i]}" }));
        }
    }
}
