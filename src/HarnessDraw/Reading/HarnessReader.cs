using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>
/// Reads a harness description with the vehicle layout and the parts files it names, and resolves it. Every mistake is reported in one run;
/// a harness is returned only when there is no error.
/// </summary>
public static class HarnessReader
{
    public static Outcome<Harness> Read(string descriptionFile, IFileSource files)
    {
        ArgumentNullException.ThrowIfNull(descriptionFile);
        ArgumentNullException.ThrowIfNull(files);
        var bag = new DiagnosticBag();
        var inputs = new InputFiles(files, bag);
        var root = inputs.ReadYaml(descriptionFile, new SourceSpan(descriptionFile, 1, 1));
        if (root is null)
        {
            return new(null, bag.ToSorted());
        }

        if (root is InputMap { } other && !other.Has("harness") && other.Has("vehicle-layout") && other.Has("places") && other.Has("paths"))
        {
            bag.Error(DiagnosticCodes.WrongKind, $"'{descriptionFile}' is a vehicle layout, not a description", root.At, "give the description that names it under 'vehicle-layout'");
            return new(null, bag.ToSorted());
        }

        var checker = new ShapeChecker(bag);
        checker.Check(root, DescriptionShapes.Description, "the description");
        if (root is not InputMap map || bag.IsDoubtful("parts-from"))
        {
            return new(null, bag.ToSorted());
        }

        var layout = Layout(descriptionFile, map, inputs, checker, bag);
        var catalogue = map.TextNodes("parts-from").Aggregate(CatalogueReader.BuiltIn, (under, named) => WithParts(under, descriptionFile, named, inputs, bag));
        var ampacity = AmpacityOf(map.Map("ampacity"));
        var draft = new Draft(map, ampacity.On(catalogue), layout, bag);
        var harness = Resolve(descriptionFile, draft, checker) with { Ampacity = ampacity, Drawing = RemarkReader.Drawing(draft, name => inputs.Bring(descriptionFile, name)) };
        harness = harness with { SourceHash = inputs.Hash() };
        ReportUnknowns(checker, map, bag);
        return new(bag.HasErrors ? null : harness, bag.ToSorted());
    }

    private static AmpacityChoice AmpacityOf(InputMap? map) =>
        new(map?.Text("in-air") == "marine", map?.Text("in-bundles") == "marine" ? BundleDerating.Marine : BundleDerating.Steps);

    private static VehicleLayout? Layout(string descriptionFile, InputMap map, InputFiles inputs, ShapeChecker checker, DiagnosticBag bag)
    {
        if (map.TextNode("vehicle-layout") is not { } named)
        {
            return null;
        }

        var path = InputFiles.Beside(descriptionFile, named.Value);
        if (inputs.ReadYaml(path, named.At) is not { } root || LayoutReader.Read(root, checker, bag) is not { } layout)
        {
            return null;
        }

        return layout with { OutlineDrawing = inputs.Bring(path, (root as InputMap)?.TextNode("outline")) };
    }

    private static Catalogue WithParts(Catalogue under, string descriptionFile, InputText named, InputFiles inputs, DiagnosticBag bag)
    {
        var path = InputFiles.Beside(descriptionFile, named.Value);
        return inputs.Read(path, named.At) is { } text ? CatalogueReader.Merge(under, path, text, bag) : under;
    }

