using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Wires of another size, class or colour, and shorter runs.</summary>
internal static class WireCures
{
    private const int MostRungs = CureLadder.MostRungs;
    private const int MostSteps = 3;

    /// <summary>
    /// Thicker wires: none below what the wire's own rules ask, so that one size answers all of them, none that its terminals do not take and none more than three steps above the size that it has or needs. Whoever would need more
    /// splits the load, shortens the run or puts a relay near the load (common practice, no source).
    /// </summary>
    public static IEnumerable<CureLadder> LargerWire(RuleContext context, Finding finding) => Sized(context, finding, larger: true, bounded: true);

    /// <summary>Thicker wires from the next size on, beside a smaller fuse: together they meet in between.</summary>
    public static IEnumerable<CureLadder> LargerForFuse(RuleContext context, Finding finding) => Sized(context, finding, larger: true);

    /// <summary>Thinner wires, never thinner than what mechanics, temperature and fuse ask of the wire.</summary>
    public static IEnumerable<CureLadder> SmallerWire(RuleContext context, Finding finding) => Sized(context, finding, larger: false, bounded: true);

    /// <summary>A thicker wire where the given one is too thin for every terminal; a wire that is too thick stays, and its end changes.</summary>
    public static IEnumerable<CureLadder> WireForTerminal(RuleContext context, Finding finding) =>
        context.WiresNamed(finding).All(w => IsThinnest(context, w)) ? LargerWire(context, finding) : [];

    // thick enough for no end, or right for it
    private static bool IsThinnest(RuleContext context, Wire wire) =>
        new[] { wire.From, wire.To }.Select(e => EndTerminals.Of(context, e)).All(t => t.IsEmpty || t.Any(terminal => terminal.MaxAreaMm2 >= wire.AreaMm2));

    /// <summary>The next sizes that the wire type has, none below what the wire's own rules ask.</summary>
    public static IEnumerable<CureLadder> SizeOfType(RuleContext context, Finding finding) => Sized(context, finding, larger: true, bounded: true);

    /// <summary>The wire types that have the size that was given.</summary>
    public static IEnumerable<CureLadder> TypeWithSize(RuleContext context, Finding finding)
    {
        foreach (var wire in context.WiresNamed(finding).Take(1))
        {
            var types = context.Harness.Catalogue.WireTypes.Where(t => t.Sizes.Any(s => s.Label == wire.SizeLabel));
            yield return new([.. types.Take(MostRungs).Select(t => new CureCandidate([$"circuit.{wire.Circuit}.wire-type={t.Id}"], $"'{wire.Circuit}' in {t.Title}"))]);
        }
    }

    // a ladder for each wire given by hand or circuit that the finding names, the longest run first: it loses most
    private static IEnumerable<CureLadder> Sized(RuleContext context, Finding finding, bool larger, bool bounded = false)
    {
        var wires = context.WiresNamed(finding);
        foreach (var target in wires.OrderByDescending(w => w.CutLengthMm ?? w.PathLengthMm ?? 0).ThenBy(w => w.Id, StringComparer.Ordinal).GroupBy(w => w.ByHand ? w.Id : w.Circuit, StringComparer.Ordinal).Take(3))
        {
            var wire = larger ? target.MinBy(w => w.AreaMm2)! : target.MaxBy(w => w.AreaMm2)!;
            var sizes = (context.TypeOf(wire)?.Sizes ?? []).Where(s => (larger ? s.AreaMm2 > wire.AreaMm2 : s.AreaMm2 < wire.AreaMm2) && (!bounded || s.AreaMm2 >= (wire.NeededMm2 ?? 0)));
            var key = wire.ByHand ? $"circuit.{wire.Circuit}.by-hand.{wire.Id}.size" : $"circuit.{wire.Circuit}.size";
            var mostMm2 = EndTerminals.LargestMm2(context, wire.ByHand ? [wire] : context.WiresOf(wire.Circuit));
            yield return new([.. (larger ? sizes.Where(s => StepsUp(context, wire, s) <= MostSteps && s.AreaMm2 <= mostMm2) : sizes.Reverse()).Take(MostRungs).Select(s => new CureCandidate([$"{key}={CureText.Size(s)}"], $"{(wire.ByHand ? $"wire {wire.Id}" : $"'{wire.Circuit}'")} of {CureText.Size(s)} instead of {wire.SizeLabel}"))]);
        }
    }

    // standard sizes from what the wire has, or by its own rules should have, up to a size
    private static int StepsUp(RuleContext context, Wire wire, WireSize size)
    {
        var fromMm2 = Math.Max(wire.AreaMm2, wire.NeededMm2 ?? 0);
        return context.TypeOf(wire)!.Sizes.Count(s => s.AreaMm2 > fromMm2 && s.AreaMm2 <= size.AreaMm2);
    }

    /// <summary>Wire types that bear more heat than the wires' own, the least first, for all circuits that the finding names.</summary>
    public static IEnumerable<CureLadder> HotterWire(RuleContext context, Finding finding) => OtherType(context, finding, (type, own) => type.MaxC > own.MaxC);

