using System.Globalization;
using HarnessDraw.Checking;
using HarnessDraw.Drawing;
using HarnessDraw.Reading;
using HarnessDraw.Sheets;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tests.Writing;
using HarnessDraw.Writing;
using HarnessDraw.Writing.Pdf;
using UglyToad.PdfPig;

namespace HarnessDraw.Tests.Layout;

/// <summary>Whatever can be described is drawn whole and legible: odd shapes, crowded places, long names, other scripts.</summary>
public sealed class DrawableTests
{
    private const string Battery = "power:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: root, posts: { plus: M8, minus: M8 } }\n";

    [Fact]
    public void One_wire_on_one_segment() => AssertLegible(Described([("lamp", "a")], "{ a: { at: [900, 0, 0] } }", [("root", "a", 900)]));

    [Fact]
    public void A_star_of_forty_branches() =>
        AssertLegible(Described(
            [.. Range(40).Select(i => ($"lamp {i}", $"p{i}"))],
            "{ " + Joined(Range(40), i => $"p{i}: {{ at: [{Whole(1000 * Math.Cos(i * Math.Tau / 40))}, {Whole(1000 * Math.Sin(i * Math.Tau / 40))}, 0] }}") + " }",
            [.. Range(40).Select(i => ("root", $"p{i}", 1100))]));

    [Fact]
    public void A_chain_of_sixty_breakouts() =>
        AssertLegible(Described(
            [.. Range(60).Select(i => ($"lamp {i}", $"p{i}"))],
            "{ " + Joined(Range(60), i => $"p{i}: {{ at: [{(i + 1) * 100}, {(i % 2 == 0 ? 40 : -40)}, 0] }}") + " }",
            [.. Range(60).Select(i => (i == 0 ? "root" : $"p{i - 1}", $"p{i}", 150))]));

    [Fact]
    public void A_branch_that_doubles_back() =>
        AssertLegible(Described(
            [("front lamp", "nose"), ("back lamp", "back")],
            "{ mid: { at: [800, 0, 0] }, nose: { at: [1600, 0, 0] }, back: { at: [100, 60, 0] } }",
            [("root", "mid", 800), ("mid", "nose", 800), ("mid", "back", 720)]));

    [Fact]
    public void Eight_loads_at_one_place() =>
        AssertLegible(Described([.. Range(8).Select(i => ($"lamp {i}", "a"))], "{ a: { at: [900, 0, 0] } }", [("root", "a", 900)]));

    [Fact]
    public void Places_that_lie_upon_each_other() =>
        AssertLegible(Described([.. Range(6).Select(i => ($"lamp {i}", $"p{i}"))], "{ " + Joined(Range(6), i => $"p{i}: {{ at: [900, 0, 0] }}") + " }", [.. Range(6).Select(i => ("root", $"p{i}", 900))]));

