using System.Collections.Immutable;
using HarnessDraw.Checking;
using HarnessDraw.Comparing;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Reading;
using HarnessDraw.Reading.Edits;
using HarnessDraw.Reading.Frozen;
using HarnessDraw.Reading.Import;
using HarnessDraw.Sheets;
using HarnessDraw.Sheets.SetChecks;
using HarnessDraw.Writing;

namespace HarnessDraw;

/// <summary>
/// The whole run: read, plan, check, lay out, write. Each step takes a record and returns the next; files are touched only through
/// <see cref="IFileSource"/>, and what is to be written is handed back as named bytes.
/// </summary>
public static class HarnessCompiler
{
    /// <summary>Behind the description's name: the file that says what was built.</summary>
    public const string FrozenEnding = ".frozen.json";

    /// <summary>Behind the description's name: the file with lengths as they were cut and measured.</summary>
    public const string AsBuiltEnding = ".as-built.csv";

    /// <summary>Reads a description and whatever it names, plans it over all its options and checks the plan.</summary>
    public static Outcome<CheckedPlan> Plan(string descriptionFile, IFileSource files, RuleSettings rules)
    {
        var read = HarnessReader.Read(descriptionFile, files);
        if (read.Failed)
        {
            return new(null, read.Diagnostics);
        }

        var bag = new DiagnosticBag();
        var described = read.Value! with { Layout = read.Value!.Layout with { Outline = BroughtDrawings.BodyLines(read.Value!.Layout, bag) } };
        _ = (BroughtDrawings.Logo(described.Drawing, bag), BroughtDrawings.Faces(described.Drawing, FaceSet.Shipped, bag));
        if (bag.HasErrors)
        {
            return new(null, [.. read.Diagnostics, .. bag.ToSorted()]);
        }

        var built = Frozen(descriptionFile, files);
        if (built is { Failed: true })
        {
            return new(null, [.. read.Diagnostics, .. built.Diagnostics]);
        }

        var measured = AsBuilt(descriptionFile, files, described);
        if (measured is { Failed: true })
        {
            return new(null, [.. read.Diagnostics, .. measured.Diagnostics]);
        }

        var harness = built is null ? described : FrozenKeeper.Keep(described, built.Value!);
        var plan = HarnessPlanner.Plan(measured is null ? harness : AsBuiltKeeper.Keep(harness, measured.Value!), new PlanningOptions());
        plan = built is null ? plan : FrozenKeeper.KeepLengths(plan, built.Value!);
        plan = measured is null ? plan : AsBuiltKeeper.KeepLengths(plan, measured.Value!);
        return new(HarnessChecker.Checked(plan, rules), read.Diagnostics);
    }

    /// <summary>The same plan, its findings with cures that were planned and solved again; a plan without such findings is handed back as it is.</summary>
    public static CheckedPlan Cure(string descriptionFile, IFileSource files, RuleSettings rules, CheckedPlan planned, bool ofAdvice = false) =>
        CureFinder.Cure(descriptionFile, files, rules, planned, ofAdvice);

    /// <summary>The files of a description with changes that are tried in memory, or what is wrong with a change.</summary>
    public static (IFileSource? Files, string? Problem) Edit(string descriptionFile, IFileSource files, ImmutableArray<string> changes) => FileEdits.Apply(descriptionFile, files, changes);

    /// <summary>Lengths as built, from the file beside the description; null when there is none.</summary>
    private static Outcome<AsBuilt>? AsBuilt(string descriptionFile, IFileSource files, Harness harness)
    {
        var file = InputFiles.Beside(descriptionFile, System.IO.Path.GetFileNameWithoutExtension(descriptionFile) + AsBuiltEnding);
        return files.Exists(file) ? AsBuiltReader.Read(file, files, harness) : null;
    }

    /// <summary>What was built, from the file beside the description; null when nothing was frozen.</summary>
    private static Outcome<FrozenHarness>? Frozen(string descriptionFile, IFileSource files)
    {
        var file = InputFiles.Beside(descriptionFile, System.IO.Path.GetFileNameWithoutExtension(descriptionFile) + FrozenEnding);
        return files.Exists(file) ? FrozenReader.Read(file, files) : null;
    }

