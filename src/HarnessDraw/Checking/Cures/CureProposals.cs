using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>
/// What might cure a finding, by its rule: wires of the next sizes, fuses of the next ratings, another class of wire, a heavier relay, a larger cavity. These are
/// proposals only; whether one cures is for the plan with it to show.
/// </summary>
public static class CureProposals
{
    /// <summary>Steps of a ladder: beyond so many sizes nobody looks for the cure there.</summary>
    private const int MostRungs = 6;

    private static readonly ImmutableSortedDictionary<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>> ByRule = Table();

    /// <summary>Rules whose findings have proposals.</summary>
    public static IEnumerable<string> Rules => ByRule.Keys;

    /// <summary>Ladders to try, the likeliest first; none when the rule's cure is no change of a figure.</summary>
    public static ImmutableArray<CureLadder> Of(Plan plan, RuleSettings settings, Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var context = new RuleContext(plan, settings);
        return ByRule.TryGetValue(finding.Rule, out var kinds) ? [.. kinds.SelectMany(k => k(context, finding)).Where(l => !l.Rungs.IsEmpty)] : [];
    }

    private static ImmutableSortedDictionary<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>> Table()
    {
        var table = ImmutableSortedDictionary.CreateBuilder<string, ImmutableArray<Func<RuleContext, Finding, IEnumerable<CureLadder>>>>(StringComparer.Ordinal);
        void Add(string rules, params Func<RuleContext, Finding, IEnumerable<CureLadder>>[] kinds)
        {
            foreach (var rule in rules.Split(' '))
            {
                table.Add(rule, [.. kinds]);
            }
        }

        // a larger wire brings a terminal that carries more
        Add("fuse-above-wire fuse-above-contact short-burns-wire short-will-not-open-fuse", SmallerFuse, LargerWire);
        Add("fuse-load-high fuse-overloaded fuse-state-sum fuse-load-with-option inrush-opens-fuse alternator-fuse-small", LargerFuse);
        Add("no-such-fuse-rating", SmallerFuse, LargerFuse);
        Add("fuses-not-selective", LargerFuse, SmallerFuse);
        Add("wire-overloaded return-overloaded", LargerWire, HotterWire);
        Add("loop-drop", LargerWire, RelayAtTheLoad);
        Add("headlamps-through-switch", RelayAtTheLoad);
        Add("charge-lead-drop starter-loop-drop strap-small wire-too-thin size-steps-down", LargerWire);
        Add("no-size-large-enough", SmallerFuse, HotterWire);
        Add("insulation-below-zone cross-linked-replaced", HotterWire);
        Add("no-terminal-fits outside-crimp-range", SmallerWire, LargerWire);
        Add("contact-overloaded", LargerCavity);
        Add("relay-contact-overloaded", HeavierRelay);
        Add("exciter-run-on", ExciterDiode);
        Add("exciter-current-low", HeavierLamp);
        return table.ToImmutable();
    }

    // where a finding names a main fuse and its branch, the first is made larger or the last smaller
    private static IEnumerable<CureLadder> LargerFuse(RuleContext context, Finding finding) => Fuses(context, finding).Take(1).Select(f => Rated(f, context.RatingsOf(f.Kind).Where(r => r > f.RatingA).Order()));

    private static IEnumerable<CureLadder> SmallerFuse(RuleContext context, Finding finding) => Fuses(context, finding).TakeLast(1).Select(f => Rated(f, context.RatingsOf(f.Kind).Where(r => r < f.RatingA).OrderDescending()));

    private static IEnumerable<FuseChoice> Fuses(RuleContext context, Finding finding) => finding.Where.Select(context.Fuse).OfType<FuseChoice>().Where(f => f.RatingA is > 0);

    private static CureLadder Rated(FuseChoice fuse, IEnumerable<double> ratings) => new(
        [.. ratings.Take(MostRungs).Select(r => new CureCandidate([$"fuse.{fuse.Id}.rating={Figure.Amps(r)}"], $"fuse {fuse.Id} of {Figure.Amps(r)} instead of {Figure.Amps(fuse.RatingA!.Value)}"))]);

    private static IEnumerable<CureLadder> LargerWire(RuleContext context, Finding finding) => Sized(context, finding, larger: true);

    private static IEnumerable<CureLadder> SmallerWire(RuleContext context, Finding finding) => Sized(context, finding, larger: false);