    /// <summary>Every circuit is spliced before the one place where all loads are.</summary>
    [Fact]
    public void One_place_with_thirty_loads_and_forty_splices()
    {
        var plan = RandomHarness.Plan(1, new(40) { Places = 1, Loads = 30, SpliceShare = 1.1, Grounds = false, LoadToLoad = false });
        Assert.Equal(40, plan.Splices.Length);
        Assert.True(plan.Wires.Where(w => !w.To.IsSplice).Select(w => w.To.At).Distinct().Count() > 25);
        var result = WallChart.Compose(plan, [], new SheetOptions());
        Assert.Null(result.Refused);
        Assert.All(result.Sheets, s => Assert.Empty(SheetChecker.Check(s).Take(5).Select(f => f.ToString())));
        Assert.All(result.Sheets, s => Assert.DoesNotContain(LaneMeeting.Crossings(s), m => m.Value > 1));
        Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), result.Sheets.SelectMany(s => Wires(s.Items)).Distinct().Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("lamp of the upper left outer additional long range driving set with dipping mirror and cover ", 3)]
    [InlineData("lamp", 75)]
    public void Names_of_three_hundred_characters(string part, int times)
    {
        var name = string.Concat(Enumerable.Repeat(part, times)).Trim();
        Assert.InRange(name.Length, 275, 310);
        AssertLegible(Described([(name, "a"), ("horn", "a")], "{ a: { at: [900, 0, 0] } }", [("root", "a", 900)]));
    }

    [Theory]
    [InlineData("φανός", "κόρνα", "Όχημα δοκιμής")]
    [InlineData("фара", "сигнал", "Опытный автомобиль")]
    public void Greek_and_Cyrillic_in_the_shipped_faces(string lamp, string horn, string vehicle) =>
        AssertLegible(Described([(lamp, "a"), (horn, "b")], "{ a: { at: [900, 300, 0] }, b: { at: [900, -300, 0] } }", [("root", "a", 900), ("root", "b", 900)], vehicle));

    /// <summary>Names in a script that no shipped face has: told without a face, drawn and found again in the PDF with one (a face made here).</summary>
    [Fact]
    public void Chinese_in_a_face_that_the_user_names()
    {
        const string Lamp = "左前照灯";
        const string Horn = "电喇叭";
        const string Vehicle = "试验车辆";
        var harness = Described([(Lamp, "a"), (Horn, "b")], "{ a: { at: [900, 300, 0] }, b: { at: [900, -300, 0] } }", [("root", "a", 900), ("root", "b", 900)], Vehicle);
        Assert.Contains(LaidOut(harness, FaceSet.Shipped).SheetFindings, f => f.Rule == "letters-missing" && f.Message.Contains("U+706F", StringComparison.Ordinal));
        var faces = FaceSet.Shipped.With(BroughtFace.Of(Lamp + Horn + Vehicle));
        AssertLegible(harness, faces);
        AssertFoundInPdf(harness, faces, Lamp, Horn, Vehicle);
    }

    /// <summary>Letters that join and run from right to left, in DejaVu Sans; skipped where the machine lacks it.</summary>
    [Fact]
    public void Arabic_in_a_face_that_the_user_names()
    {
        var file = OutsideTool.FileAt("/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf");
        AssertLegible(
            Described([("مصباح", "a"), ("بوق", "b")], "{ a: { at: [900, 300, 0] }, b: { at: [900, -300, 0] } }", [("root", "a", 900), ("root", "b", 900)], "مركبة"),
            FaceSet.Shipped.With(new FontFile(File.ReadAllBytes(file), "DejaVu Sans")));
    }

    private static void AssertFoundInPdf((string, string) harness, FaceSet faces, params string[] words)
    {
        var chart = LaidOut(harness, faces).Sheets.Where(s => s.Name == SheetKinds.WallChart);
        using var pdf = PdfDocument.Open(PdfWriter.Write([.. chart], new PdfOptions("Test") { Faces = faces }));
        var letters = string.Concat(pdf.GetPage(1).Letters.Select(l => l.Value));
        Assert.All(words, w => Assert.Contains(w, letters, StringComparison.Ordinal));
    }

    [Fact]
    public void Two_openings_with_a_connector_each()
    {
        var (description, layout) = Described([("left lamp", "a"), ("right lamp", "b")], "{ a: { at: [900, 300, 0] }, b: { at: [900, -300, 0] }, other: { at: [0, 600, 0] } }", [("root", "a", 900), ("root", "b", 900), ("other", "a", 950)]);
        description = description
            .Replace("things:\n", "things:\n  firewall: { at: root, mate: bulkhead-24 }\n  second mate: { at: other, mate: bulkhead-24 }\n  cabin switch: { at: cabin, side: cabin, switch: { 30: [x, y] } }\n", StringComparison.Ordinal)
            .Replace("circuits:\n", "circuits:\n  first feed: { from: cabin switch.x, enters-by: firewall, feeds: left lamp }\n  second feed: { from: cabin switch.y, enters-by: second mate, feeds: right lamp }\n", StringComparison.Ordinal);
        AssertLegible((description, layout));
    }

    // loads at places, each fed from a fuse at the root and grounded by itself
    private static (string Description, string Layout) Described((string Name, string Place)[] loads, string places, (string From, string To, int Mm)[] paths, string vehicle = "Test vehicle") => (
        $"harness: Test\nvehicle: {vehicle}\nvehicle-layout: v.yaml\n{Battery}things:\n  bar: {{ at: root, bar: 3 studs M8 }}\n{Joined(loads, l => $"  \"{l.Name}\": {{ at: {l.Place}, blade: 6.3 mm, lamp: 5 W, grounds-itself: yes }}", "\n")}\nprotection:\n  F1: {{ kind: blade, on: bar }}\ncircuits:\n  bar feed: {{ from: battery, feeds: bar, unfused: short }}\n{Joined(Range(loads.Length), i => $"  c{i}: {{ from: F1, feeds: \"{loads[i].Name}\" }}", "\n")}\n",
        $"vehicle-layout: T\nroot: root\nplaces: {{ root: {{ at: [0, 0, 0] }}, {places[2..]}\npaths:\n{Joined(paths, p => $"  - {{ from: {p.From}, to: {p.To}, measured: {p.Mm} mm }}", "\n")}\n");

    private static CheckedPlan Planned((string Description, string Layout) harness)
    {
        var files = new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["h.yaml"] = harness.Description, ["v.yaml"] = harness.Layout });
        var planned = HarnessCompiler.Plan("h.yaml", files, RuleSettings.BuiltIn);
        Assert.Empty(planned.Diagnostics.Select(d => $"{d.At?.File}:{d.At?.Line} {d.Message}"));
        return planned.Value!;
    }

    private static DrawingSet LaidOut((string, string) harness, FaceSet faces) => HarnessCompiler.LayOut(Planned(harness), new DrawOrder { Faces = faces });

    private static void AssertLegible((string Description, string Layout) harness, FaceSet? faces = null)
    {
        var planned = Planned(harness);
        var set = HarnessCompiler.LayOut(planned, new DrawOrder { Faces = faces ?? FaceSet.Shipped });
        Assert.Empty(set.Refused.Select(r => r.Because));
        Assert.Contains(set.Sheets, s => s.Name == SheetKinds.CutList);
        // the checker knows the shipped faces: it keeps an em free for a letter of another, which the rule below looks for
        Assert.All(set.Sheets, s => Assert.Empty(SheetChecker.Check(s).Where(f => faces is null || f.Kind != SheetChecker.MissingGlyph).Take(5).Select(f => $"{s.Name} {s.Number}: {f}")));
        Assert.DoesNotContain(set.SheetFindings, f => f.Rule == "letters-missing");
        var drawn = set.Sheets.Where(s => s.Name == SheetKinds.WallChart).SelectMany(s => Wires(s.Items)).ToHashSet(StringComparer.Ordinal);
        Assert.Equal(planned.Plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), drawn.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Wires(IEnumerable<Item> items) =>
        items.SelectMany(i => i is GroupItem group ? Wires(group.Items) : i.Tag?.Wire is { } wire ? [wire] : (IEnumerable<string>)[]);

    private static int[] Range(int count) => [.. Enumerable.Range(0, count)];

    private static string Joined<T>(IEnumerable<T> items, Func<T, string> text, string between = ", ") => string.Join(between, items.Select(text));

    private static string Whole(double mm) => mm.ToString("0", CultureInfo.InvariantCulture);
}
