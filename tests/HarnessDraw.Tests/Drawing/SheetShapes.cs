using HarnessDraw.Drawing;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using SkiaSharp;

namespace HarnessDraw.Tests.Drawing;

/// <summary>An item of a sheet as it lies on paper. Order: later items are painted over earlier ones.</summary>
internal sealed record PlacedItem(Item Item, int Order, double Scale, bool InFrame)
{
    /// <summary>What the pen covers: the ink box of a text, the buffered line of a stroke.</summary>
    public required Geometry Shape { get; init; }

    /// <summary>The filled area, or null.</summary>
    public Geometry? Fill { get; init; }

    /// <summary>The line without its width, or null.</summary>
    public Geometry? Line { get; init; }

    public double WidthMm { get; init; }
}

/// <summary>Turns the items of a sheet into plane shapes, groups resolved.</summary>
internal static class SheetShapes
{
    private static readonly GeometryFactory Factory = new();
    private static readonly Dictionary<(int Index, FaceWeight Weight), SKTypeface> Typefaces = [];

    public static List<PlacedItem> Place(IEnumerable<Item> items)
    {
        var placed = new List<PlacedItem>();
        Place(items, new AffineTransformation(), 1, null, false, placed);
        return placed;
    }

    private static void Place(IEnumerable<Item> items, AffineTransformation map, double scale, Geometry? clip, bool inFrame, List<PlacedItem> placed)
    {
        foreach (var item in items)
        {
            if (item is GroupItem group)
            {
                PlaceGroup(group, map, scale, clip, inFrame, placed);
            }
            else if (Shape(item, map, scale) is { } shape)
            {
                var one = shape with { Order = placed.Count, InFrame = inFrame };
                if (clip is null || clip.Covers(one.Shape))
                {
                    placed.Add(one);
                }
                else if (one.Shape.Intersection(clip) is { IsEmpty: false } rest)
                {
                    placed.Add(one with { Shape = rest, Fill = one.Fill?.Intersection(clip), Line = one.Line?.Intersection(clip) });
                }
            }
        }
    }

    private static void PlaceGroup(GroupItem group, AffineTransformation map, double scale, Geometry? clip, bool inFrame, List<PlacedItem> placed)
    {
        var own = new AffineTransformation(group.Scale, 0, 0, 0, group.Scale, 0);
        own.Rotate(group.TurnDegrees * Math.PI / 180);
        own.Translate(group.MoveXMm, group.MoveYMm);
        own.Compose(map);
        if (group.Clip is { } box)
        {
            var window = own.Transform(Rectangle(box));
            clip = clip is null ? window : clip.Intersection(window);
        }

        Place(group.Items, own, scale * group.Scale, clip, inFrame || group.Name is "frame" or "tile-marks", placed);
    }

    private static PlacedItem? Shape(Item item, AffineTransformation map, double scale)
    {
        switch (item)
        {
            case TextItem { Text.Length: > 0 } text:
                var at = AffineTransformation.RotationInstance(text.TurnDegrees * Math.PI / 180, text.At.X, text.At.Y);
                at.Compose(map);
                return Ink(text) is { } ink ? new(item, 0, scale, false) { Shape = at.Transform(Rectangle(ink)) } : null;
            case PathItem path:
                return Path(path, map, scale);
            case ImageItem image:
                var picture = map.Transform(Rectangle(image.Box));
                return new(item, 0, scale, false) { Shape = picture, Fill = picture };
            default:
                return null;
        }
    }

    private static PlacedItem? Path(PathItem path, AffineTransformation map, double scale)
    {
        var lines = Flatten(path.Outline).Where(p => p.Count > 1).Select(p => (Geometry)Factory.CreateLineString([.. p])).ToList();
        if (lines.Count == 0)
        {
            return null;
        }

        var line = map.Transform(Factory.BuildGeometry(lines));
        if (path.Role == ItemRole.LaneDress)
        {
            // thousands of tracer bars; they only have to stay inside the frame
            return new(path, 0, scale, false) { Shape = line };
        }

        var fill = path.Fill is null ? null : Area(line);
        var width = (path.Stroke?.WidthMm ?? 0) * scale;
        var pen = path.Stroke is null ? null : line.Buffer(width / 2, 6);
        var shape = (pen, fill) switch
        {
            (null, null) => null,
            (not null, null) => pen,
            (null, not null) => fill,
            _ => pen!.Union(fill),
        };
        return shape is null ? null : new(path, 0, scale, false) { Shape = shape, Fill = fill, Line = path.Stroke is null ? null : line, WidthMm = width };
    }

