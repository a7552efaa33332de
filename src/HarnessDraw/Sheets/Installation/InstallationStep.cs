using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Installation;

/// <summary>One action with its torque where a bolt is turned, why it is done so, and whether work stops until it is signed.</summary>
internal sealed record InstallationStep(string Stage, string What, string Why)
{
    public string Torque { get; init; } = "";

    /// <summary>What is commonly done wrong here (common practice, no source): one line for teaching.</summary>
    public string Mistake { get; init; } = "";
    public bool Holds { get; init; }

    /// <summary>The same step below another: a reason is told once.</summary>
    public InstallationStep After(InstallationStep before) => Stage == before.Stage && Why == before.Why ? this with { Why = "as above" } : this;

    /// <summary>Where it is done; empty: everywhere, or beside the vehicle.</summary>
    public ImmutableArray<string> Places { get; init; } = [];
}

/// <summary>The steps of a plan: what is general to the trade and what this harness has, in the order of the work.</summary>
internal sealed class InstallationPlan(Plan all, Plan shown, SheetOptions options)
{
    private readonly TreeMeasure measure = new(shown);

    // as the flags of the wall chart have them
    private readonly Dictionary<string, string> numbers = new WallChartSubject(shown).BranchNumbers;
    private readonly Harness harness = shown.Harness;

    public ImmutableArray<InstallationStep> Steps() =>
        [.. Before(), .. OldHarness(), .. Openings(), .. Removals(), .. Mates(), .. Hang(), .. Connect(), .. Grounds(), .. Studs(), .. Last()];

    private string GroundPost => harness.Power.Ground == GroundPolarity.Negative ? "minus" : "plus";

    private IEnumerable<InstallationStep> Before()
    {
        const string Stage = "BEFORE YOU START";
        yield return new(Stage, "Bench test passed and signed; this build named on every sheet.", "A fault found now costs minutes, behind the dash it costs a day.") { Holds = true, Mistake = "fitting first and testing when something does not work." };
        foreach (var battery in harness.Power.Sources.Where(s => s.Kind == SourceKind.Battery))
        {
            yield return new(Stage, $"Disconnect {battery.Id}: the {GroundPost} lead first. Keep it from springing back. Rings and watch off.", $"The {GroundPost} pole is the body: a spanner that slips then meets no live metal.") { Mistake = $"the {(GroundPost == "minus" ? "plus" : "minus")} lead first, or key left on." };
        }

        yield return new(Stage, "Photograph everything you are about to undo, from two sides.", "The way it lay is the way it fits.") { Mistake = "one picture from far off, with the clips out of sight." };
    }

    private IEnumerable<InstallationStep> OldHarness()
    {
        const string Stage = "OLD HARNESS";
        yield return new(Stage, "All fuses out of the circuits concerned; keep them with their numbers.", "Nothing is fed while halves are open.") { Mistake = "fuses thrown into one tin: their places are lost." };
        yield return new(Stage, "Take off the old harness from the loads inward. Label what stays.", "A plug without a name finds the wrong load.") { Mistake = "pulling on wires instead of on the latch and body." };
    }

    private IEnumerable<InstallationStep> Openings()
    {
        foreach (var opening in harness.Layout.Openings.OrderBy(o => o.Place, StringComparer.Ordinal))
        {
            yield return new("OPENINGS", $"Opening at {opening.Place}: {LengthWords.Of(opening, options.Units)} by the 1:1 template. Chips out, edge painted and trimmed.", "Cut with the old harness out; an unpainted edge rusts and cuts.") { Holds = true, Places = [opening.Place], Mistake = "cutting beside the old harness: chips end up in its contacts." };
        }
    }

    // by cavity: what this build leaves out, with the fate the description gives it
    private IEnumerable<InstallationStep> Removals()
    {
        const string Stage = "UNUSED WIRES OF THE KEPT HALF";
        foreach (var use in all.Cavities.Where(c => c.Wire is not null).OrderBy(c => c.Connector, StringComparer.Ordinal).ThenBy(c => c.Cavity, CavityOrder.Instance))
        {
            if (all.Wires.FirstOrDefault(w => w.Id == use.Wire) is not { } wire || harness.Circuits.FirstOrDefault(c => c.Id == wire.Circuit) is not { WhenNotFitted: { } fate } circuit || harness.Things.FirstOrDefault(t => t.Id == use.Connector)?.Kind != ThingKind.Mate)
            {
                continue;
            }

            var words = fate == "remove" ? "take the kept wire out of its cavity, cap and tie it back" : "cap the kept contact and tie the wire back";
            if (options.Build is null)
            {
                yield return new(Stage, $"{use.Connector} {use.Cavity}, {circuit.Id}: unless built with {circuit.OnlyWith.Words}, {words}.", "A wire cut and left may still be live.") { Mistake = "cut flush and taped: nobody finds it again." };
            }
            else if (!circuit.OnlyWith.Holds(options.Build))
            {
                yield return new(Stage, $"{use.Connector} {use.Cavity}, {circuit.Id}: not in this build, {words}.", "A wire cut and left may still be live.") { Mistake = "cut flush and taped: nobody finds it again." };
            }
        }
    }

