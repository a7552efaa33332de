using HarnessDraw.Diagnostics;
using HarnessDraw.Reading;

namespace HarnessDraw.Tests.Reading;

public class MessageTests
{
    [Fact]
    public void The_small_vehicle_is_read_without_a_message() => new SmallVehicle().Harness();

    [Theory]
    [InlineData("unknown-key", "  dipped beam: { §form: F7, enters-by: firewall, feeds: headlamp left.56b }", "'from'")]
    [InlineData("unknown-name", "  dipped beam: { from: §F8, enters-by: firewall, feeds: headlamp left.56b }", "'F1'")]
    [InlineData("unknown-name", "  dipped beam: { from: F7, enters-by: firewall, feeds: §headlamp lfet.56b }", "'headlamp left.56b'")]
    [InlineData("unknown-pin", "  dipped beam: { from: F7, enters-by: firewall, feeds: §headlamp left.56c }", "'headlamp left.56a'")]
    [InlineData("unknown-pin", "  feed: { from: F1, feeds: §headlamp left }", "headlamp left.56b")]
    [InlineData("unknown-name", "  dipped beam: { from: F7, enters-by: §firewal, feeds: headlamp left.56b }", "'firewall'")]
    [InlineData("wrong-kind", "  dipped beam: { from: F7, enters-by: §horn, feeds: headlamp left.56b }", "firewall")]
    [InlineData("unknown-name", "  dipped beam: { from: F7, enters-by: firewall, cavity: §B99, feeds: headlamp left.56b }", "'B9'")]
    [InlineData("unknown-name", "  dipped beam: { from: F7, enters-by: firewall, half: §enigne, feeds: headlamp left.56b }", "'engine'")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §4.6 }", "4.6 A")]
    [InlineData("quantity", "  feed:\n    from: F1\n    feeds: horn.1\n    size: §1,5 mm2", "point")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §7E05 A }", "4.6 A")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §1_0 A }", "4.6 A")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §-3 A }", null)]
    [InlineData("unknown-not-allowed", "  feed: { from: F1, feeds: horn.1, draws: §unknown }", "unknown-allowed: yes")]
    [InlineData("choice", "  feed: { from: F1, feeds: horn.1, importance: §critcal }", "'critical'")]
    [InlineData("choice", "  feed: { from: F1, feeds: horn.1, duty: §contiuous }", "'continuous'")]
    [InlineData("choice", "  feed: { from: F1, feeds: horn.1, triggers-only: §si }", null)]
    [InlineData("choice", "  feed: { from: F1, feeds: horn.1, colour: §BX/WH }", "'BK'")]
    [InlineData("list-length", "  feed: { from: F1, feeds: horn.1, colour: [RD, §BK] }", "only a cable")]
    [InlineData("list-length", "  feed: { from: [horn.1, horn.2], feeds: [headlamp left.56a, headlamp left.56b], cable: { twisted: 33 mm }, colour: [RD, §BK, WH] }", "2 conductors")]
    [InlineData("unknown-name", "  feed: { from: F1, feeds: horn.1, wire-type: §thin-wall-15 }", "'thin-wall-105'")]
    [InlineData("unknown-name", "  feed: { from: F1, feeds: horn.1, size: §39 AWG }", null)]
    [InlineData("not-text", "  feed: { from: F1, feeds: horn.1, duty: §[momentary] }", null)]
    [InlineData("not-text", "  feed: { from: F1, feeds: horn.1, colour: §}", null)]
    [InlineData("shape", "  feed: §F1 to horn", "from, feeds")]
    [InlineData("nothing-to-feed", "  §feed: { from: F1 }", "feeds")]
    [InlineData("nothing-to-feed", "  §feed: { feeds: horn.1 }", "from")]
    [InlineData("not-a-cable", "  §feed: { from: F1, feeds: light switch.30 }", "enters-by")]
    [InlineData("not-a-cable", "  §feed: { from: F1, enters-by: firewall, feeds: horn.1 }", "route-by")]
    [InlineData("not-a-cable", "  §feed: { from: F1, feeds: [horn.1, horn.1] }", null)]
    [InlineData("not-a-cable", "  feed: { route-by: [F1, §light switch.30] }", "mate")]
    [InlineData("chosen-twice", "  feed: { route-by: [F1, firewall, light switch.30], §enters-by: firewall }", "route-by")]
    [InlineData("list-length", "  §feed: { from: [horn.1, horn.2], feeds: [headlamp left.56a, headlamp left.56b, headlamp left.31] }", "conductor")]
    [InlineData("wrong-kind", "  feed: { from: [headlamp left.31], to: §horn.1 }", "feeds")]
    [InlineData("duplicate-key", "  feed: { from: F1, feeds: horn.1, §from: F1 }", "remove")]
    [InlineData("unknown-name", "  feed: { from: F1, feeds: horn.1, protected-by: §F9 }", "'F1'")]
    [InlineData("missing-key", "  feed: { by-hand: [§{ wire: H1, from: horn.1 }] }", null)]
    [InlineData("not-a-cable", "  feed: { by-hand: [{ wire: H1, from: horn.1, to: §horn.1 }] }", null)]
    [InlineData("duplicate-name", "  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1 }, { wire: §h1, from: horn.2, to: ground left }] }", "capitals")]
    [InlineData("unknown-name", "  feed: { by-hand: [{ wire: H1, from: F1, to: horn.1, route: [tray, §wings] }] }", "'wing'")]
    [InlineData("unknown-key", "  feed: { §from F1, feeds: horn.1 }", "put a colon behind the key: 'from: F1'")]
    [InlineData("unknown-key", "  feed: { from: F1, feeds: horn.1, unfused: short, §sleeved and booted }", "needs quotes: unfused: \"short, sleeved and booted\"")]
    [InlineData("unknown-key", "  feed: { from: F1, feeds: horn.1, unfused: “short, §sleeved” }", "quotation mark “: write unfused: \"short, sleeved\"")]
    [InlineData("not-text", "  feed: { from: F1, feeds: §{ horn: 1 } }", "Pins it feeds")]
    [InlineData("not-text", "  dipped beam: { from: F7, enters-by: §[firewall], feeds: headlamp left.56b }", "'firewall'")]
    public void A_mistake_in_a_circuit_is_told_where_it_stands(string code, string circuit, string? hint) =>
        AssertMessage(new SmallVehicle { Circuits = "circuits:\n" + circuit + "\n" }.MessageAtMark(), code, hint);

    [Theory]
    [InlineData("missing-key", "  horn: §{ coil: 5 A, blade: 6.3 mm, grounds-itself: yes }", null)]
    [InlineData("unknown-name", "  horn: { at: §nosse, coil: 5 A, blade: 6.3 mm, grounds-itself: yes }", "'nose'")]
    [InlineData("unknown-name", "  horn: { at: nose, coil: 5 A, plug: §lamp-22, grounds-itself: yes }", "'lamp-2'")]
    [InlineData("no-return", "  horn: { at: nose, coil: §5 A, blade: 6.3 mm }", "grounds-itself")]
    [InlineData("unknown-pin", "  horn: { at: nose, coil: { §2: 5 A }, blades: { 1: 6.3 mm }, grounds-itself: yes }", "1")]
    [InlineData("unknown-pin", "  horn: { at: nose, coil: 5 A, plug: lamp-2, pins: { h: §4 }, returns: 2 }", null)]
    [InlineData("quantity", "  bar: { at: nose, bar: §three studs }", "3 studs M8")]
    [InlineData("unknown-name", "  mate: { at: pass, mate: bulkhead-24, halves: { engine: §C } }", null)]
    [InlineData("wrong-kind", "  mate: { at: pass, mate: §lamp-2 }", "bulkhead")]
    [InlineData("list-length", "  fan relay: { at: nose, relay: { coil: §[85], makes: [30, 87] } }", null)]
    [InlineData("cycle", "  key: { at: nose, switch: { 30: [§30] } }", null)]
    [InlineData("chosen-twice", "  odd: { at: nose, bar: 3 studs M8, §mate: bulkhead-24 }", null)]
    [InlineData("case-only", "  a: { at: nose, stud: M8 }\n  §A: { at: nose, stud: M8 }", null)]
    [InlineData("duplicate-name", "  §battery: { at: nose, stud: M8 }", null)]
    [InlineData("unknown-name", "  g: { at: nose, ground: M8, on: §bodi }", "'body'")]
    [InlineData("quantity", "  blower: { at: nose, blades: { P: 6.3 mm, E: 6.3 mm }, motor: { P: §4,5 A }, returns: E }", "4.5 A")]
    public void A_mistake_in_a_thing_is_told_where_it_stands(string code, string thing, string? hint)
    {
        var vehicle = new SmallVehicle { Things = "things:\n  bus bar: { at: tray, bar: 3 studs M8 }\n" + thing + "\n", Circuits = "circuits: {}\n" };
        AssertMessage(vehicle.MessageAtMark(), code, hint);
    }

    [Theory]
    [InlineData("rule-text", "options: { cooling: { one of: [belt, electric], usual: belt }, rules: [§belt wants electric] }", "needs")]
    [InlineData("unknown-choice", "options: { cooling: { one of: [belt, electric], usual: §bell } }", "'belt'")]
    [InlineData("unknown-choice", "options: { cooling: { one of: [belt, electric], usual: belt }, rules: [§electrik needs belt] }", "'electric'")]
    [InlineData("not-buildable", "options: { cooling: { one of: [belt, electric], usual: belt }, lamps: { one of: [two, four], usual: two }, rules: [§belt needs four] }", null)]
    [InlineData("rule-text", "options: { a: { one of: [none, x], usual: x }, b: { one of: [none, y], usual: y }, rules: [§none needs y] }", "a none")]
    [InlineData("list-length", "options: { cooling: { one of: §[belt], usual: belt } }", null)]
    [InlineData("unknown-name", "states: { parked: { key: off, on: [§dipped beem] } }", "'dipped beam'")]
    [InlineData("missing-key", "states: { parked: §{ on: [dipped beam] } }", null)]
    [InlineData("unknown-name", "keep-apart: [[dipped beam, §horn]]", "dipped beam")]
    [InlineData("unknown-name", "sized-alike: [[headlamp left, §headlamp rihgt]]", "headlamp left")]
    [InlineData("unknown-name", "sized-alike: [[dipped beam, §horn beam]]", "dipped beam")]
    [InlineData("list-length", "sized-alike: [§[headlamp left]]", null)]
    [InlineData("unknown-pin", "kept: { pins: { §B99: { comes-from: F7 } } }", "'B9'")]
    [InlineData("unknown-name", "kept: { pins: { B9: { comes-from: §F77 } } }", "'F7'")]
    [InlineData("unknown-name", "kept: { pins: { B9: { comes-from: F7, through: [§light swich] } } }", "'light switch'")]
    [InlineData("unknown-name", "waivers: [{ rule: loop-drop, for: [§dipped beem], because: c, by: d, on: e }]", "'dipped beam'")]
    [InlineData("file-missing", "parts-from: §no-parts.yaml", null)]
    [InlineData("missing-key", "waivers: [§{ rule: a, for: b, because: c, by: d }]", null)]
    [InlineData("unknown-key", "§circuit: {}", "'circuits'")]
    [InlineData("alias-cycle", "options: &a { x: { one of: [§*a, b], usual: b } }", null)]
    public void A_mistake_elsewhere_is_told_where_it_stands(string code, string rest, string? hint) =>
        AssertMessage(new SmallVehicle { Rest = rest + "\n" }.MessageAtMark(), code, hint);

    [Theory]
    [InlineData("unknown-name", "root: pass", "root: §pas", "'pass'")]
    [InlineData("unknown-name", "{ from: pass, to: tray,", "{ from: pass, to: §trai,", "'tray'")]
    [InlineData("missing-key", "- { from: pass, to: tray, measured: 500 mm }", "- §{ from: pass, to: tray }", "measured: unknown")]
    [InlineData("chosen-twice", "measured: 500 mm", "measured: 500 mm, §estimated: 400 mm", "again")]
    [InlineData("cycle", "to: tray, measured", "to: §pass, measured", null)]
    [InlineData("unknown-name", "zone: wet }", "zone: §wett }", "'wet'")]
    [InlineData("quantity", "measured: 500 mm", "measured: §500", "mm, cm, m, in or ft")]
    [InlineData("unknown-not-allowed", "measured: 500 mm", "measured: §unknown", "unknown-allowed")]
    [InlineData("list-length", "pass: { at: [0, 0, 600] }", "pass: { at: §[0, 0] }", null)]
    [InlineData("quantity", "pass: { at: [0, 0, 600] }", "pass: { at: [0, 0, §60O] }", null)]
    [InlineData("unknown-key", "surfaces: { body: steel,", "openings: { pass: { shape: 62 x 98 mm, datum: { from: seam, §accross: 120 mm, up: 85 mm } } }\nsurfaces: { body: steel,", "'across'")]
    [InlineData("missing-key", "surfaces: { body: steel,", "openings: { pass: { shape: 62 x 98 mm, datum: §{ from: seam, across: 120 mm } } }\nsurfaces: { body: steel,", null)]
    [InlineData("quantity", "surfaces: { body: steel,", "openings: { pass: { shape: 62 x 98 mm, datum: { from: seam, across: §120, up: 85 mm } } }\nsurfaces: { body: steel,", "mm, cm, m, in or ft")]
    [InlineData("shape", "surfaces: { body: steel,", "openings: { pass: { shape: 62 x 98 mm, datum: §left seam } }\nsurfaces: { body: steel,", "from, across, up")]
    public void A_mistake_in_the_layout_is_told_where_it_stands(string code, string good, string bad, string? hint)
    {
        var usual = new SmallVehicle();
        Assert.Contains(good, usual.Layout, StringComparison.Ordinal);
        AssertMessage((usual with { Layout = usual.Layout.Replace(good, bad, StringComparison.Ordinal) }).MessageAtMark(), code, hint);
    }

    [Theory]
    [InlineData("wrong-kind", "  F1: { kind: bolt-in, on: §F1 }\n", "  feed: { from: F1, feeds: horn.1 }\n", "bus bar")]
    [InlineData("cycle", "  F1: { kind: bolt-in, on: bus bar }\n", "  feed: { from: F1, feeds: §bus bar }\n", "feed 'bus bar' from a battery")]
    [InlineData("cycle", "  F1: { kind: bolt-in, on: bus bar }\n  F2: { kind: blade, on: box }\n", "  first: { from: F1, feeds: §box }\n  second: { from: F2, feeds: bus bar }\n", "sits elsewhere")]
    public void A_fuse_that_feeds_what_it_sits_on_is_told_where_it_stands(string code, string protection, string circuits, string hint)
    {
        var usual = new SmallVehicle();
        var vehicle = usual with { Things = usual.Things + "  box: { at: nose, kind: fuse panel, stud: M6 }\n", Protection = "protection:\n" + protection, Circuits = "circuits:\n" + circuits };
        AssertMessage(vehicle.MessageAtMark(), code, hint);
        Assert.Single((vehicle with { Protection = vehicle.Protection.Replace("§", "", StringComparison.Ordinal), Circuits = vehicle.Circuits.Replace("§", "", StringComparison.Ordinal) }).Read().Diagnostics);
    }

    /// <summary>What is no block has no pins, no place and feeds nothing; that comes of the one mistake.</summary>
    [Theory]
    [InlineData("horn: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 5 A } }", "horn: [nose, 5 A]")]
    [InlineData("horn: { at: nose, blades: { 1: 6.3 mm, 2: 6.3 mm }, coil: { 1: 5 A } }", "horn: 5 A")]
    [InlineData("battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8, minus: M8 } }", "battery: [12 V, tray]")]
    [InlineData("F1: { kind: bolt-in, on: bus bar }", "F1: [bolt-in, bus bar]")]
    [InlineData("horn feed: { from: F1, feeds: horn.1 }", "horn feed: [F1, horn.1]")]
    [InlineData("horn feed: { from: F1, feeds: horn.1 }", "horn feed: F1 to horn.1")]
    [InlineData("nose: { at: [1200, 400, 600] }", "nose: [1200, 400, 600]")]
    public void A_list_or_a_word_in_the_place_of_a_block_is_one_message(string good, string bad)
    {
        var usual = new SmallVehicle { Circuits = "circuits:\n  battery lead: { from: battery.plus, feeds: bus bar, unfused: short }\n  horn feed: { from: F1, feeds: horn.1 }\n" };
        Assert.Contains(good, usual.Text + usual.Layout, StringComparison.Ordinal);
        string Wrong(string text) => text.Replace(good, bad, StringComparison.Ordinal);
        var told = Assert.Single((usual with { Power = Wrong(usual.Power), Things = Wrong(usual.Things), Protection = Wrong(usual.Protection), Circuits = Wrong(usual.Circuits), Layout = Wrong(usual.Layout) }).Read().Diagnostics);
        Assert.Equal(DiagnosticCodes.ShapeMismatch, told.Code);
    }

    [Fact]
    public void A_line_in_a_column_of_its_own_is_one_message()
    {
        var told = Assert.Single(new SmallVehicle { Circuits = "circuits:\n  a: { from: F1, feeds: horn.1 }\n b: { from: F1, feeds: horn.1 }\n  c: { from: F1, feeds: horn.1 }\n  # a remark\n  d: { from: F1, feeds: horn.1 }\n" }.Read().Diagnostics);
        Assert.EndsWith("; so of the 2 lines below it", told.Message, StringComparison.Ordinal);
        Assert.Contains("column", told.Hint, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("missing-key", "power:\n  §sources: {}\n", null)]
    [InlineData("missing-key", "power:\n  sources:\n    §battery: { kind: battery, at: tray, posts: { plus: M8 } }\n", "12 V")]
    [InlineData("unknown-name", "power:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8 } }\n  converters:\n    c: { fed-from: §batery, nominal: 12 V, at: tray, studs: { in: M6, out: M6 } }\n", "'battery'")]
    [InlineData("cycle", "power:\n  sources:\n    battery: { kind: battery, nominal: 12 V, at: tray, posts: { plus: M8 } }\n  converters:\n    §c: { fed-from: c, nominal: 12 V, at: tray, studs: { in: M6, out: M6 } }\n", null)]
    public void A_mistake_in_the_power_is_told_where_it_stands(string code, string power, string? hint) =>
        AssertMessage(new SmallVehicle { Power = power }.MessageAtMark(), code, hint);

    // what is typed at the first try; the parser's own words alone would not help them
    [Theory]
    [InlineData("yaml-syntax", "states:\n§\tnight: { key: run }\n", "spaces")]
    [InlineData("yaml-syntax", "sheet-title: { owner: Works§: north }\n", "quotes")]
    [InlineData("yaml-syntax", "states:\n  night: { key: run }\n  §- day\n", null)]
    [InlineData("yaml-syntax", "unknown-allowed: §\"yes\n", "close the quote")]
    [InlineData("yaml-syntax", "options: { heating: { one of: [none, §-], usual: none } }\n", "stands alone needs quotes")]
    [InlineData("yaml-syntax", "sheet-title: { owner: #1 Works }§\n", "begins a remark")]
    public void A_file_that_is_not_YAML_is_told_in_plain_words(string code, string rest, string? hint) =>
        AssertMessage(new SmallVehicle { Rest = rest }.MessageAtMark(), code, hint);

    [Theory]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §0 A }", "4.6 A")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, size: §0 mm2 }", "0.75 mm2")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §2,5 A }", "'2.5 A'")]
    [InlineData("quantity", "  feed:\n    from: F1\n    feeds: horn.1\n    draws: §2,5 A", "'2.5 A'")]
    [InlineData("quantity", "  feed: { from: F1, feeds: horn.1, draws: §4 Amps }", "'4 A'")]
    public void A_number_that_cannot_be_meant_is_told(string code, string circuit, string? hint) =>
        AssertMessage(new SmallVehicle { Circuits = "circuits:\n" + circuit + "\n" }.MessageAtMark(), code, hint);

    /// <summary>What is lost with a broken line (the horn, the ground it names) is not missed elsewhere; mistakes of the lines that are whole are told.</summary>
    [Fact]
    public void Beside_broken_lines_the_mistakes_of_whole_lines_are_told_and_nothing_that_only_comes_of_the_broken_ones()
    {
        var sound = new SmallVehicle();
        var vehicle = sound with
        {
            Things = sound.Things.Replace("horn: {", "horn {", StringComparison.Ordinal).Replace("ground left: { at: wing, ground: M8 }", "ground left: { at: wing, ground: M8", StringComparison.Ordinal)
                .Replace("at: pass, mate", "at: pas, mate", StringComparison.Ordinal),
            Circuits = "circuits:\n  horn: { from: F1, feeds: horn.1 }\n  dipped beam: { from: F77, enters-by: firewall, feeds: headlamp left.56c, colour: RED, size: 2,5 mm2 }\n",
            Layout = sound.Layout.Replace("nose: { at:", "nose { at:", StringComparison.Ordinal).Replace("500 mm }", "500 }", StringComparison.Ordinal),
        };
        Assert.Equal(
            [
                "van-harness 11 yaml-syntax", "van-harness 12 unknown-name", "van-harness 20 choice", "van-harness 20 quantity", "van-harness 20 unknown-name", "van-harness 20 unknown-pin", "van-harness 9 yaml-syntax",
                "van 7 yaml-syntax", "van 9 quantity",
            ],
            vehicle.Read().Diagnostics.Select(d => $"{System.IO.Path.GetFileNameWithoutExtension(d.At!.File)} {d.At.Line} {d.Code}").Order(StringComparer.Ordinal).OrderBy(d => d.StartsWith("van ", StringComparison.Ordinal)));
    }

    [Fact]
    public void Parts_of_a_file_that_is_named_in_a_broken_line_are_not_missed()
    {
        var sound = new SmallVehicle();
        var vehicle = sound with { Things = sound.Things.Replace("lamp-3", "own-lamp", StringComparison.Ordinal), Rest = "parts-from: [own-parts.yaml\n" };
        Assert.Equal(DiagnosticCodes.YamlSyntax, Assert.Single(vehicle.Read().Diagnostics).Code);
    }

    /// <summary>Which of the two is meant nobody knows: a nearest pin of the one that was read first may be a live one.</summary>
    [Theory]
    [InlineData("  fan relay: { at: wing, relay: { coil: [1, 2], makes: [3, 5] } }\n", "duplicate-key", "F1: { kind: bolt-in")]
    [InlineData("", "duplicate-name", "fan relay: { kind: bolt-in")]
    public void Of_a_name_that_is_given_twice_no_pin_is_proposed(string again, string code, string protection)
    {
        var sound = new SmallVehicle();
        var vehicle = sound with
        {
            Things = sound.Things + "  fan relay: { at: wing, relay: { coil: [85, 86], makes: [30, 87] } }\n" + again,
            Protection = sound.Protection.Replace("F1: { kind: bolt-in", protection, StringComparison.Ordinal),
            Circuits = "circuits:\n  fan: { from: fan relay.3, feeds: fan relay.1 }\n",
        };
        Assert.Equal(code, Assert.Single(vehicle.Read().Diagnostics).Code);
    }

    [Fact]
    public void A_decimal_comma_in_braces_is_one_mistake_under_all_of_the_number()
    {
        var message = Assert.Single((new SmallVehicle() with { Power = new SmallVehicle().Power.Replace("12 V", "12,0 V", StringComparison.Ordinal) }).Read().Diagnostics);
        Assert.Contains("'12,0 V' with a decimal comma", message.Message, StringComparison.Ordinal);
        Assert.Equal(6, message.At!.Length);
    }

    [Fact]
    public void A_source_of_no_volts_is_a_mistake() =>
        AssertMessage(new SmallVehicle { Power = "power:\n  sources:\n    battery: { kind: battery, nominal: §0 V, at: tray, posts: { plus: M8, minus: M8 } }\n" }.MessageAtMark(), "quantity", "12 V");

    [Fact]
    public void All_mistakes_are_told_in_one_run_sorted_by_place()
    {
        var outcome = new SmallVehicle
        {
            Circuits = "circuits:\n  a: { form: F7 }\n  b: { from: F1, feeds: hrn.1, draws: 4 W A }\n  c: { from: F1, feeds: horn.1, colour: QQ }\n",
            Rest = "waivers: 7\n",
        }.Read();
        Assert.Null(outcome.Value);
        Assert.True(outcome.Failed);
        Assert.Equal(["unknown-key", "nothing-to-feed", "unknown-name", "quantity", "choice", "shape"], outcome.Diagnostics.Select(d => d.Code).OrderBy(c => Array.IndexOf(["unknown-key", "nothing-to-feed", "unknown-name", "quantity", "choice", "shape"], c)));
        Assert.Equal(outcome.Diagnostics.Select(d => d.At!.Line).Order(), outcome.Diagnostics.Select(d => d.At!.Line));
    }

    [Fact]
    public void Where_the_circuits_are_missing_as_a_whole_no_name_of_one_is_told()
    {
        var outcome = new SmallVehicle
        {
            Circuits = "circuit:\n  dipped beam: { from: F7, enters-by: firewall, feeds: headlamp left.56b }\n",
            Rest = "states:\n  night: { key: run, on: [dipped beam] }\n",
        }.Read();
        Assert.Equal(["unknown-key"], outcome.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Code));
    }

    /// <summary>What stands under a mistyped key is not lacking as well.</summary>
    [Theory]
    [InlineData("  dipped beam: { from: F7, enters-by: firewall, §fedes: headlamp left.56b }", "did you mean 'feeds'?")]
    [InlineData("  feed: { §form: F1, feeds: horn.1 }", "did you mean 'from'?")]
    [InlineData("  dipped beam: { from: F7, §enter-by: firewall, feeds: headlamp left.56b }", "did you mean 'enters-by'?")]
    [InlineData("  feed: { §from:F1, feeds: horn.1 }", "put a blank after the colon: 'from: F1'")]
    [InlineData("  feed: { by-hand: [{ wire: H1, form: F1, to: horn.1 }] }", null)]
    public void A_mistyped_key_is_one_mistake(string circuit, string? hint)
    {
        var vehicle = new SmallVehicle { Circuits = "circuits:\n" + circuit + "\n" };
        var errors = (vehicle with { Circuits = vehicle.Circuits.Replace("§", "", StringComparison.Ordinal) }).Read().Diagnostics.Where(d => d.Severity == Severity.Error).ToList();
        Assert.Equal(["unknown-key"], errors.Select(d => d.Code));
        if (hint is not null)
        {
            AssertMessage(vehicle.MessageAtMark(), "unknown-key", hint);
        }
    }

    [Theory]
    [InlineData("colour: §RD-WH", "'RD/WH'")]
    [InlineData("colour: §rd/wh", "'RD/WH'")]
    [InlineData("size: §AWG 16", "'16 AWG'")]
    [InlineData("feeds: horn.1, §to: ground left", "make two of it")]
    public void A_slip_of_the_pen_is_told_with_what_was_meant(string typed, string hint)
    {
        var circuit = typed.StartsWith("feeds", StringComparison.Ordinal) ? typed : $"feeds: horn.1, {typed}";
        AssertMessage(new SmallVehicle { Circuits = $"circuits:\n  feed: {{ from: F1, {circuit} }}\n" }.MessageAtMark(), circuit == typed ? "chosen-twice" : typed.StartsWith("size", StringComparison.Ordinal) ? "quantity" : "choice", hint);
    }

    [Fact]
    public void Of_a_connector_that_is_not_made_its_family_is_told() => AssertMessage(
        new SmallVehicle { Things = new SmallVehicle().Things.Replace("plug: lamp-3,", "plug: §motor-3,", StringComparison.Ordinal) }.MessageAtMark(), "unknown-name", "There are motor-2, motor-4, motor-5, motor-6");

    [Fact]
    public void A_place_with_two_figures_is_told_which_three_it_has() => AssertMessage(
        new SmallVehicle { Layout = new SmallVehicle().Layout.Replace("at: [600, 500, 650]", "at: §[600, 500]", StringComparison.Ordinal) }.MessageAtMark(), "list-length", "x, y and z in mm");

    [Fact]
    public void A_layout_in_place_of_the_description_is_one_mistake()
    {
        var found = Assert.Single(HarnessReader.Read("van.yaml", new MemoryFiles(new Dictionary<string, string>(StringComparer.Ordinal) { ["van.yaml"] = new SmallVehicle().Layout })).Diagnostics);
        Assert.Contains("is a vehicle layout, not a description", found.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plug: lamp-3,", "plug: lmp-3,")]
    [InlineData("mate: bulkhead-24", "mate: bulkhead-25")]
    public void Of_a_thing_whose_connector_is_unknown_only_that_is_told(string good, string bad)
    {
        var usual = new SmallVehicle();
        Assert.Contains(good, usual.Things, StringComparison.Ordinal);
        var outcome = (usual with
        {
            Things = usual.Things.Replace(good, bad, StringComparison.Ordinal),
            Circuits = "circuits:\n  dipped beam: { from: F7, enters-by: firewall, cavity: B9, feeds: headlamp left.56b }\n",
            Rest = "kept:\n  pins: { B9: { comes-from: F7, colour: YE } }\n",
        }).Read();
        Assert.True(outcome.Failed);
        Assert.Equal(DiagnosticCodes.UnknownName, Assert.Single(outcome.Diagnostics).Code);
    }

    [Fact]
    public void A_missing_description_or_layout_is_a_message()
    {
        var none = HarnessReader.Read("none.yaml", new MemoryFiles(new Dictionary<string, string>()));
        Assert.Equal(DiagnosticCodes.FileMissing, Assert.Single(none.Diagnostics).Code);
        var vehicle = new SmallVehicle { Head = "harness: Test\nvehicle: V\nvehicle-layout: §elsewhere.yaml\n" };
        AssertMessage(vehicle.MessageAtMark(), DiagnosticCodes.FileMissing, "beside");
    }

    [Fact]
    public void Every_code_is_explained()
    {
        var codes = typeof(DiagnosticCodes).GetFields().Where(f => f.IsLiteral).Select(f => (string)f.GetRawConstantValue()!).ToArray();
        Assert.True(codes.Length > 25);
        Assert.All(codes, c => Assert.True(DiagnosticCodes.Explain(c)?.Length > 20, c));
        Assert.Equal(codes.Length, codes.Distinct().Count());
        Assert.Null(DiagnosticCodes.Explain("no-such-code"));
    }

    [Fact]
    public void Every_code_is_used()
    {
        var sources = string.Concat(Conventions.Repository.Sources("src").Where(f => !f.EndsWith("DiagnosticCodes.cs", StringComparison.Ordinal)).Select(File.ReadAllText));
        var unused = typeof(DiagnosticCodes).GetFields().Where(f => f.IsLiteral).Select(f => f.Name).Where(n => !sources.Contains($"DiagnosticCodes.{n}", StringComparison.Ordinal));
        Assert.Empty(unused);
    }

    private static void AssertMessage(Diagnostic message, string code, string? hint)
    {
        Assert.Equal(code, message.Code);
        if (hint is not null)
        {
            Assert.Contains(hint, $"{message.Message} {message.Hint}", StringComparison.Ordinal);
        }
    }
}