    // a ladder for each wire given by hand or circuit that the finding names, the longest run first: it loses most
    private static IEnumerable<CureLadder> Sized(RuleContext context, Finding finding, bool larger)
    {
        var named = finding.Where.Select(context.Wire).OfType<Wire>().ToList();
        var wires = named.Count > 0 ? named : [.. finding.Where.Select(context.Circuit).OfType<Circuit>().SelectMany(c => context.WiresOf(c.Id))];
        foreach (var target in wires.OrderByDescending(w => w.CutLengthMm ?? w.PathLengthMm ?? 0).ThenBy(w => w.Id, StringComparer.Ordinal).GroupBy(w => w.ByHand ? w.Id : w.Circuit, StringComparer.Ordinal).Take(3))
        {
            var wire = larger ? target.MinBy(w => w.AreaMm2)! : target.MaxBy(w => w.AreaMm2)!;
            var sizes = (context.TypeOf(wire)?.Sizes ?? []).Where(s => larger ? s.AreaMm2 > wire.AreaMm2 : s.AreaMm2 < wire.AreaMm2);
            var key = wire.ByHand ? $"circuit.{wire.Circuit}.by-hand.{wire.Id}.size" : $"circuit.{wire.Circuit}.size";
            yield return new([.. (larger ? sizes : sizes.Reverse()).Take(MostRungs).Select(s => new CureCandidate([$"{key}={Typed(s)}"], $"{(wire.ByHand ? $"wire {wire.Id}" : $"'{wire.Circuit}'")} of {Typed(s)} instead of {wire.SizeLabel}"))]);
        }
    }

    private static string Typed(WireSize size) => size.Awg is null ? $"{size.Label} mm2" : size.Label;

    /// <summary>Wire types that bear more heat than the circuit's own, the least first.</summary>
    private static IEnumerable<CureLadder> HotterWire(RuleContext context, Finding finding) =>
        finding.Where.Select(context.Wire).OfType<Wire>().Take(1).Select(w => new CureLadder(
            [.. context.Harness.Catalogue.WireTypes.Where(t => t.MaxC > context.TypeOf(w)?.MaxC).OrderBy(t => t.MaxC).ThenBy(t => t.Id, StringComparer.Ordinal).Take(MostRungs)
                .Select(t => new CureCandidate([$"circuit.{w.Circuit}.wire-type={t.Id}"], $"'{w.Circuit}' in {t.Title}"))]));

    /// <summary>Free cavities of the same mate and half with a larger contact, the nearest first.</summary>
    private static IEnumerable<CureLadder> LargerCavity(RuleContext context, Finding finding)
    {
        foreach (var wire in finding.Where.Select(context.Wire).OfType<Wire>().Take(1))
        {
            var end = new[] { wire.From, wire.To }.FirstOrDefault(e => e.ToString() == finding.Where[0]);
            if (end is null || context.Thing(end.At) is not { Kind: ThingKind.Mate } mate || context.PartOf(mate) is not { } part || part.Cavities.FirstOrDefault(c => c.Name == end.Pin) is not { } own)
            {
                continue;
            }

            var taken = context.Plan.Cavities.Where(c => c.Connector == mate.Id && c.Wire is not null).Select(c => c.Cavity).ToHashSet(StringComparer.Ordinal);
            var amps = context.Harness.Catalogue.Terminals.Where(t => part.TerminalFamilies.Contains(t.Family)).ToLookup(t => t.Size, t => t.CurrentA, StringComparer.Ordinal);
            double Bears(CavityPart cavity) => amps[cavity.Size].DefaultIfEmpty(0).Max();
            var free = part.Cavities.Where(c => c.Half == own.Half && !taken.Contains(c.Name) && Bears(c) > Bears(own))
                .OrderBy(Bears).ThenBy(c => Math.Abs(c.Xmm - own.Xmm) + Math.Abs(c.Ymm - own.Ymm)).ThenBy(c => c.Name, StringComparer.Ordinal).DistinctBy(c => c.Size);
            yield return new([.. free.Take(MostRungs).Select(c => new CureCandidate([$"circuit.{wire.Circuit}.cavity={c.Name}"], $"'{wire.Circuit}' through cavity {c.Name} ({c.Size} contact) of {mate.Id}"))]);
        }
    }

    /// <summary>Relays with contacts of the next ratings that are sold (common practice, no source).</summary>
    private static IEnumerable<CureLadder> HeavierRelay(RuleContext context, Finding finding) =>
        finding.Where.Select(context.Thing).OfType<Thing>().Where(t => t.Kind == ThingKind.Relay).Take(1).Select(t => new CureLadder(
            [.. new double[] { 10, 15, 20, 30, 40, 50, 60, 70, 80, 100 }.Where(r => r > t.Elements.Max(e => e.RatedA ?? 0)).Take(MostRungs)
                .Select(r => new CureCandidate([$"thing.{t.Id}.relay.contact={Figure.Amps(r)}"], $"{t.Id} with contacts for {Figure.Amps(r)}"))]));