    private IEnumerable<InstallationStep> Mates()
    {
        foreach (var mate in UsedThings().Where(t => t.Kind == ThingKind.Mate))
        {
            var part = harness.Catalogue.Connectors.FirstOrDefault(c => c.Id == mate.ConnectorPart);
            var stage = $"CONNECTOR {mate.Id.ToUpperInvariant()}";
            yield return new(stage, "Grease the contacts lightly, do not pack. Every unused cavity plugged.", "A body packed solid does not close; water takes the empty cavity.") { Places = [mate.Place], Mistake = "grease packed in until the halves no longer close." };
            yield return new(stage, "Check key and latch, join the halves by hand until they sit.", "The bolt must not pull crossed halves together.") { Places = [mate.Place], Mistake = "starting with the bolt when the halves do not sit." };
            if (part?.CentreBolt == true)
            {
                yield return new(stage, "Bolt: by hand tools, snug, then to the torque.", "Too tight cracks the body.") { Places = [mate.Place], Torque = Torque(mate.TorqueNm ?? part.BoltTorqueNm), Holds = true, Mistake = "a power tool, or one more turn to be sure." };
            }

            yield return new(stage, "Seal the wire entry with neutral-cure sealant only.", "Acid-cure sealant eats copper.") { Places = [mate.Place], Mistake = "bathroom sealant that smells of vinegar." };
        }
    }

    private IEnumerable<InstallationStep> Hang()
    {
        var branches = shown.Tree.Segments.Where(s => !s.Wires.IsEmpty).GroupBy(s => measure.Branch(s.To), StringComparer.Ordinal).OrderBy(g => g.Min(s => measure.Station(s.From) ?? double.MaxValue)).ThenBy(g => g.Key, StringComparer.Ordinal);
        foreach (var branch in branches)
        {
            var places = branch.OrderBy(s => measure.Station(s.To) ?? double.MaxValue).Select(s => s.To).Distinct(StringComparer.Ordinal);
            yield return new("HANG LOOSELY, FROM THE DATUM OUTWARD", $"{Numbered(branch.Key, branch.First().To)}: lay it along {string.Join(", ", places)}; clips half closed.{Clips(branch)}", "Slack can still be moved; a closed clip pins it in the wrong place.") { Places = [.. branch.SelectMany(g => new[] { g.From, g.To })], Mistake = "closing clips from one end, until the last plug is 20 mm short." };
        }

        foreach (var clear in harness.Layout.KeepClear)
        {
            yield return new("HANG LOOSELY, FROM THE DATUM OUTWARD", $"At least {LengthWords.Of(clear.ByMm, options.Units)} from {clear.What}.", "Heat and movement cut insulation.") { Holds = true, Mistake = "looking with the engine at rest and cold only." };
        }
    }

    private string? Number(string place) => measure.Named(place) is { } named ? numbers.GetValueOrDefault(named.Id) : null;

    private string Numbered(string branch, string place) => Number(place) is { } number ? $"{number} {branch}" : branch;

    private string Where(Thing thing) => Number(thing.Place) is { } number ? $"{thing.Place} ({number})" : thing.Place;

    private string Clips(IEnumerable<Segment> branch)
    {
        var clips = branch.Select(s => harness.Layout.Paths.FirstOrDefault(p => (p.From == s.From && p.To == s.To) || (p.From == s.To && p.To == s.From))?.ClipsEveryMm).OfType<double>().ToList();
        return clips.Count == 0 ? "" : $" A clip every {LengthWords.Of(clips.Min(), options.Units)}.";
    }

    private IEnumerable<InstallationStep> Connect()
    {
        foreach (var thing in UsedThings().Where(t => t.Side == Side.Bay && t.ConnectorPart is not null && t.Kind != ThingKind.Mate).OrderBy(t => measure.Station(t.Place) ?? double.MaxValue).ThenBy(t => t.Id, StringComparer.Ordinal))
        {
            var twins = UsedThings().Where(t => t.Id != thing.Id && t.ConnectorPart == thing.ConnectorPart && t.Place == thing.Place).Select(t => t.Id).ToList();
            var beware = twins.Count > 0 ? $" The same plug fits {string.Join(", ", twins)}: go by the label." : "";
            yield return new("CONNECT, FROM THE DATUM OUTWARD", $"{thing.Label}{(thing.SideMark is { } mark ? $" {mark}" : "")} at {Where(thing)}: plug in until it clicks, tug.{beware}", twins.Count > 0 ? "Like plugs crossed: both loads answer to the wrong switch." : "A plug that did not click opens on the road.") { Places = [thing.Place], Mistake = twins.Count > 0 ? "going by length: both plugs reach." : "no tug: it felt as if it had clicked." };
        }

        foreach (var thing in UsedThings().Where(t => t.Side == Side.Bay && t.ConnectorPart is null && t.Pins.Any(p => p.Style == PinStyle.Blade)).OrderBy(t => measure.Station(t.Place) ?? double.MaxValue).ThenBy(t => t.Id, StringComparer.Ordinal))
        {
            yield return new("CONNECT, FROM THE DATUM OUTWARD", $"{thing.Label}{(thing.SideMark is { } mark ? $" {mark}" : "")} at {Where(thing)}: push on by the labels ({Pins(thing)}), tug.", "A blade that slips off is a live end.") { Places = [thing.Place], Mistake = "two pins exchanged because the colours look alike." };
        }
    }

