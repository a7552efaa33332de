using HarnessDraw.Drawing;
using HarnessDraw.Planning;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.Installation;
using HarnessDraw.Sheets.OpeningTemplates;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Tests.Drawing;
using HarnessDraw.Tracing;

namespace HarnessDraw.Tests.Sheets;

/// <summary>What holds for every kind of sheet beside the usual ones, on each example, in both inks.</summary>
public class FurtherSheetsTests
{
    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_sheet_is_faultless_and_leaves_no_word_out(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var kind in SheetKinds.All.Except(SheetKinds.Usual))
        {
            foreach (var black in new[] { false, true })
            {
                var result = SheetKinds.Compose(kind, plan, [], new() { BlackInk = black });
                SheetPictures.Put(name, result.Sheets);
                Assert.Equal([], result.Sheets.SelectMany(s => SheetChecker.Check(s).Select(f => $"{kind} {s.Number}: {f}")));
                Assert.Equal([], result.Sheets.SelectMany(s => OwnTexts(s).Where(t => t.Text.Contains('…', StringComparison.Ordinal)).Select(t => $"{kind} {s.Number}: {t.Text}")));
                Assert.All(result.Sheets, s => Assert.Contains(OwnTexts(s), t => t.Text.Contains("attery", StringComparison.Ordinal)));
            }
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void A_build_is_drawn_without_fault_and_shows_no_foreign_wire(string name)
    {
        var plan = ExamplePlans.Of(name);
        var build = plan.Builds[^1];
        var foreign = plan.Wires.Where(w => !w.Builds.Holds(build)).Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var kind in SheetKinds.All.Except(SheetKinds.Usual))
        {
            var sheets = SheetKinds.Compose(kind, plan, [], new() { Build = build }).Sheets;
            Assert.Equal([], sheets.SelectMany(s => SheetChecker.Check(s).Select(f => $"{kind} {s.Number}: {f}")));
            Assert.DoesNotContain(sheets.SelectMany(ItemWalk.Texts), t => t.Tag?.For is { } wire && foreign.Contains(wire));
        }
    }

