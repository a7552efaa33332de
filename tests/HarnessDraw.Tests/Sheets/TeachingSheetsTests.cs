using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;

namespace HarnessDraw.Tests.Sheets;

/// <summary>Handout and key are the same questions; the answers agree with the plan by hand; slides are read from afar.</summary>
public class TeachingSheetsTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_key_has_the_questions_of_the_handout_and_every_answer(string name)
    {
        var plan = ExamplePlans.Of(name);
        var (asked, answered) = (Numbers(SheetKinds.Handout, plan), Numbers(SheetKinds.HandoutKey, plan));
        Assert.NotEmpty(asked);
        Assert.Equal(asked, answered);
        Assert.Equal(Enumerable.Range(1, asked.Count), asked);
    }

    [Fact]
    public void The_handout_gives_nothing_away_and_the_key_is_right_by_hand()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var (handout, key) = (Words(SheetKinds.Handout, plan), Words(SheetKinds.HandoutKey, plan));
        var first = plan.Wires[0];
        Assert.Contains($"Wire {first.Id} begins at", handout, StringComparison.Ordinal);
        Assert.DoesNotContain($"{first.Colour}, {first.SizeLabel} mm²", handout, StringComparison.Ordinal);
        Assert.Contains($"{first.Colour}, {first.SizeLabel} mm²", key, StringComparison.Ordinal);

        // Ohm: amperes times milliohms a metre times metres
        var lossy = plan.Wires.First(w => w.Worst is not null && key.Contains($"{w.Id}: {(w.CutLengthMm!.Value / 1000).ToString("0.00", CultureInfo.InvariantCulture)} m of", StringComparison.Ordinal));
        var perMetre = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == lossy.WireType).Sizes.Single(s => s.Label == lossy.SizeLabel).MilliohmPerM;
        Assert.Contains($"{Math.Abs(lossy.Worst!.CurrentA) * perMetre / 1000 * lossy.CutLengthMm!.Value / 1000:0.00} V", key, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Slides_have_large_letters_and_every_circuit(string name)
    {
        var plan = ExamplePlans.Of(name);
        var sheets = SheetKinds.Compose(SheetKinds.Projector, plan, [], new()).Sheets;
        foreach (var circuit in plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id)))
        {
            Assert.Contains(sheets, s => s.Title == $"Projector, {circuit.Id}");
        }

        // the caution and the words after the headline are for the teacher
        var body = sheets.SelectMany(s => s.Items.OfType<GroupItem>().Where(g => g.Name == SheetKinds.Projector)).SelectMany(g => g.Items).OfType<TextItem>().Where(t => t.Colour != Ink.Caution && t.At.Y > 30);
        Assert.All(body, t => Assert.True(t.CapHeightMm >= 3.5, t.Text));
    }

    [Fact]
    public void For_a_class_every_step_says_what_commonly_goes_wrong()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var texts = SheetKinds.Compose(SheetKinds.Installation, plan, [], new() { Teaching = true }).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        var plain = SheetKinds.Compose(SheetKinds.Installation, plan, [], new()).Sheets.SelectMany(ItemWalk.Texts).Select(t => t.Text).ToList();
        var steps = plain.Where(t => int.TryParse(t, out _)).Select(int.Parse).Max();
        Assert.Equal(steps, texts.Count(t => t.StartsWith("Mistake:", StringComparison.Ordinal)));
        Assert.DoesNotContain(plain, t => t.StartsWith("Mistake:", StringComparison.Ordinal));
    }

    private static List<int> Numbers(string kind, Plan plan) =>
        [.. Own(kind, plan).Where(t => t.Weight == FaceWeight.Bold && t.Anchor == TextAnchor.End && int.TryParse(t.Text, out _)).Select(t => int.Parse(t.Text, CultureInfo.InvariantCulture))];

    private static string Words(string kind, Plan plan) => string.Join(' ', Own(kind, plan).Select(t => t.Text));

    private static IEnumerable<TextItem> Own(string kind, Plan plan) =>
        SheetKinds.Compose(kind, plan, [], new()).Sheets.SelectMany(s => ItemWalk.Texts(s with { Items = [.. s.Items.Where(i => i is not GroupItem { Name: "frame" })] }));
}
