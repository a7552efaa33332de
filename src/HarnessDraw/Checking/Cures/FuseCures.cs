using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Fuses of another rating or kind, and fuses where there is none.</summary>
internal static class FuseCures
{
    private const int MostRungs = CureLadder.MostRungs;

    // where a finding names a main fuse and its branch, the first is made larger or the last smaller
    public static IEnumerable<CureLadder> LargerFuse(RuleContext context, Finding finding) => Fuses(context, finding).Take(1).Select(f => Rated(f, context.RatingsOf(f.Kind).Where(r => r > f.RatingA).Order()));

    public static IEnumerable<CureLadder> SmallerFuse(RuleContext context, Finding finding) => Fuses(context, finding).TakeLast(1).Select(f => Rated(f, context.RatingsOf(f.Kind).Where(r => r < f.RatingA).OrderDescending()));

    private static IEnumerable<FuseChoice> Fuses(RuleContext context, Finding finding) => finding.Where.Select(context.Fuse).OfType<FuseChoice>().Where(f => f.RatingA is > 0);

    private static CureLadder Rated(FuseChoice fuse, IEnumerable<double> ratings) => new(
        [.. ratings.Take(MostRungs).Select(r => new CureCandidate([$"fuse.{fuse.Id}.rating={Figure.Amps(r)}"], $"fuse {fuse.Id} of {Figure.Amps(r)} instead of {Figure.Amps(fuse.RatingA!.Value)}"))]);

    /// <summary>A bolt-in fuse where nothing smaller is made for the volts or may sit.</summary>
    public static IEnumerable<CureLadder> BoltIn(RuleContext context, Finding finding) =>
        context.Harness.Protections.Where(f => finding.Where.Contains(f.Id) && f.Kind != ProtectionKind.BoltIn).Take(1).Select(f => CureLadder.Of($"fuse {f.Id} as a bolt-in fuse", $"fuse.{f.Id}.kind=bolt-in"));

    /// <summary>A fuse in the place of a link.</summary>
    public static IEnumerable<CureLadder> NoLink(RuleContext context, Finding finding) =>
        context.Harness.Protections.Where(f => f.Id == finding.Where[0]).Select(f => new CureLadder([.. new[] { "blade", "bolt-in" }.Select(kind => new CureCandidate([$"fuse.{f.Id}.kind={kind}"], $"a {kind} fuse {f.Id} in the place of the link"))]));