    /// <summary>An order with the logo and the face that the description names. What is wrong with them was told when it was read.</summary>
    public static DrawOrder Complete(DrawOrder order, CheckedPlan planned)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(planned);
        var drawing = planned.Plan.Harness.Drawing;
        var told = new DiagnosticBag();
        return order with { Logo = BroughtDrawings.Logo(drawing, told), Faces = BroughtDrawings.Faces(drawing, order.Faces, told) };
    }

    /// <summary>What a plan would build, with the places of the wall chart as the order asks for it; those of what was built before are kept.</summary>
    public static FrozenHarness Freeze(CheckedPlan planned, DrawOrder order)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(order);
        var (plan, built) = (planned.Plan, planned.Plan.Harness.Built);
        var marked = built?.Chart is null ? order : order with { Changes = new("", "", [], 0) { Chart = built.Chart } };
        return HarnessFreezer.Freeze(plan) with { Chart = WallChart.Taken(plan, planned.Findings, marked.OptionsFor(SheetKinds.WallChart, blackInk: false)) };
    }

    /// <summary>What a plan changes of a built harness, for marks on the sheets and the places of its wall chart; refused as <see cref="HarnessComparer"/> says.</summary>
    public static Outcome<ChangeMarks> ChangesSince(FrozenHarness built, Plan plan)
    {
        ArgumentNullException.ThrowIfNull(built);
        var compared = HarnessComparer.Compare(built, HarnessFreezer.Freeze(plan));
        return compared.Failed
            ? new(null, compared.Diagnostics)
            : new(new(Words(compared.Value!.Old), Words(compared.Value.New), [.. compared.Value.Changes.Select(c => new ChangeLine(HarnessComparer.Word(c.Kind), c.Wire, c.Circuit, c.How))], compared.Value.Unchanged) { Chart = built.Chart }, compared.Diagnostics);

        static string Words(FrozenHarness state) => state.Revision is { } revision ? $"revision {revision}" : "no revision";
    }

    /// <summary>Composes every sheet that was asked for, once for each ink, and checks the sheets.</summary>
    public static DrawingSet LayOut(CheckedPlan planned, DrawOrder order)
    {
        ArgumentNullException.ThrowIfNull(planned);
        ArgumentNullException.ThrowIfNull(order);
        var shown = order.Build is { } build ? (planned with { Plan = NetworkSolver.InBuild(planned.Plan, build) }).For(build) : planned;
        (string Kind, bool Black)[] wanted = [.. order.BlackInks.SelectMany(black => (order.Changes is null ? order.Sheets : order.Sheets.Add(SheetKinds.Changes)).Select(kind => (kind, black)))];
        // what the rules find marks the sheets only where it is an error: as long as they look, and planning itself found none, sheets are composed as if there were none
        var hasErrors = shown.Plan.PlanningFindings.Any(f => f.Severity == Severity.Error);
        var results = shown.IsChecked || hasErrors ? Compose(shown.Findings) : Compose([]) is var unmarked && shown.NotForBuild ? Compose(shown.Findings) : unmarked;
        var composed = results.SelectMany(r => r.Result.Sheets).ToImmutableArray();
        ImmutableArray<string> partly = [.. results.Where(r => r.Result.Refused is not null).Select(r => r.Kind).Distinct(StringComparer.Ordinal)];
        ImmutableArray<(string Kind, string Because)> failed = [.. composed.GroupBy(s => s.BlackInk).SelectMany(ink => SetCheck.Check(shown.Plan, ink, partly, order.About)).Distinct()];
        var sheets = SheetCount.Fill(failed.IsEmpty ? composed : [.. composed.Where(s => failed.All(f => f.Kind != s.Name))]);
        ImmutableArray<Sheet> tiles = order.TileOnto is { } paper ? Tiles(sheets, paper) : [];
        return new(shown, sheets)
        {
            Tiles = tiles,
            Figures = results.Select(r => r.Result.Figures).FirstOrDefault(f => f is not null),
            Refused = [.. results.Where(r => r.Result.Refused is not null).Select(r => new RefusedSheet(r.Kind, r.Result.Refused!)).Concat(failed.Select(f => new RefusedSheet(f.Kind, f.Because))).Distinct()],
            OnSheets = new(() => [.. SheetRules.Check(shown.Plan, sheets, order.Faces, hasErrors: shown.NotForBuild), .. SheetRules.CheckTiles(shown.Plan, tiles)]),
        };

        (string Kind, SheetResult Result)[] Compose(ImmutableArray<Finding> findings)
        {
            // composers are pure and each fills its own place: the order of the sheets does not depend on who is done first
            var made = new (string, SheetResult)[wanted.Length];
            SideBySide.For(wanted.Length, i => made[i] = (wanted[i].Kind, SheetKinds.Compose(wanted[i].Kind, shown.Plan, findings, order.OptionsFor(wanted[i].Kind, wanted[i].Black))));
            return made;
        }
    }

    /// <summary>Every file of a drawing run by name; each is made when it is asked for.</summary>
    public static ImmutableArray<OutputFile> Write(DrawingSet set, DrawOrder order) => OutputFiles.Of(set, order);

    /// <summary>The wall chart, the build board and templates that are larger cut onto small paper; pages count through all sheets of a kind and ink.</summary>
    private static ImmutableArray<Sheet> Tiles(ImmutableArray<Sheet> sheets, Paper paper) =>
    [
        .. sheets.Where(s => s.Name is SheetKinds.WallChart or SheetKinds.BuildBoard || (s.Name == SheetKinds.OpeningTemplate && Math.Max(s.Paper.WidthMm, s.Paper.HeightMm) > Math.Max(paper.WidthMm, paper.HeightMm) + 1))
            .GroupBy(s => (s.Name, s.BlackInk))
            .SelectMany(ink => ink.SelectMany(s => Tiler.Tile(s, paper)).Select((tile, i) => tile with { Number = i + 1 })),
    ];
}
