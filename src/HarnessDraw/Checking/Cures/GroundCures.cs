using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Cures;

/// <summary>Further ground points, links between them and returns that are missing.</summary>
internal static class GroundCures
{
    /// <summary>Two to four points in the place of one, the things that return there dealt out among them.</summary>
    public static IEnumerable<CureLadder> Split(RuleContext context, Finding finding)
    {
        foreach (var ground in context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.GroundPoint && t.Pins.Length == 1).Take(1))
        {
            var returning = context.EndsAt(ground.Id).Select(e => context.Thing((e.End == e.Wire.From ? e.Wire.To : e.Wire.From).At)).OfType<Thing>().Where(t => !t.Returns.IsEmpty).Distinct().OrderBy(t => t.Place, StringComparer.Ordinal).ThenBy(t => t.Id, StringComparer.Ordinal).ToList();
            yield return new([.. Enumerable.Range(2, 3).Where(points => returning.Count >= points).Select(points => Dealt(context, ground, returning, points)).OfType<CureCandidate>()]);
        }
    }

    private static CureCandidate? Dealt(RuleContext context, Thing ground, List<Thing> returning, int points)
    {
        var added = Enumerable.Range(2, points - 1).Select(n => $"thing.{ground.Id} {n}={{ at: {CureText.Quoted(ground.Place)}, ground: {ground.Pins[0].Size}{(ground.Surface is { } on ? $", on: {CureText.Quoted(on)}" : "")}{(ground.TorqueNm is { } nm ? $", torque: {Figure.Of(nm, "Nm")}" : "")}{(ground.Note is { } note ? $", note: {CureText.Quoted(note)}" : "")} }}");
        var moved = returning.Select((thing, i) => (Thing: thing, Point: i * points / returning.Count)).Where(m => m.Point > 0).Select(m => Returned(context, m.Thing, ground, $"{ground.Id} {m.Point + 1}")).ToList();
        return moved.Contains(null) ? null : new([.. added, .. moved.OfType<string>()], $"{Figure.Number(points)} ground points at {ground.Place} instead of one");
    }

    // every return of the thing with the point it goes to; null where one joins others in a splice
    private static string? Returned(RuleContext context, Thing thing, Thing was, string now)
    {
        var pins = thing.Returns.Select(r => (r.Pin, To: context.EndsAt(thing.Id, r.Pin).Select(e => (e.End == e.Wire.From ? e.Wire.To : e.Wire.From).At).FirstOrDefault())).ToList();
        return pins.Exists(p => p.To is null || context.Thing(p.To)?.Kind != ThingKind.GroundPoint) ? null
            : $"thing.{thing.Id}.returns={{ {string.Join(", ", pins.Select(p => $"{CureText.Quoted(p.Pin)}: {CureText.Quoted(p.To == was.Id ? now : p.To!)}"))} }}";
    }

    /// <summary>A link from each point that the finding names to the next, or to any other where it names one: what opens one leaves the way over the other.</summary>
    public static IEnumerable<CureLadder> Link(RuleContext context, Finding finding)
    {
        var named = context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.GroundPoint).ToList();
        var others = context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && t.Side == Side.Bay && !named.Contains(t) && context.EndsAt(t.Id).Any()).ToList();
        if (named.Count > 1 || (named.Count == 1 && others.Count > 0))
        {
            var chain = named.Count > 1 ? named : [named[0], others[0]];
            yield return new([new([.. chain.Zip(chain.Skip(1)).Select(p => $"circuit.{p.First.Id} link={{ from: {CureText.Quoted(p.First.Id)}, to: {CureText.Quoted(p.Second.Id)}, colour: BK }}")], $"{Wording.List(chain.Select(t => t.Id))} joined by a wire")]);
        }
    }

    /// <summary>The pins that no wire returns from, wired to the nearest ground point.</summary>
    public static IEnumerable<CureLadder> Return(RuleContext context, Finding finding)
    {
        foreach (var thing in context.ThingsNamed(finding).Take(1))
        {
            var pins = thing.Elements.Select(e => e.PinB).OfType<string>().Concat(thing.Returns.Select(r => r.Pin)).Distinct(StringComparer.Ordinal).ToList();
            if (pins.Count > 0)
            {
                yield return CureLadder.Of($"{Wording.List(pins.Select(p => PointWords.Of(thing.Id, p)))} wired to ground", $"thing.{thing.Id}.returns=[{string.Join(", ", pins.Select(CureText.Quoted))}]");
            }
        }
    }

    /// <summary>The point moved to where another one sits on metal.</summary>
    public static IEnumerable<CureLadder> OnMetal(RuleContext context, Finding finding)
    {
        foreach (var ground in context.ThingsNamed(finding).Where(t => t.Kind == ThingKind.GroundPoint).Take(1))
        {
            bool Conducts(string? on) => context.Harness.Layout.Surfaces.FirstOrDefault(s => s.Id == (on ?? "body")) is not { Conducts: false };
            yield return new([.. context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && t.Id != ground.Id && Conducts(t.Surface)).DistinctBy(t => (t.Place, t.Surface)).Take(CureLadder.MostRungs)
                .Select(t => new CureCandidate([$"thing.{ground.Id}.on={t.Surface ?? "body"}", .. t.Place == ground.Place ? Array.Empty<string>() : [$"thing.{ground.Id}.at={t.Place}"]], $"{ground.Id} on {t.Surface ?? "body"} at {t.Place}"))]);
        }
    }

    /// <summary>A ground cable from the battery to the starter's ground point, or any, as thick as the starter's feed.</summary>
    public static IEnumerable<CureLadder> Bond(RuleContext context, Finding finding)
    {
        var starter = context.Harness.Things.FirstOrDefault(t => t.Kind == ThingKind.Starter);
        var points = context.Harness.Things.Where(t => t.Kind == ThingKind.GroundPoint && t.Side == Side.Bay).OrderBy(t => t.Place == starter?.Place ? 0 : 1);
        var feed = starter is null ? null : context.EndsAt(starter.Id).Where(e => e.Wire.Awg is null).OrderByDescending(e => e.Wire.AreaMm2).FirstOrDefault()?.Wire;
        foreach (var post in context.Graph.Posts.Where(p => p.Source.Id == finding.Where[0]).Take(1))
        {
            if (StrapWires.GroundedPost(context, post) is { } pole && points.FirstOrDefault() is { } ground)
            {
                yield return CureLadder.Of($"a cable{(feed is null ? "" : $" of {feed.SizeLabel} mm2")} from {pole} to {ground.Id}", $"circuit.{post.Source.Id} ground cable={{ from: {CureText.Quoted(pole)}, to: {CureText.Quoted(ground.Id)}, colour: BK{(feed is null ? "" : $", size: {feed.SizeLabel} mm2")} }}");
            }
        }
    }
}