    /// <summary>A relay beside the first load of the circuit: the circuit works its coil (2 W, common practice), and the loads are fed from a bus bar of the bay through a fuse of their own.</summary>
    private static IEnumerable<CureLadder> RelayAtTheLoad(RuleContext context, Finding finding)
    {
        var bar = context.Harness.Things.FirstOrDefault(t => t is { Kind: ThingKind.BusBar, Side: Side.Bay });
        var plug = context.Harness.Catalogue.Connectors.FirstOrDefault(c => c.Id.StartsWith("relay-", StringComparison.Ordinal) && c.Cavities.Length == 4);
        foreach (var circuit in finding.Where.Select(context.Circuit).OfType<Circuit>().Where(c => !c.IsReturn && c.OnlyWith.IsAlways && !c.Feeds.IsEmpty).Take(1))
        {
            if (bar is null || plug is null || context.Thing(circuit.Feeds[0].Thing) is not { Side: Side.Bay } load)
            {
                continue;
            }

            var (relay, fuse) = ($"{circuit.Id} relay", $"{circuit.Id} fuse");
            var live = circuit.LiveWith switch { KeyPosition.Off => "always", KeyPosition.Accessory => "accessory", KeyPosition.Start => "start", _ => "run" };
            yield return new([new(
                [
                    $"thing.{relay}={{ at: '{load.Place}', plug: {plug.Id}, relay: {{ coil: ['86', '85'], makes: ['30', '87'], coil-draws: 2 W, contact: 30 A, suppression: resistor }}, returns: '85' }}",
                    $"fuse.{fuse}={{ kind: blade, on: '{bar.Id}' }}",
                    $"circuit.{circuit.Id}.feeds=['{relay}.86']",
                    $"circuit.{circuit.Id} relay feed={{ from: '{fuse}', feeds: ['{relay}.30'], live: always }}",
                    $"circuit.{circuit.Id} switched={{ from: '{relay}.87', feeds: [{string.Join(", ", circuit.Feeds.Select(f => $"'{f}'"))}], live: {live}, importance: {(circuit.Importance == Importance.Critical ? "critical" : "ordinary")}, protected-by: '{fuse}' }}",
                ],
                $"a relay at '{load.Place}' that '{circuit.Id}' works, its contact fed from {bar.Id} through a fuse of its own")]);
        }
    }

    /// <summary>Lamps of the next watts that are sold (common practice, no source) in the place of the one that an exciter's current passes.</summary>
    private static IEnumerable<CureLadder> HeavierLamp(RuleContext context, Finding finding) =>
        from thing in finding.Where.Select(context.Thing).OfType<Thing>().Take(1)
        from lamp in thing.Elements.Where(e => e.Kind == ElementKind.Lamp)
        let watts = lamp.Amps(context.Harness.Power.Sources[0].NominalV) * (lamp.NominalV ?? context.Harness.Power.Sources[0].NominalV)
        select new CureLadder([.. new double[] { 1.2, 2, 3, 5 }.Where(w => w > watts).Select(w => new CureCandidate([$"thing.{thing.Id}.lamp.{lamp.PinA}={Figure.Of(w, "W")}"], $"{thing.Id} of {Figure.Of(w, "W")}"))]);

    /// <summary>A diode at the alternator that lets current only into its exciter terminal.</summary>
    private static IEnumerable<CureLadder> ExciterDiode(RuleContext context, Finding finding)
    {
        foreach (var circuit in finding.Where.Take(1).Select(context.Circuit).OfType<Circuit>().Where(c => c.Feeds.Length == 1 && context.Thing(c.Feeds[0].Thing) is not null))
        {
            var fuse = circuit.ProtectedBy.IsEmpty ? "" : $", protected-by: '{circuit.ProtectedBy[0]}'";
            yield return new([new(
                [
                    $"thing.exciter diode={{ at: '{context.Thing(circuit.Feeds[0].Thing)!.Place}', kind: load, blades: {{ A: 6.3 mm, K: 6.3 mm }}, diode: [A, K] }}",
                    $"circuit.{circuit.Id}.feeds=[exciter diode.A]",
                    $"circuit.exciter lead={{ from: exciter diode.K, feeds: ['{circuit.Feeds[0]}'], live: run{fuse} }}",
                ],
                $"a diode in '{circuit.Id}' that conducts towards {circuit.Feeds[0].Thing} alone")]);
        }
    }

    private static IEnumerable<double> RatingsOf(this RuleContext context, ProtectionKind kind) => context.Harness.Catalogue.Fuses.Where(s => s.Kind == kind).SelectMany(s => s.Ratings).Select(r => r.RatingA).Distinct();
}