    // the order matters: conditions need the options, protections the things they sit on, circuits all of them
    private static Harness Resolve(string descriptionFile, Draft draft, ShapeChecker checker)
    {
        draft.Options = OptionReader.Read(draft);
        var power = PowerReader.ReadSources(draft);
        ReadThings(draft);
        var protections = PowerReader.ReadProtections(draft);
        CheckPlaces(draft);
        var pins = new PinResolver(draft);
        CheckReturns(draft, pins);
        var drafts = Circuits(draft, pins);
        WireIds.Check(drafts, draft.Bag);
        FeedCircles.Report(draft.Bag, protections, drafts);
        power = SeriesFinder.Joined(draft, power, drafts);
        var supply = new SupplyFinder(draft, power, drafts);
        drafts = [.. drafts.Select(d => d with { Circuit = supply.Completed(d, d.Circuit) })];
        var (circuits, nets) = new NetBuilder(draft).Build(drafts);
        var kept = new KeptReader(draft, pins);
        return new Harness
        {
            Id = System.IO.Path.GetFileNameWithoutExtension(descriptionFile),
            Title = draft.Root.Text("harness") ?? "",
            Vehicle = draft.Root.Text("vehicle") ?? "",
            Drawing = new DrawingData(),
            Power = power,
            Options = draft.Options.Options,
            OptionRules = draft.Options.Rules,
            States = StateReader.Read(draft, [.. circuits.Where(c => FeedsLamps(c, circuits, draft)).Select(c => c.Id)]),
            Things = [.. draft.Things],
            Protections = protections,
            Kept = kept.ReadPins(),
            Assumed = kept.ReadAssumptions(),
            Circuits = circuits,
            Nets = nets,
            KeepApart = RemarkReader.Apart(draft),
            SizedAlike = RemarkReader.Alike(draft),
            Waivers = RemarkReader.Waivers(draft),
            Allowances = AllowanceReader.Read(draft.Root.Map("allowances"), draft.Bag),
            Layout = draft.Layout ?? new VehicleLayout { Title = "", Root = "", Places = [], Paths = [] },
            Catalogue = draft.Catalogue,
            OpenQuestions = [.. checker.Unknowns.Select(u => new OpenQuestion(u.What, u.Node.At))],
            SourceHash = "",
        };
    }

    private static void ReadThings(Draft draft)
    {
        NameRules.ReportCaseOnly(draft.Root.Map("things"), "thing", draft.Bag);
        foreach (var (name, map) in draft.Blocks("things"))
        {
            draft.Add(ThingReader.Read(name, map, draft), name);
        }
    }

    // a thing in the cabin may stand anywhere; in the bay its place must be on the layout
    private static void CheckPlaces(Draft draft)
    {
        if (draft.Layout is null)
        {
            return;
        }

        var power = draft.Root.Map("power");
        foreach (var (name, map) in draft.Blocks("things").Concat(Sources("sources")).Concat(Sources("converters")).Concat(draft.Blocks("protection")))
        {
            if (map.TextNode("at") is { } place && draft.Thing(name.Value) is { } thing && (thing.Side == Side.Bay || draft.IsBuilt(Side.Cabin)) && thing.Place == place.Value)
            {
                NameRules.Known(place, draft.PlaceNames, "place", draft.Bag);
            }
        }

        IEnumerable<(InputText, InputMap)> Sources(string key) => power is null ? [] : draft.Blocks(key, power);
    }

    private static void CheckReturns(Draft draft, PinResolver pins)
    {
        foreach (var (_, map) in draft.Blocks("things"))
        {
            foreach (var entry in map.Map("returns")?.Entries ?? [])
            {
                if (entry.Value is InputText { IsEmpty: false } ground)
                {
                    pins.Resolve(ground, PinUse.Sink);
                }
            }
        }
    }

    private static ImmutableArray<CircuitDraft> Circuits(Draft draft, PinResolver pins)
    {
        NameRules.ReportCaseOnly(draft.Root.Map("circuits"), "circuit", draft.Bag);
        var reader = new CircuitReader(draft, pins);
        return [.. draft.Blocks("circuits").Select(c => reader.Read(c.Name, c.Map))];
    }

    // a lamp from which another circuit goes on, to a sender or an exciter, warns of something and lights nothing
    private static bool FeedsLamps(Circuit circuit, ImmutableArray<Circuit> circuits, Draft draft) =>
        circuit is { IsReturn: false, Duty: Duty.Continuous or Duty.Intermittent }
        && circuit.Feeds.Any(f => draft.Thing(f.Thing)?.Elements.Any(e => e.Kind == ElementKind.Lamp && e.PinA == f.Pin && !circuits.Any(c => !c.IsReturn && c.From is { } on && on.Thing == f.Thing && on.Pin == e.PinB)) == true);

    // 'unknown' needs a word that it is meant
    private static void ReportUnknowns(ShapeChecker checker, InputMap map, DiagnosticBag bag)
    {
        if (map.YesNo("unknown-allowed") == true)
        {
            return;
        }

        foreach (var (what, node) in checker.Unknowns)
        {
            bag.Error(DiagnosticCodes.UnknownNotAllowed, $"{what} is 'unknown'", node.At, "measure it, or say 'unknown-allowed: yes' in the description");
        }
    }
}