    [Fact]
    public void Letter_paper_and_a_stamp_leave_every_sheet_faultless()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        Finding[] findings = [new() { Rule = "r", Severity = HarnessDraw.Diagnostics.Severity.Error, Message = "m" }];
        foreach (var kind in SheetKinds.All.Except(SheetKinds.Usual))
        {
            var sheets = SheetKinds.Compose(kind, plan, [.. findings], new() { Paper = PaperSizes.Letter }).Sheets;
            Assert.Equal([], sheets.SelectMany(s => SheetChecker.Check(s).Select(f => $"{kind} {s.Number}: {f}")));
            Assert.All(sheets, s => Assert.Contains(ItemWalk.Texts(s), t => t.Text == "NOT FOR BUILD"));
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_wire_has_a_label_for_each_end(string name)
    {
        var plan = ExamplePlans.Of(name);
        var names = Texts(SheetKinds.Labels, plan).Where(t => t.Tag?.For == t.Text).Select(t => t.Text);
        Assert.Equal(plan.Wires.SelectMany(w => new[] { w.Id, w.Id }).Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_fuse_stands_on_one_card_with_the_largest_permissible_rating(string name)
    {
        var plan = ExamplePlans.Of(name);
        var letters = Texts(SheetKinds.FuseCard, plan).ToList();
        var texts = letters.Select(t => t.Text).ToList();
        // on the card in letters that are read from above, and those with a chosen rating once more in the table of reasons
        Assert.All(plan.Fuses, f => Assert.Single(letters, t => t.Text == f.Id && t.CapHeightMm > 3));
        Assert.All(plan.Fuses, f => Assert.Equal(f is { RatingA: not null, Given: false } ? 1 : 0, letters.Count(t => t.Text == f.Id && t.CapHeightMm <= 3)));
        Assert.Equal(plan.Fuses.Length, texts.Count(t => t.StartsWith("never above ", StringComparison.Ordinal) || t.StartsWith("TOO LARGE: never above ", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_fuse_above_its_wires_is_named_on_the_card()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        var wrong = plan with { Fuses = [.. plan.Fuses.Select(f => f.Id == "F2" ? f with { RatingA = 30 } : f)] };
        Assert.Contains("TOO LARGE: never above 5 A", string.Join(' ', Texts(SheetKinds.FuseCard, wrong).Select(t => t.Text)), StringComparison.Ordinal);
        Assert.DoesNotContain(Texts(SheetKinds.FuseCard, plan), t => t.Text.StartsWith("TOO LARGE", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_splice_shows_each_of_its_wires_once(string name)
    {
        var plan = ExamplePlans.Of(name);
        var sheets = SheetKinds.Compose(SheetKinds.SpliceTable, plan, [], new()).Sheets;
        var lanes = sheets.SelectMany(ItemWalk.All).Where(i => i.Role == ItemRole.Lane).Select(i => i.Tag!.Wire!);
        Assert.Equal(plan.Splices.SelectMany(s => s.Wires).Order(StringComparer.Ordinal), lanes.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_circuit_has_its_trace_and_a_trace_shows_only_its_own_way(string name)
    {
        var plan = ExamplePlans.Of(name);
        var tracer = new CircuitTracer(plan);
        var sheets = SheetKinds.Compose(SheetKinds.Trace, plan, [], new()).Sheets;
        foreach (var circuit in plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id)))
        {
            var own = sheets.SelectMany(s => ItemWalk.Groups(s).Where(g => g.Tag?.Circuit == circuit.Id).Select(g => (Sheet: s, Items: ItemWalk.Open(g.Items).ToList()))).ToList();
            Assert.NotEmpty(own);
            Assert.All(own, o => Assert.Contains(circuit.Id, o.Sheet.Title, StringComparison.Ordinal));
            var way = tracer.Of(circuit.Id).Value!.Ways.SelectMany(w => w.Hops).Select(h => h.Wire).OfType<string>().ToHashSet(StringComparer.Ordinal);
            var drawn = own.SelectMany(o => o.Items).Where(i => i.Role == ItemRole.Lane).Select(i => i.Tag!.Wire!).ToHashSet(StringComparer.Ordinal);
            Assert.Equal(way.Order(StringComparer.Ordinal), drawn.Order(StringComparer.Ordinal));
        }

        // no lane stands outside the group of its circuit
        Assert.Equal(sheets.SelectMany(ItemWalk.All).Count(i => i.Role == ItemRole.Lane), sheets.SelectMany(ItemWalk.Groups).Where(g => g.Tag?.Circuit is not null).SelectMany(g => ItemWalk.Open(g.Items)).Count(i => i.Role == ItemRole.Lane));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Short_traces_share_pages_and_no_trace_takes_more_pages_for_it(string name)
    {
        var plan = ExamplePlans.Of(name);
        var together = SheetKinds.Compose(SheetKinds.Trace, plan, [], new()).Sheets;
        var apart = plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id)).Sum(c => SheetKinds.Compose(SheetKinds.Trace, plan, [], new() { About = [c.Id] }).Sheets.Length);
        Assert.True(together.Length <= 0.95 * apart, $"{together.Length} pages, {apart} with each circuit on its own");
        foreach (var sheet in together)
        {
            // what a grey figure below the expected volts says is explained where a way ends
            var words = string.Join(' ', ItemWalk.Texts(sheet).Select(t => t.Text));
            Assert.True(words.Contains("≥, ≤: still good", StringComparison.Ordinal) || !words.Contains("TEST HERE FIRST", StringComparison.Ordinal), sheet.Title);

            // the ways of a page stand one below the other
            var heights = ItemWalk.Groups(sheet).Where(g => g.Tag?.Circuit is not null).Select(g => ItemWalk.Open(g.Items).OfType<TextItem>().Select(t => TextMeasure.Bounds(t)).ToList()).Select(b => (Top: b.Min(t => t.Y), Bottom: b.Max(t => t.Bottom))).ToList();
            Assert.All(heights.Zip(heights.Skip(1)), p => Assert.True(p.First.Bottom < p.Second.Top, sheet.Title));
        }
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_wire_stands_once_in_the_continuity_table_and_once_in_the_index(string name)
    {
        var plan = ExamplePlans.Of(name);
        foreach (var kind in new[] { SheetKinds.BenchTest, SheetKinds.FoundWires })
        {
            var ids = Texts(kind, plan).Where(t => t.Weight == FaceWeight.Bold && t.Tag?.For is { } wire && (t.Text == wire || t.Text.StartsWith(wire + " (", StringComparison.Ordinal))).Select(t => t.Tag!.For!);
            Assert.Equal(plan.Wires.Select(w => w.Id).Order(StringComparer.Ordinal), ids.Order(StringComparer.Ordinal));
        }
    }

    [Fact]
    public void Continuity_is_copper_and_two_contacts_by_hand()
    {
        // F01: its own cut length by the catalogue's resistance, and two contacts as the description assumes them, or 0.1 V at the terminal's rating where that is less
        var plan = ExamplePlans.Of("brackmere-six");
        var wire = plan.WireOf("F01");
        var perMetre = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == wire.WireType).Sizes.Single(s => s.Label == wire.SizeLabel).MilliohmPerM;
        var byHand = (perMetre * wire.CutLengthMm!.Value / 1000) + Contact(wire.From) + Contact(wire.To);
        var texts = Texts(SheetKinds.BenchTest, plan).ToList();
        var row = texts.First(t => t.Text == "F01" && t.Tag?.For == "F01").At.Y;
        Assert.Contains(texts, t => t.At.Y == row && t.Text == byHand.ToString("0.0"));

        double Contact(WireEnd end) => 1000 * Math.Min(plan.Harness.Assumed.ContactOhm, 0.1 / plan.Harness.Catalogue.Terminals.Single(t => t.Id == end.Terminal).CurrentA);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Every_pair_of_nets_is_parted_in_some_test(string name)
    {
        var plan = ExamplePlans.Of(name);
        var nets = plan.Wires.Select(w => w.Net).Distinct().Count();
        // a row of the table: all figures 1 or 2 on one line of one page, from left to right
        var codes = SheetKinds.Compose(SheetKinds.BenchTest, plan, [], new()).Sheets
            .SelectMany(s => OwnTexts(s).Where(t => t.Text is "1" or "2" && t.Weight == FaceWeight.Bold && t.Anchor == TextAnchor.Start).GroupBy(t => t.At.Y).Where(g => g.Count() == IsolationTests(nets)).Select(g => string.Concat(g.OrderBy(t => t.At.X).Select(t => t.Text))))
            .ToList();
        Assert.Equal(nets, codes.Count);
        Assert.Equal(nets, codes.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void The_power_sheet_shows_every_bolt_in_fuse_and_the_straps(string name)
    {
        var plan = ExamplePlans.Of(name);
        var sheets = SheetKinds.Compose(SheetKinds.Power, plan, [], new()).Sheets;
        var texts = sheets.SelectMany(OwnTexts).Select(t => t.Text).ToList();
        Assert.All(plan.Fuses.Where(f => f.Kind == HarnessDraw.Model.ProtectionKind.BoltIn), f => Assert.Contains(f.Id, texts));
        var lanes = sheets.SelectMany(ItemWalk.All).Where(i => i.Role == ItemRole.Lane).Select(i => i.Tag!.Wire!).ToList();
        Assert.Equal(lanes.Count, lanes.Distinct().Count());
        var battery = plan.Harness.Power.Sources.First(s => s.Kind == HarnessDraw.Model.SourceKind.Battery).Id;
        Assert.All(plan.Wires.Where(w => w.From.At == battery || w.To.At == battery), w => Assert.Contains(w.Id, lanes));
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Rings_on_a_stud_stand_the_largest_at_the_bottom_each_with_its_terminal_and_boot(string name)
    {
        var plan = ExamplePlans.Of(name);
        var texts = Texts(SheetKinds.Power, plan).ToList();
        var studs = plan.Wires.SelectMany(w => new[] { (Wire: w, End: w.From), (Wire: w, End: w.To) }).Where(e => e.End.Terminal?.StartsWith("ring", StringComparison.Ordinal) == true)
            .GroupBy(e => (e.End.At, e.End.Pin)).Where(g => g.Count() > 1 && texts.Exists(t => t.Text == $"{plan.Harness.ThingOf(g.Key.At).Label.ToUpperInvariant()}, {g.Key.Pin}")).ToList();
        Assert.NotEmpty(studs);
        foreach (var stud in studs)
        {
            var rows = stud.Select(e => (e.Wire, Row: texts.Find(t => t.Tag?.For == e.Wire.Id && t.Text.Contains($", {e.End.Terminal}", StringComparison.Ordinal)), e.End)).ToList();
            Assert.All(rows, r => Assert.NotNull(r.Row));
            Assert.All(rows, r => Assert.Equal(r.End.ThreadOnFirst.Contains("rubber boot"), r.Row!.Text.EndsWith(", boot", StringComparison.Ordinal)));

            // lower on paper is nearer the seat
            var upwards = rows.OrderByDescending(r => r.Row!.At.Y).Select(r => r.Wire.AreaMm2).ToList();
            Assert.Equal(upwards.OrderDescending(), upwards);
        }
    }

    [Fact]
    public void A_lead_without_a_fuse_says_how_far_it_runs_from_the_last_that_has_a_reason_and_how_far_it_may()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var starter = plan.Wires.Single(w => w.Circuit == "starter cable");
        var bar = plan.Wires.Single(w => w.From.At == "starter" && w.To.At == "bus bar");
        Assert.DoesNotContain(Texts(SheetKinds.Power, plan), t => t.Text.Contains(" of max ", StringComparison.Ordinal));

        // without its reason the lead to the bar has a limit: 40 in as it is sheathed, 7 in where a stretch of it lies bare (ABYC E-11 as quoted)
        var unreasoned = plan with { Harness = plan.Harness with { Circuits = [.. plan.Harness.Circuits.Select(c => c.Id == bar.Circuit ? c with { UnfusedBecause = null } : c)] } };
        var dimension = Assert.Single(Texts(SheetKinds.Power, unreasoned), t => t.Text.Contains(" of max ", StringComparison.Ordinal));
        Assert.Equal(bar.Id, dimension.Tag!.For);
        Assert.Equal($"{Math.Round(bar.PathLengthMm!.Value):0} of max 1000 mm", dimension.Text.Replace('\u00a0', ' '));
        var bare = unreasoned with { Tree = unreasoned.Tree with { Segments = [.. unreasoned.Tree.Segments.Select(s => bar.Segments.Contains(s.Id) && !starter.Segments.Contains(s.Id) ? s with { Covering = null } : s)] } };
        Assert.EndsWith("of max 180 mm", Assert.Single(Texts(SheetKinds.Power, bare), t => t.Text.Contains(" of max ", StringComparison.Ordinal)).Text.Replace('\u00a0', ' '));
    }

    [Fact]
    public void A_short_is_the_source_over_its_own_and_the_copper_s_resistance_by_hand()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var lead = plan.Wires.Single(w => w.Circuit == "starter cable");
        var perMetre = plan.Harness.Catalogue.WireTypes.Single(t => t.Id == lead.WireType).Sizes.Single(s => s.Label == lead.SizeLabel).MilliohmPerM;
        var amps = 12 * 1.05 / (0.008 + (perMetre * lead.CutLengthMm!.Value * 1e-6));
        Assert.Contains(Texts(SheetKinds.Power, plan), t => t.Text == $"short {Math.Round(amps):0} A");
    }

    [Fact]
    public void The_load_of_a_state_is_what_the_leads_carry_and_stands_against_the_alternator()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var output = plan.Harness.Power.Sources.Single(s => s.Kind == HarnessDraw.Model.SourceKind.Alternator).OutputA!.Value;
        var texts = Texts(SheetKinds.Power, plan).ToList();
        foreach (var point in HarnessDraw.Electrical.NetworkSolver.Solve(plan).Where(p => p.State is "running" or "full beam"))
        {
            var row = texts.Single(t => t.Text == point.State && t.Weight == FaceWeight.Bold);
            var figures = texts.Where(t => t.At.Y == row.At.Y && t.Anchor == TextAnchor.End && t.At.X > row.At.X).OrderBy(t => t.At.X).Select(t => double.Parse(t.Text.Replace('\u2212', '-'), System.Globalization.CultureInfo.InvariantCulture)).ToList();

            // by the leads that carry it: the charge lead, what the alternator's own field and its lamp take at its exciter terminal, and the one lead on the battery's live post
            double In(string circuit) => Math.Abs(point.Wires.Single(w => w.Wire == plan.Wires.Single(p => p.Circuit == circuit).Id).CurrentA);

            // drawn, alternator gives, of, reserve, battery gives, battery volts
            Assert.Equal(6, figures.Count);
            var atExciter = In("exciter") + point.Loads.Where(l => l.Thing == "alternator").Sum(l => l.CurrentA);
            Assert.Equal(In("charge lead") + atExciter, figures[1], 0.11);
            Assert.Equal(In("starter cable"), Math.Abs(figures[4]), 0.11);
            Assert.Equal(figures[0], figures[1] + figures[4], 0.11);
            Assert.Equal(output, figures[2]);
            Assert.Equal(output - figures[0], figures[3], 0.11);
        }
    }

    [Fact]
    public void Installation_removes_the_wires_that_a_build_leaves_out_by_their_cavities()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var build = plan.Builds[0].SetItem("charging", "single wire");
        var cavity = plan.Cavities.First(c => c.Connector == "firewall" && plan.Wires.Any(w => w.Id == c.Wire && w.Circuit == "exciter")).Cavity;
        var with = Words(SheetKinds.Compose(SheetKinds.Installation, plan, [], new() { Build = plan.Builds[0].SetItem("charging", "exciter") }).Sheets);
        var without = Words(SheetKinds.Compose(SheetKinds.Installation, plan, [], new() { Build = build }).Sheets);
        Assert.Contains($"firewall {cavity}, exciter: not in this build", without, StringComparison.Ordinal);
        Assert.DoesNotContain("exciter: not in this build", with, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(ExamplePlans.Names), MemberType = typeof(ExamplePlans))]
    public void Installation_numbers_branches_as_the_flags_of_the_wall_chart_do(string name)
    {
        var plan = ExamplePlans.Of(name);
        var words = Words(SheetKinds.Compose(SheetKinds.Installation, plan, [], new()).Sheets);
        var charts = SheetKinds.Compose(SheetKinds.WallChart, plan, [], new()).Sheets;
        var texts = charts.SelectMany(ItemWalk.Texts).ToList();

        // a flag: its name in capitals of 7 mm, its number in the disc before it
        var flags = texts.Where(t => t.CapHeightMm == 7 && plan.Harness.Layout.Places.Any(p => p.Branch?.ToUpperInvariant() == t.Text)).Select(t => (t.Text, Number: texts.Where(n => n is { Weight: FaceWeight.Bold, CapHeightMm: < 7 } && TextMeasure.Bounds(t).X - n.At.X is > 0 and < 14 && Math.Abs(n.At.Y - t.At.Y) < 2 && n.Text.All(char.IsAsciiDigit)).MaxBy(n => n.At.X)!.Text)).Distinct().ToList();
        Assert.True(flags.Count >= 3);
        Assert.All(flags, f => Assert.Contains($"{f.Number} {f.Text}: lay it along", words, StringComparison.Ordinal));
        Assert.Contains("flag 3 of the chart", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Installation_shows_where_on_the_vehicle_a_step_is_done()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var picture = new PlacePicture(plan, 26, 15.5);
        Assert.Empty(picture.Of([], new(0, 0)));
        Assert.Empty(picture.Of(["nowhere"], new(0, 0)));
        Point Disc(string place) => picture.Of([place], new(0, 0)).OfType<PathItem>().Where(i => i.Fill == Ink.Black).Select(i => ItemBounds.Of(i)!.Value.Centre).Single();
        var (firewall, left, right) = (Disc("pass-through"), Disc("left lamp"), Disc("right lamp"));
        Assert.True(left.X < firewall.X && right.Y < left.Y);
        foreach (var place in plan.Harness.Layout.Places)
        {
            var at = Disc(place.Id);
            Assert.True(at.X is > 0 and < 26 && at.Y is > 0 and < 15.5, place.Id);
        }

        var pages = InstallationSheets.Compose(plan, [], new()).Sheets;
        Assert.True(pages.SelectMany(ItemWalk.All).Count(i => i is PathItem { Role: ItemRole.Edge, Fill: var fill } && fill == Ink.Black) > 20);
    }

    [Theory]
    [InlineData(UnitsShown.Metric, "80 × 118 mm")]
    [InlineData(UnitsShown.Inch, "3.15 × 4.65 in")]
    [InlineData(UnitsShown.Both, "80 × 118 mm (3.15 × 4.65 in)")]
    public void An_opening_has_its_size_in_the_units_asked_for(UnitsShown units, string size)
    {
        var plan = ExamplePlans.Of("brackmere-six");
        foreach (var result in new[] { InstallationSheets.Compose(plan, [], new() { Units = units }), OpeningTemplateSheets.Compose(plan, [], new() { Units = units }) })
        {
            var words = string.Join(' ', result.Sheets.SelectMany(s => ItemWalk.Texts(s)).Select(t => t.Text)).Replace('\u00a0', ' ');
            Assert.Contains(size, words, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(UnitsShown.Metric, "80 × 118 mm")]
    [InlineData(UnitsShown.Inch, "3.15 × 4.65 in")]
    [InlineData(UnitsShown.Both, "80 × 118 mm")]
    public void The_size_stands_inside_the_cut_line(UnitsShown units, string size) =>
        Assert.Contains(ItemWalk.Texts(OpeningTemplateSheets.Compose(ExamplePlans.Of("brackmere-six"), [], new() { Units = units }).Sheets[0]), t => t.Text == size);

    [Fact]
    public void A_torque_that_is_not_given_is_left_to_the_maker()
    {
        var plan = ExamplePlans.Of("dunmarrow-18");
        var bare = plan with { Harness = plan.Harness with { Things = [.. plan.Harness.Things.Select(t => t with { TorqueNm = null })] } };
        Assert.Contains(Texts(SheetKinds.Installation, plan), t => t.Text == "12\u00a0N·m");
        Assert.DoesNotContain(Texts(SheetKinds.Installation, bare), t => t.Text.Contains("N·m", StringComparison.Ordinal));
        Assert.Contains(Texts(SheetKinds.Installation, bare), t => t.Text == "maker:\u00a0____");
    }

    [Fact]
    public void Survey_asks_for_what_is_estimated_and_not_for_what_was_measured()
    {
        var plan = ExamplePlans.Of("brackmere-six");
        var words = Words(SheetKinds.Compose(SheetKinds.Survey, plan, [], new()).Sheets);
        var estimated = plan.Tree.Segments.First(s => s.Estimated);
        var measured = plan.Tree.Segments.First(s => !s.Estimated && s.LengthMm is not null && !s.Assumed);
        Assert.Contains($"{estimated.From} to {estimated.To}", words, StringComparison.Ordinal);
        Assert.DoesNotContain($"{measured.From} to {measured.To}", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ready_set_holds_known_sheets()
    {
        Assert.All(ReadySets.Names, name => Assert.Empty(ReadySets.Of(name).Except(SheetKinds.All)));
        Assert.Empty(SheetKinds.All.Except(ReadySets.Names.SelectMany(n => ReadySets.Of(n))));
    }

    // wrapped lines of one cell stand below each other: all words of a page in the order they were set
    private static string Words(IEnumerable<Sheet> sheets) => string.Join(' ', sheets.SelectMany(OwnTexts).Select(t => t.Text));

    private static int IsolationTests(int nets) => (int)Math.Ceiling(Math.Log2(nets));

    private static IEnumerable<TextItem> Texts(string kind, Plan plan) => SheetKinds.Compose(kind, plan, [], new()).Sheets.SelectMany(OwnTexts);

    // the title block shortens long names of its own; it is tested with the frame
    private static IEnumerable<TextItem> OwnTexts(Sheet sheet) => ItemWalk.Texts(sheet with { Items = [.. sheet.Items.Where(i => i is not GroupItem { Name: "frame" })] });

    /// <summary>Charging current lifts a ground point a little below nought: no reading of it is too low.</summary>
    [Fact]
    public void No_trace_asks_a_ground_for_at_least_nought_volts() =>
        Assert.DoesNotContain(SheetKinds.Compose(SheetKinds.Trace, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.SelectMany(ItemWalk.Texts), t => t.Text == "≥ 0.0");

    /// <summary>With columns as wide as most rows want the table took 33 pages, most of their height given to a first column too narrow for its words.</summary>
    [Fact]
    public void The_symptom_table_shares_its_width_by_what_is_to_be_said() =>
        Assert.InRange(SheetKinds.Compose(SheetKinds.Symptoms, ExamplePlans.Of("brackmere-six"), [], new()).Sheets.Length, 1, 26);
}
