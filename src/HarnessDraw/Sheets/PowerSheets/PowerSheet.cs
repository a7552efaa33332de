using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>The power sheet: batteries, starter, bars, heavy fuses, charge leads and straps as one drawing with sizes, lengths, ratings, torques and the most that can flow.</summary>
public static class PowerSheet
{
    // drawing and tables on one page and studs on the next rather than all on a paper that few can print
    private const int MostPages = 2;
    private static readonly ImmutableArray<Paper> Papers = [PaperSizes.A3, PaperSizes.A2, PaperSizes.A1];

    // studs are drawn larger, with larger letters where those too have room, as far as that takes no page more
    private static readonly ImmutableArray<(double Scale, double CapMm)> StudSizes = [(1.4, 3.5), (1.4, Pen.CapMm)];

    /// <summary>On the smallest paper that holds it on two pages, else the smallest that holds the drawing; none where the harness has no battery.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var trees = PowerTree.Of(shown);
        if (trees.IsEmpty)
        {
            return new([]);
        }

        var drawing = new PowerDrawing(shown, trees, options.Units);
        var form = new PageForm(SheetKinds.Power, "POWER", "power sheet")
        {
            Aside = "from the battery to the heavy fuses, and the straps back",
            Caution = $"Battery disconnected first: ground lead ({Ground(shown)}) off first, on last. Ground polarity: {(shown.Harness.Power.Ground == GroundPolarity.Negative ? "NEGATIVE" : "POSITIVE")}. Leads up to the bolt-in fuses are not fused: short, sheathed, booted, clear of edges. Fit the engine strap before cranking.",
            Paper = PaperSizes.A3,
        };
        var states = StateLoads.Of(plan, options.Build);
        var stacks = RingStack.Of(shown, trees.SelectMany(t => t.Live.All.Concat(t.Ground.All)));
        var tried = (options.Paper is { } asked ? [asked] : Papers).Select(p => On(p, stacks)).OfType<PageFlow>().ToList();
        if (tried.Count > 0)
        {
            return (tried.Find(r => r.Count <= MostPages) ?? tried[0]).ToResult();
        }

        var would = Papers.FirstOrDefault(p => drawing.Fits(new PageMaker(plan, findings, options with { Paper = p }, form).Area));
        return new([]) { Refused = would is null ? "the power drawing fits no paper" : $"the power drawing needs {would.Name}" };