    /// <summary>Links of the other sizes, the nearest first, and of the usual length.</summary>
    public static IEnumerable<CureLadder> Link(RuleContext context, Finding finding)
    {
        foreach (var link in context.Harness.Protections.Where(p => p.Id == finding.Where[0] && p.Kind == ProtectionKind.FusibleLink))
        {
            if (link.LinkAreaMm2 is { } area && context.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Sizes.All(s => s.Awg is null)) is { } type)
            {
                yield return new([.. type.Sizes.Where(s => s.AreaMm2 != area).OrderBy(s => Math.Abs(Math.Log(s.AreaMm2 / area))).Take(2 * MostRungs).Select(s => new CureCandidate([$"fuse.{link.Id}.link-size={CureText.Size(s)}"], $"link {link.Id} of {CureText.Size(s)}"))]);
            }

            if (link.LinkLengthMm is not null)
            {
                yield return CureLadder.Of($"link {link.Id} of 150 mm", $"fuse.{link.Id}.link-length=150 mm");
            }
        }
    }

    /// <summary>A bolt-in fuse where the lead leaves what feeds it: what the circuit fed is fed from the fuse.</summary>
    public static IEnumerable<CureLadder> AtTheSource(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Where(c => c is { From.Pin: not null, Feeds.IsEmpty: false, EntersBy: null }).Take(1))
        {
            if (context.Thing(circuit.From!.Thing) is { Side: Side.Bay } start)
            {
                var fuse = $"{circuit.Id} fuse";
                yield return CureLadder.InColours($"a bolt-in fuse at {start.Id}, through which '{circuit.Id}' goes", colour => [$"fuse.{fuse}={{ kind: bolt-in, at: {CureText.Quoted(start.Place)} }}", $"circuit.{circuit.Id}.feeds=[{CureText.Quoted($"{fuse}.in")}]",
                    $"circuit.{circuit.Id} fused={{ from: {CureText.Quoted(fuse)}, feeds: [{CureText.Pins(circuit.Feeds)}], live: {CureText.Live(circuit)}{CureText.SizeGiven(context, circuit)}{colour} }}"]);
            }
        }
    }

    /// <summary>A bolt-in fuse at either end of a lead that joins two batteries.</summary>
    public static IEnumerable<CureLadder> AtBothEnds(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Where(c => c is { From.Pin: not null, Feeds: [_], EntersBy: null, UnfusedBecause: null }).TakeLast(1))
        {
            if (context.Thing(circuit.From!.Thing) is { } a && context.Thing(circuit.Feeds[0].Thing) is { } b)
            {
                var (here, there) = ($"{circuit.Id} fuse 1", $"{circuit.Id} fuse 2");
                yield return CureLadder.InColours($"a bolt-in fuse at {a.Id} and one at {b.Id}", colour => [$"fuse.{here}={{ kind: bolt-in, at: {CureText.Quoted(a.Place)} }}", $"fuse.{there}={{ kind: bolt-in, at: {CureText.Quoted(b.Place)} }}",
                    $"circuit.{circuit.Id}.feeds=[{CureText.Quoted($"{here}.in")}]", $"circuit.{circuit.Id} between={{ from: {CureText.Quoted(here)}, feeds: [{CureText.Quoted($"{there}.out")}], live: {CureText.Live(circuit)}{CureText.SizeGiven(context, circuit)}{colour} }}",
                    $"circuit.{circuit.Id} far end={{ from: {CureText.Quoted(circuit.Feeds[0].ToString())}, feeds: [{CureText.Quoted($"{there}.in")}], live: {CureText.Live(circuit)}{CureText.SizeGiven(context, circuit)}{colour} }}"]);
            }
        }
    }

    /// <summary>Each side of a pair of lamps on a fuse of its own: the right side gets the new one, and a wire of its own from there.</summary>
    public static IEnumerable<CureLadder> OneASide(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Take(1))
        {
            var right = circuit.Feeds.Where(f => context.Thing(f.Thing) is { } t && Sides.Of(t) == "R").ToList();
            var rest = circuit.Feeds.Except(right).ToList();
            if (right.Count > 0 && rest.Count > 0 && Beside(context, circuit, $"{circuit.Id} right fuse") is { } fuse)
            {
                yield return CureLadder.InColours($"a fuse of its own for the right side of '{circuit.Id}'", colour => [fuse, $"circuit.{circuit.Id}.feeds=[{CureText.Pins(rest)}]",
                    $"circuit.{circuit.Id} right={{ from: {CureText.Quoted($"{circuit.Id} right fuse")}, feeds: [{CureText.Pins(right)}]{CureText.Rest(circuit)}{colour} }}"]);
            }
        }
    }

    /// <summary>A fuse of its own, on the same panel, for the first critical circuit that comes from the shared one.</summary>
    public static IEnumerable<CureLadder> OfItsOwn(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Where(c => c.Importance == Importance.Critical).Take(1))
        {
            if (Beside(context, circuit, $"{circuit.Id} fuse") is { } fuse)
            {
                yield return CureLadder.Of($"a fuse of its own for '{circuit.Id}'", fuse, $"circuit.{circuit.Id}.from={circuit.Id} fuse");
            }
        }
    }

    // a new fuse of the kind and on the panel of the one that the circuit comes from
    private static string? Beside(RuleContext context, Circuit circuit, string id) =>
        context.Harness.Protections.FirstOrDefault(p => p.Id == circuit.From?.Thing) is { On: { } on, Kind: ProtectionKind.Blade or ProtectionKind.BoltIn } own ? $"fuse.{id}={{ kind: {(own.Kind == ProtectionKind.Blade ? "blade" : "bolt-in")}, on: {CureText.Quoted(on)} }}" : null;

    private static IEnumerable<double> RatingsOf(this RuleContext context, ProtectionKind kind) => context.Harness.Catalogue.Fuses.Where(s => s.Kind == kind).SelectMany(s => s.Ratings).Select(r => r.RatingA).Distinct();
}
