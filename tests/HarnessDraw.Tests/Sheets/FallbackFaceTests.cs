using HarnessDraw.Drawing;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Writing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>
/// The sheets as a viewer shows them that has DejaVu Sans in place of the shipped faces and keeps no text to its length: measured with the machine's own files of that face.
/// </summary>
public class FallbackFaceTests
{
    // two texts may come as near as the white at the sides of their letters
    private const double NearMm = 0.6;
    private const double OnLineMm = 0.15;

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void No_text_crosses_another_or_an_upright_in_the_face_that_a_viewer_takes_instead(string name)
    {
        var faces = new Dictionary<FaceWeight, FontFile> { [FaceWeight.Medium] = Face("DejaVuSans.ttf"), [FaceWeight.Bold] = Face("DejaVuSans-Bold.ttf") };
        var plan = ExamplePlans.Of(name);
        foreach (var kind in SheetKinds.All.Except([SheetKinds.WallChart, SheetKinds.BuildBoard]))
        {
            Assert.Equal([], SheetKinds.Compose(kind, plan, [], new()).Sheets.SelectMany(s => Faults(s, faces).Select(f => $"{kind} {s.Number}: {f}")));
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Names_of_a_wall_chart_stay_in_their_cards_in_that_face_too(string name)
    {
        var face = Face("DejaVuSans-Bold.ttf");
        var names = 0;
        foreach (var sheet in SheetKinds.Compose(SheetKinds.WallChart, ExamplePlans.Of(name), [], new()).Sheets)
        {
            var boxes = ItemWalk.All(sheet).OfType<PathItem>().Where(p => p.Fill == Ink.Paper && p.Stroke is not null).Select(p => ItemBounds.Of(p)!.Value).ToList();
            foreach (var text in ItemWalk.Texts(sheet).Where(t => t is { Weight: FaceWeight.Bold, CapHeightMm: > 4.5, Tag.Load: not null }))
            {
                var at = BoxOf(text, face);
                var card = boxes.Where(b => b.X < at.X && b.Y < at.Y && b.Right > at.X && b.Bottom > at.Bottom).MinBy(b => b.Width * b.Height);
                Assert.True(at.Right <= card.Right, $"'{text.Text}' ends {at.Right - card.Right:0.0} mm beyond its card");
                names++;
            }
        }

        Assert.True(names > 10);
    }

    [Fact]
    public void The_check_finds_what_is_too_wide()
    {
        var faces = new Dictionary<FaceWeight, FontFile> { [FaceWeight.Medium] = Face("DejaVuSans.ttf"), [FaceWeight.Bold] = Face("DejaVuSans-Bold.ttf") };
        static TextItem Text(string words, double x) => new(words, new(x, 10), 2.5) { Weight = FaceWeight.Bold };
        var rule = new PathItem(Outline.Line(30, 0, 30, 20)) { Stroke = new(Ink.Black, 0.35) };
        Assert.Single(Faults(new("s", "s", PaperSizes.A4, [Text("a line of words that is long", 0), rule]), faces));
        Assert.Single(Faults(new("s", "s", PaperSizes.A4, [Text("a line of words that is long", 0), Text("next", 40)]), faces));
        Assert.Empty(Faults(new("s", "s", PaperSizes.A4, [Text("short", 0), rule, Text("next", 40)]), faces));
    }

    private static FontFile Face(string file) => new(File.ReadAllBytes(OutsideTool.FileAt($"/usr/share/fonts/truetype/dejavu/{file}")), "DejaVu Sans");

    private static IEnumerable<string> Faults(Sheet sheet, Dictionary<FaceWeight, FontFile> faces)
    {
        var texts = ItemWalk.Texts(sheet).Where(t => t.TurnDegrees == 0).Select(t => (Item: t, Box: BoxOf(t, faces[t.Weight]))).OrderBy(t => t.Box.X).ToList();
        var uprights = ItemWalk.All(sheet).OfType<PathItem>().Where(p => p is { Role: ItemRole.Edge, Stroke: not null }).SelectMany(p => Uprights(p.Outline)).OrderBy(u => u.X).ToList();
        for (var i = 0; i < texts.Count; i++)
        {
            var (text, box) = texts[i];

            // a letter in a ring is no line of words
            if (text.Text.Length > 1 && uprights.Exists(u => u.X > box.X + OnLineMm && u.X < box.Right - OnLineMm && u.Top < box.Bottom - 0.1 && u.Bottom > box.Y + 0.1))
            {
                yield return $"'{text.Text}' crosses a line";
            }

            foreach (var other in texts.Skip(i + 1).TakeWhile(t => t.Box.X < box.Right - NearMm))
            {
                if (other.Box.Y < box.Bottom && other.Box.Bottom > box.Y)
                {
                    yield return $"'{text.Text}' meets '{other.Item.Text}'";
                }
            }
        }
    }

    private static Box BoxOf(TextItem text, FontFile face)
    {
        var size = text.CapHeightMm / FaceSet.Shipped.Face(text.Weight, 0).CapRatio;
        var width = text.Text.EnumerateRunes().Sum(r => face.Advance(face.Glyph(r.Value))) * size;
        return new(TextMeasure.StartX(text, width), text.At.Y - text.CapHeightMm, width, text.CapHeightMm);
    }

    private static IEnumerable<(double X, double Top, double Bottom)> Uprights(Outline outline)
    {
        Point? at = null;
        foreach (var step in outline.Steps)
        {
            Point? to = step switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, _ => null };
            if (step is PathStep.LineTo && at is { } from && to is { } end && Math.Abs(from.X - end.X) < 0.01)
            {
                yield return (end.X, Math.Min(from.Y, end.Y), Math.Max(from.Y, end.Y));
            }

            at = to ?? (step is PathStep.ArcTo arc ? arc.To : at);
        }
    }
}
