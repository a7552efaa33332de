using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Parts with other figures: contacts, coils, lamps, a battery.</summary>
internal static class PartCures
{
    private const int MostRungs = CureLadder.MostRungs;

    // contacts as they are sold (common practice, no source)
    private static readonly double[] Contacts = [1, 2, 5, 10, 15, 20, 30, 40, 50, 60, 70, 80, 100, 150, 200];

    /// <summary>Relays with contacts of the next ratings that are sold (common practice, no source).</summary>
    public static IEnumerable<CureLadder> HeavierRelay(RuleContext context, Finding finding) =>
        context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.Relay).Take(1).Select(t => new CureLadder(
            [.. Contacts.Where(r => r > t.Elements.Max(e => e.RatedA ?? 0)).Take(MostRungs)
                .Select(r => new CureCandidate([$"thing.{t.Id}.relay.contact={Figure.Amps(r)}"], $"{t.Id} with contacts for {Figure.Amps(r)}"))]));

    /// <summary>A switch, sender or instrument with a contact of the next ratings.</summary>
    public static IEnumerable<CureLadder> HeavierContact(RuleContext context, Finding finding) =>
        from thing in context.ThingsNamed(finding).Take(1)
        let rated = thing.Elements.Where(e => e.Kind == ElementKind.Contact).Max(e => e.RatedA)
        where rated is not null
        select new CureLadder([.. Contacts.Where(r => r > rated).Take(MostRungs).Select(r => new CureCandidate([$"thing.{thing.Id}.contact={Figure.Amps(r)}"], $"{thing.Id} made for {Figure.Amps(r)}"))]);

    /// <summary>A resistor across the coil.</summary>
    public static IEnumerable<CureLadder> Suppressed(RuleContext context, Finding finding) =>
        context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.Relay).Take(1).Select(t => CureLadder.Of($"{t.Id} with a resistor across its coil", $"thing.{t.Id}.relay.suppression=resistor"));

    /// <summary>The diode the other way round.</summary>
    public static IEnumerable<CureLadder> DiodeTurned(RuleContext context, Finding finding) =>
        from thing in context.ThingsNamed(finding).Take(1)
        from diode in thing.Elements.Where(e => e.Kind == ElementKind.Diode).Take(1)
        select CureLadder.Of($"the diode of {thing.Id} from {diode.PinB} to {diode.PinA}", $"thing.{thing.Id}.diode=[{CureText.Quoted(diode.PinB!)}, {CureText.Quoted(diode.PinA)}]");

    /// <summary>Lamps of the next watts that are sold (common practice, no source) in the place of the one that an exciter's current passes.</summary>
    public static IEnumerable<CureLadder> HeavierLamp(RuleContext context, Finding finding) =>
        from thing in context.ThingsNamed(finding).Take(1)
        from lamp in thing.Elements.Where(e => e.Kind == ElementKind.Lamp)
        let watts = lamp.Amps(context.Harness.Power.NominalV) * (lamp.NominalV ?? context.Harness.Power.NominalV)
        select new CureLadder([.. new double[] { 1.2, 2, 3, 5 }.Where(w => w > watts).Select(w => new CureCandidate([$"thing.{thing.Id}.lamp.{lamp.PinA}={Figure.Of(w, "W")}"], $"{thing.Id} of {Figure.Of(w, "W")}"))]);

    /// <summary>Lamps with filaments of the next watts (common practice, no source) in the places of all that hang on the circuit.</summary>
    public static IEnumerable<CureLadder> FilamentLamps(RuleContext context, Finding finding)
    {
        foreach (var circuit in context.CircuitsNamed(finding).Take(1))
        {
            var lamps = circuit.Feeds.Select(f => (Thing: context.Thing(f.Thing), f.Pin)).Where(f => f.Thing is not null).SelectMany(f => Loads.At(f.Thing!, f.Pin).Where(e => e.Kind is ElementKind.Lamp).Select(e => (f.Thing!.Id, Pin: e.PinA))).Distinct().ToList();
            if (lamps.Count > 0)
            {
                yield return new([.. new double[] { 5, 10, 21 }.Select(w => new CureCandidate([.. lamps.Select(l => $"thing.{l.Id}.lamp={{ {CureText.Quoted(l.Pin)}: {Figure.Of(w, "W")} }}")], $"lamps with filaments of {Figure.Of(w, "W")}"))]);
            }
        }
    }

    /// <summary>A battery of less internal resistance.</summary>
    public static IEnumerable<CureLadder> StifferBattery(RuleContext context, Finding finding) =>
        from post in context.Graph.Posts.Where(p => p.Source.Kind == SourceKind.Battery).Take(1)
        select new CureLadder([.. new double[] { 15, 12, 10, 8, 6, 5, 4, 3 }.Where(m => m / 1000 < post.InternalOhm).Take(MostRungs)
            .Select(m => new CureCandidate([$"power.sources.{post.Source.Id}.internal={Figure.Of(m, "mohm")}"], $"a battery {post.Source.Id} of {Figure.Of(m, "mΩ")}"))]);
}