    /// <summary>Types that are not cross-linked, those that bear most heat first.</summary>
    public static IEnumerable<CureLadder> NotCrossLinked(RuleContext context, Finding finding) => OtherType(context, finding, (type, _) => !type.CrossLinked, hottestFirst: true);

    /// <summary>Any other type: another family has another insulation.</summary>
    public static IEnumerable<CureLadder> AnotherType(RuleContext context, Finding finding) => OtherType(context, finding, (type, own) => type.Id != own.Id && type.MaxC >= own.MaxC);

    private static IEnumerable<CureLadder> OtherType(RuleContext context, Finding finding, Func<WireType, WireType, bool> fits, bool hottestFirst = false)
    {
        var wires = context.WiresNamed(finding);
        if (wires.Count == 0 || wires.Select(context.TypeOf).OfType<WireType>().MaxBy(t => t.MaxC) is not { } own)
        {
            yield break;
        }

        var circuits = wires.Select(w => w.Circuit).Distinct(StringComparer.Ordinal).ToList();
        yield return new([.. context.Harness.Catalogue.WireTypes.Where(t => fits(t, own)).OrderBy(t => hottestFirst ? -t.MaxC : t.MaxC).ThenBy(t => IsByGauge(t) == IsByGauge(own) ? 0 : 1).ThenBy(t => t.Id, StringComparer.Ordinal).Take(MostRungs)
            .Select(t => new CureCandidate([.. circuits.Select(c => $"circuit.{c}.wire-type={t.Id}")], $"{Wording.List(circuits.Select(c => $"'{c}'"))} in {t.Title}"))]);
    }

    private static bool IsByGauge(WireType type) => type.Sizes.Any(s => s.Awg is not null);

    /// <summary>The colour that the kept half has.</summary>
    public static IEnumerable<CureLadder> KeptColour(RuleContext context, Finding finding)
    {
        var changes = KeptCavities.Of(context).Where(p => finding.Where.Contains(p.Wire.Id) && p.Kept.Colour is not null && p.Kept.Colour != p.Wire.Colour).ToList();
        return changes.Count == 0 ? [] : [new([new([.. changes.Select(p => $"circuit.{p.Wire.Circuit}.colour={p.Kept.Colour}")], $"{Wording.List(changes.Select(p => $"'{p.Wire.Circuit}' in {p.Kept.Colour}"))}")])];
    }

    /// <summary>Green with another tracer.</summary>
    public static IEnumerable<CureLadder> AnotherTracer(RuleContext context, Finding finding)
    {
        var circuits = context.WiresNamed(finding).Select(w => w.Circuit).Distinct(StringComparer.Ordinal).ToList();
        return circuits.Count == 0 ? [] : [new([.. new[] { "GN/WH", "GN/BK", "YE/BK" }.Select(colour => new CureCandidate([.. circuits.Select(c => $"circuit.{c}.colour={colour}")], $"{Wording.List(circuits.Select(c => $"'{c}'"))} in {colour}"))])];
    }

    /// <summary>A twisted pair, 33 mm a turn (common practice, no source), for each signal that the finding names.</summary>
    public static IEnumerable<CureLadder> Twisted(RuleContext context, Finding finding)
    {
        var signals = context.WiresNamed(finding).Where(w => context.Circuit(w.Circuit) is { Duty: Duty.Signal, Cable: null }).Select(w => w.Circuit).Distinct(StringComparer.Ordinal).ToList();
        return signals.Count == 0 ? [] : [new([new([.. signals.Select(s => $"circuit.{s}.cable={{ twisted: 33 mm }}")], $"{Wording.List(signals.Select(s => $"'{s}'"))} twisted at 33 mm")])];
    }

    /// <summary>The longest run of the wire that the finding names, shorter: what a nearer place would give.</summary>
    public static IEnumerable<CureLadder> ShorterRun(RuleContext context, Finding finding)
    {
        var longest = context.WiresNamed(finding).SelectMany(w => context.SegmentsOf(w)).Select(context.PathOf).OfType<Model.Path>().Where(p => p.LengthMm is > 0)
            .Distinct().OrderByDescending(p => p.LengthMm).ThenBy(p => p.From, StringComparer.Ordinal).ThenBy(p => p.To, StringComparer.Ordinal).FirstOrDefault();
        return longest is null ? [] : [new([.. new[] { 0.8, 0.6, 0.4 }.Select(share => Math.Floor(share * longest.LengthMm!.Value / 10) * 10).Select(mm =>
            new CureCandidate([$"path.{longest.From} to {longest.To}.{(longest.Known == LengthKnown.Estimated ? "estimated" : "measured")}={Figure.Millimetres(mm)}"], $"a run from {longest.From} to {longest.To} of {Figure.Millimetres(mm)} instead of {Figure.Millimetres(longest.LengthMm!.Value)}"))])];
    }
}
