using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Comparing;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Writing.Frozen;

namespace HarnessDraw.Tests.Comparing;

/// <summary>Wires that lie in a vehicle keep their colours, and their studs on a bar, whatever is added to the description.</summary>
public class KeptColoursTests
{
    private const string Layout = """
        vehicle-layout: Small van
        root: tray
        places: { tray: { at: [0, 0, 700] }, nose: { at: [900, 0, 600] } }
        paths: [{ from: tray, to: nose, measured: 1100 mm }]

        """;

    private const string Description = """
        harness: Test
        vehicle: Small van
        vehicle-layout: layout.yaml
        power:
          sources:
            battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8, minus: M8 } }
        things:
          bar: { at: tray, kind: fuse panel, stud: M6 }
          minus bar: { at: nose, bar: 4 studs M6 }
          ADDED
          horn: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 4 A }, returns: { 2: minus bar } }
          lamp: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, lamp: { 1: 10 W }, returns: { 2: minus bar } }
        protection:
          F1: { kind: blade, on: bar }
          F2: { kind: blade, on: bar }
        circuits:
          feed: { from: battery, feeds: bar, unfused: short }
          ground: { from: battery.minus, to: minus bar.4 }
          FED
          horn: { from: F1, feeds: horn.1 }
          lamp: { from: F2, feeds: lamp.1 }

        """;

    [Fact]
    public void A_load_added_before_them_changes_neither_colour_nor_stud()
    {
        var before = Planned("", "", null);
        var after = Planned("buzzer: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 1 A }, returns: { 2: minus bar } }", "buzzer: { from: F1, feeds: buzzer.1 }", before);
        var now = after.Wires.ToDictionary(w => w.Net, StringComparer.Ordinal);
        Assert.All(before.Wires, w => Assert.Equal((w.Colour, w.From, w.To), (now[w.Net].Colour, now[w.Net].From, now[w.Net].To)));
        Assert.DoesNotContain(now["buzzer"].Colour, before.Wires.Select(w => w.Colour));
        Assert.All(HarnessComparer.Compare(HarnessFreezer.Freeze(before), HarnessFreezer.Freeze(after)).Value!.Changes, c => Assert.Equal(ChangeKind.Add, c.Kind));
    }

    [Fact]
    public void A_colour_that_the_description_now_gives_goes_before_the_built_one()
    {
        var before = Planned("", "", null);
        var files = Files("", "").SetItem("a.yaml", Files("", "")["a.yaml"].Replace("feeds: horn.1 }", "feeds: horn.1, colour: VT }", StringComparison.Ordinal));
        Assert.Equal("VT", Planned(files, before).Wires.Single(w => w.Circuit == "horn").Colour);
    }

    /// <summary>A bus bar named without a stud gives its least used one, as the format page says.</summary>
    [Fact]
    public void Returns_to_a_bar_are_spread_over_its_studs()
    {
        var ends = Planned("", "", null).Wires.SelectMany(w => new[] { w.From, w.To }).Where(e => e.At == "minus bar").Select(e => e.Pin).ToList();
        Assert.Equal(3, ends.Count);
        Assert.Equal(ends.Count, ends.Distinct().Count());
    }

    private static ImmutableSortedDictionary<string, string> Files(string thing, string circuit) => ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal)
        .Add("a.yaml", Description.Replace("ADDED", thing, StringComparison.Ordinal).Replace("FED", circuit, StringComparison.Ordinal)).Add("layout.yaml", Layout);

    private static Plan Planned(string thing, string circuit, Plan? built) => Planned(Files(thing, circuit), built);

    private static Plan Planned(ImmutableSortedDictionary<string, string> files, Plan? built)
    {
        var all = built is null ? files : files.Add("a.frozen.json", System.Text.Encoding.UTF8.GetString(FrozenJsonWriter.Write(HarnessFreezer.Freeze(built))));
        var outcome = HarnessCompiler.Plan("a.yaml", new MemoryFiles(all), RuleSettings.BuiltIn);
        Assert.Empty(outcome.Diagnostics.Select(d => $"{d.At?.Line}:{d.At?.Column}: {d.Code}: {d.Message}"));
        return outcome.Value!.Plan;
    }
}