        PageFlow? On(Paper paper, ImmutableArray<RingStack> studs)
        {
            var usual = With(studs);
            return usual is null ? null : StudSizes.Select(z => With([.. studs.Select(s => s with { Scale = z.Scale, CapMm = z.CapMm })])!).FirstOrDefault(r => r.Count == usual.Count) ?? usual;

            PageFlow? With(ImmutableArray<RingStack> shownStuds) => Pages(new(plan, findings, options with { Paper = paper }, form), drawing, plan, shown, trees, states, shownStuds, options.Units);
        }
    }

    // null: the drawing does not fit
    private static PageFlow? Pages(PageMaker maker, PowerDrawing drawing, Plan plan, Plan shown, ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees, ImmutableArray<StateLoads> states, ImmutableArray<RingStack> stacks, UnitsShown units)
    {
        if (!drawing.Fits(maker.Area))
        {
            return null;
        }

        var flow = new PageFlow(maker);
        flow.Piece(drawing.HeightMm, (pen, _) => drawing.Paint(pen, maker.Area));
        flow.Gap(4);
        flow.Beside(
            () =>
            {
                Table(flow, shown, trees, units);
                LoadNotes(flow, plan, states);
            },
            () => Loads(flow, states));
        Stacks(flow, stacks);
        return flow;
    }

    // beside each other, as many as the page is wide
    private static void Stacks(PageFlow flow, ImmutableArray<RingStack> stacks)
    {
        if (stacks.IsEmpty)
        {
            return;
        }

        flow.Heading("STUDS IN SECTION", 10 + stacks.Max(s => s.HeightMm));
        flow.Paragraph("From the seat up: the largest ring at the bottom, flat on clean metal; washer and nut on top of all; at most four rings a stud (FAA AC 43.13-1B chapter 11; ABYC E-11 as quoted). Boots on before the crimp, pulled over last. Wires of all builds are shown.");
        var columns = Math.Max(1, (int)(flow.Area.Width / stacks.Max(s => s.WidthMm)));
        var width = flow.Area.Width / columns;
        foreach (var row in stacks.Chunk(columns))
        {
            var height = row.Max(s => s.HeightMm);
            flow.Piece(height + 3, (pen, y) =>
            {
                for (var i = 0; i < row.Length; i++)
                {
                    row[i].Paint(pen, flow.Area.X + (i * width), y + height - row[i].HeightMm, width);
                }
            });
        }
    }

    private static string Ground(Plan plan) => plan.Harness.Power.Ground == GroundPolarity.Negative ? "minus" : "plus";

    private static void Table(PageFlow flow, Plan plan, ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees, UnitsShown units)
    {
        var nodes = trees.SelectMany(t => t.Live.All).Where(n => n.Thing.Kind == ThingKind.Fuse).ToList();
        ImmutableArray<(FuseChoice Fuse, PowerNode Node)> rows =
        [
            .. nodes.Select(n => (Fuse: plan.Fuses.FirstOrDefault(f => f.Id == n.Thing.Id)!, Node: n)).Where(r => r.Fuse is not null).DistinctBy(r => r.Fuse.Id).OrderBy(r => r.Fuse.Id, CavityOrder.Instance),
        ];
        if (!rows.IsEmpty)
        {
            flow.Heading("HEAVY FUSES", 20);
            flow.Table(new TextTable<(FuseChoice Fuse, PowerNode Node)>(
                rows, flow.Area,
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("fuse", r => r.Fuse.Id) { Style = TextStyle.Bold },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("A", r => Shown.Number(r.Fuse.RatingA, 1)) { Right = true, Style = TextStyle.Bold },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("never above A", r => Shown.Number(r.Fuse.LargestA, 1)) { Right = true },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("load A", r => Shown.Number(r.Fuse.LoadA, 1)) { Right = true },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("short A", r => Shown.Number(r.Node.ShortA)) { Right = true },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("unfused before it", r => r.Node.UnfusedMm is { } mm ? LengthWords.Of(mm, units) : Shown.Unknown) { Right = true },
                new TextColumn<(FuseChoice Fuse, PowerNode Node)>("dead when it opens", r => Dead(plan, r.Fuse)) { LeastMm = 80 }));
        }

        flow.Gap(2);
        var source = string.Join("; ", trees.Select(t => $"{t.Source.Id}: {Shown.Number(plan.Harness.Power.LiveV(t.Source) * 1.05, 1)} V behind {Shown.Number(plan.Harness.Power.LiveOhm(t.Source) * 1000, 1)} mΩ{(t.Source.InternalOhm is null ? " (assumed)" : "")}"));
        flow.Paragraph($"Short: the most that can flow into a dead short at that point, {source}, copper at 20 °C, joints and fuses left out. A fuse must be able to break it; joints, fuses and warm copper leave less, which check --faults tells. Unfused: at most 7 in ({LengthWords.Of(180, UnitsShown.Metric)}) from the battery or, past a lead that has its reason, 40 in ({LengthWords.Of(1000, UnitsShown.Metric)}) sheathed (ABYC E-11 as quoted). E: estimated length. Torques are from the description; where none is given see the maker.");
    }

    private static void Loads(PageFlow flow, ImmutableArray<StateLoads> states)
    {
        if (states.IsEmpty)
        {
            return;
        }

        flow.Heading("LOAD BY STATE", 20);
        flow.Table(new TextTable<StateLoads>(
            states, flow.Area,
            new TextColumn<StateLoads>("state", s => s.State.Id) { LeastMm = 30, Style = TextStyle.Bold },
            new TextColumn<StateLoads>("engine", s => s.State.Engine switch { EngineState.Running => "running", EngineState.Cranking => "cranking", _ => "stopped" }),
            new TextColumn<StateLoads>("drawn A", s => Shown.Fixed(s.LoadsA, 1)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<StateLoads>("alternator gives A", s => s.State.Engine == EngineState.Running ? Shown.Fixed(s.GivenA, 1) : Shown.Unknown) { Right = true },
            new TextColumn<StateLoads>("of A", s => s.State.Engine == EngineState.Running ? Shown.Number(s.OutputA, 1) : Shown.Unknown) { Right = true },
            new TextColumn<StateLoads>("reserve A", s => Shown.Fixed(s.ReserveA, 1)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<StateLoads>("battery A", s => Shown.Fixed(s.BatteryA, 1)) { Right = true },
            new TextColumn<StateLoads>("battery V", s => Shown.Fixed(s.BatteryV, 1)) { Right = true },
            new TextColumn<StateLoads>("most of it, A", s => s.Heaviest.Length == 0 ? Shown.Unknown : s.Heaviest) { LeastMm = 40 }));
    }

    private static void LoadNotes(PageFlow flow, Plan plan, ImmutableArray<StateLoads> states)
    {
        if (states.IsEmpty)
        {
            return;
        }

        flow.Gap(2);
        if (plan.Harness.Ampacity != AmpacityChoice.Usual)
        {
            flow.Paragraph($"Currents of wires: {(plan.Harness.Ampacity.MarineInAir ? "one in air by 33 CFR 183.425 Table E (105 °C)" : "one in air by the catalogue")}, in bundles by {(plan.Harness.Ampacity.Bundles == BundleDerating.Marine ? "the US Coast Guard's guideline as quoted" : "the usual steps")}.");
        }

        var build = plan.Builds.IsDefaultOrEmpty || plan.Builds.Length == 1 ? "" : "in the build of the title, else the usual one. ";
        var alternators = plan.Harness.Power.Sources.Where(s => s.Kind == SourceKind.Alternator).ToList();
        var said = alternators.Count == 0 ? "No alternator: the battery gives it all. "
            : alternators.Any(a => a.OutputA is null) ? "Output of the alternator not given: see the maker. " : "Reserve: rated output less what is drawn; below nought the battery drains while the engine runs. ";
        flow.Paragraph($"Load by state: {build}{said}Battery: minus takes charge. As given: a current that the description gives for a whole circuit counts whenever that circuit is live; for the feed of a fuse panel not with the key off, unless the state names it. Rated output is reached at speed only; at idle an alternator gives about half (common practice, no source).");
    }

    private static string Dead(Plan plan, FuseChoice fuse)
    {
        var circuits = plan.Harness.Circuits.Where(c => !c.IsReturn && plan.Wires.Any(w => w.Circuit == c.Id && fuse.Wires.Contains(w.Id))).ToList();
        var panels = circuits.SelectMany(c => c.Feeds).Select(f => f.Thing).ToHashSet(StringComparer.Ordinal);
        var behind = plan.Harness.Protections.Where(p => p.On is { } on && panels.Contains(on)).Select(p => p.Id).Order(CavityOrder.Instance).ToList();
        return string.Join(", ", circuits.Select(c => c.Id)) + (behind.Count > 0 ? $"; with it fuses {string.Join(", ", behind)}" : "");
    }
}