    private static Geometry Area(Geometry lines)
    {
        var polygons = new List<Geometry>();
        for (var i = 0; i < lines.NumGeometries; i++)
        {
            var ring = lines.GetGeometryN(i).Coordinates;
            var closed = ring[0].Equals2D(ring[^1]) ? ring : [.. ring, ring[0]];
            if (closed.Length >= 4)
            {
                polygons.Add(Factory.CreatePolygon(closed).Buffer(0));
            }
        }

        return Factory.BuildGeometry(polygons).Buffer(0);
    }

    private static List<List<Coordinate>> Flatten(Outline outline)
    {
        var all = new List<List<Coordinate>>();
        var (start, at) = (default(HarnessDraw.Drawing.Point), default(HarnessDraw.Drawing.Point));
        foreach (var step in outline.Steps)
        {
            switch (step)
            {
                case PathStep.MoveTo(var to):
                    all.Add([new(to.X, to.Y)]);
                    (start, at) = (to, to);
                    break;
                case PathStep.LineTo(var to):
                    all[^1].Add(new(to.X, to.Y));
                    at = to;
                    break;
                case PathStep.Close:
                    all[^1].Add(new(start.X, start.Y));
                    at = start;
                    break;
                case PathStep.Polygons polygons:
                    all.AddRange(Enumerable.Range(0, polygons.Count).Select(i => polygons[i].ToArray()).Select(p => p.Append(p[0]).Select(c => new Coordinate(c.X, c.Y)).ToList()));
                    break;
                default:
                    AddBend(all[^1], at, step);
                    at = step is PathStep.ArcTo arc ? arc.To : ((PathStep.CurveTo)step).To;
                    break;
            }
        }

        return all;
    }

    private static void AddBend(List<Coordinate> points, HarnessDraw.Drawing.Point from, PathStep bend)
    {
        foreach (var line in CentreLine.Of(new([new PathStep.MoveTo(from), bend])))
        {
            var count = Math.Clamp((int)(line.LengthMm / 0.2), 8, 200);
            for (var i = 1; i <= count; i++)
            {
                var p = line.At(line.LengthMm * i / count).At;
                points.Add(new(p.X, p.Y));
            }
        }
    }

    /// <summary>The box of the ink of a text before its turn, from the glyphs themselves.</summary>
    private static Box? Ink(TextItem text)
    {
        var runs = TextMeasure.Runs(text.Text, text.CapHeightMm, text.Weight);
        var start = TextMeasure.StartX(text, runs.Sum(r => r.WidthMm));
        Box? all = null;
        foreach (var run in runs)
        {
            using var font = new SKFont(Typeface(run, text.Weight), 200) { Hinting = SKFontHinting.None, LinearMetrics = true };
            font.MeasureText(run.Text, out var b);
            if (b.Width > 0)
            {
                var k = run.SizeMm / 200;
                var box = Box.FromEdges(start + run.OffsetMm + (b.Left * k), text.At.Y + (b.Top * k), start + run.OffsetMm + (b.Right * k), text.At.Y + (b.Bottom * k));
                all = all?.Union(box) ?? box;
            }
        }

        return all;
    }

    private static SKTypeface Typeface(TextRun run, FaceWeight weight)
    {
        lock (Typefaces)
        {
            if (!Typefaces.TryGetValue((run.FaceIndex, weight), out var face))
            {
                using var data = SKData.CreateCopy(run.Face.Bytes.Span);
                face = SKTypeface.FromData(data);
                Typefaces.Add((run.FaceIndex, weight), face);
            }

            return face;
        }
    }

    private static Polygon Rectangle(Box b) => Factory.CreatePolygon([new(b.X, b.Y), new(b.Right, b.Y), new(b.Right, b.Bottom), new(b.X, b.Bottom), new(b.X, b.Y)]);
}