    private string Pins(Thing thing)
    {
        var ends = shown.Wires.SelectMany(w => new[] { (w.Id, End: w.From), (w.Id, End: w.To) }).Where(e => e.End.At == thing.Id).OrderBy(e => e.End.Pin ?? "", CavityOrder.Instance);
        return string.Join(", ", ends.Select(e => $"{e.End.Pin}: {e.Id}"));
    }

    private IEnumerable<InstallationStep> Grounds()
    {
        foreach (var ground in UsedThings().Where(t => t.Kind == ThingKind.GroundPoint).OrderBy(t => t.Id, StringComparer.Ordinal))
        {
            var note = ground.Note is { } words ? $" ({words})" : "";
            yield return new("GROUNDS", $"{ground.Id} at {Where(ground)}: bare metal to bare metal, {Sizes(ground)}, tight, then protect{note}.", "Paint under a ring is the commonest fault of all.") { Places = [ground.Place], Torque = Torque(ground.TorqueNm), Holds = true, Mistake = "a serrated washer on paint instead of bare metal." };
        }
    }

    private IEnumerable<InstallationStep> Studs()
    {
        var studs = UsedThings().Where(t => t.Side == Side.Bay && t.Kind is not (ThingKind.GroundPoint or ThingKind.Battery or ThingKind.Mate) && t.Pins.Any(p => p.Style == PinStyle.Stud));
        foreach (var thing in studs.OrderBy(t => t.Kind == ThingKind.Fuse).ThenBy(t => t.Id, CavityOrder.Instance))
        {
            yield return new("STUDS AND RINGS", $"{thing.Label} at {Where(thing)}: {Sizes(thing)}, largest ring at the bottom, boots over.", "A loose ring burns the stud.") { Places = [thing.Place], Torque = Torque(thing.TorqueNm), Mistake = "small rings under the large one, which then sits askew." };
        }
    }

    private IEnumerable<InstallationStep> Last()
    {
        const string Stage = "LAST";
        yield return new(Stage, "Close every clip. Full steering lock both ways, engine rocked, bonnet closed: nothing rubs, nothing pulls.", "What moves a little today is through in a year.") { Holds = true, Mistake = "checked with the wheels straight ahead only." };
        var bolted = shown.Fuses.Where(f => f.Kind is ProtectionKind.BoltIn or ProtectionKind.FusibleLink).OrderBy(f => f.Id, CavityOrder.Instance).Select(f => $"{f.Id} {Shown.Number(f.RatingA, 1)} A").ToList();
        if (bolted.Count > 0)
        {
            yield return new(Stage, $"Fit the bolt-in fuses last: {string.Join(", ", bolted)}.", "Everything behind them is dead until now.") { Mistake = "a larger fuse because the right one is not at hand." };
        }

        foreach (var battery in harness.Power.Sources.Where(s => s.Kind == SourceKind.Battery))
        {
            yield return new(Stage, $"Go on with the commissioning sheet: {battery.Id} through a limiting lamp, {GroundPost} lead last.", "The lamp glows instead of the wire.") { Torque = Torque(harness.Things.FirstOrDefault(t => t.Id == battery.Id)?.TorqueNm), Holds = true, Mistake = "the battery straight on: the spark is the first test." };
        }

        yield return new(Stage, "Hand over: fuse card in the lid, spare fuses, wall chart, readings, the description's file.", "The next person starts where you stopped.") { Mistake = "the papers stay at the bench." };
    }

    private string Sizes(Thing thing) => string.Join(", ", thing.Pins.Select(p => p.Size).Where(s => s.StartsWith('M')).Distinct(StringComparer.Ordinal));

    private static string Torque(double? newtonMetres) => newtonMetres is { } nm ? $"{nm.ToString("0.#", CultureInfo.InvariantCulture)}\u00a0N·m" : "maker:\u00a0____";

    private IEnumerable<Thing> UsedThings()
    {
        var ends = shown.Wires.SelectMany(w => new[] { w.From.At, w.To.At }).ToHashSet(StringComparer.Ordinal);
        return harness.Things.Where(t => ends.Contains(t.Id));
    }
}
