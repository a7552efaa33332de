using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>The steps of a harness that are not wires.</summary>
internal static class PowerHops
{
    public static IEnumerable<Hop> Of(Plan plan, JointOhms joints)
    {
        var harness = plan.Harness;
        return harness.Things.SelectMany(t => OfThing(plan, joints, t)).Concat(harness.Protections.SelectMany(p => OnBar(harness, p))).Concat(harness.Kept.SelectMany(k => Cabin(harness, joints, k)));
    }

    private static IEnumerable<Hop> OfThing(Plan plan, JointOhms joints, Thing thing)
    {
        if (thing.Kind is ThingKind.BusBar or ThingKind.Stud or ThingKind.FusePanel or ThingKind.GroundPoint)
        {
            return thing.Pins.Skip(1).Select(p => new Hop(Node(thing, thing.Pins[0].Name), Node(thing, p.Name), HopKind.Joint, 0));
        }

        return thing.Elements.Where(e => e.PinB is not null).Select(e => Inside(plan, joints, thing, e)).OfType<Hop>();
    }

    private static Hop? Inside(Plan plan, JointOhms joints, Thing thing, Element e) => e.Kind switch
    {
        ElementKind.Link => new(Node(thing, e.PinA), Node(thing, e.PinB!), HopKind.Joint, 0),
        ElementKind.Contact => new(Node(thing, e.PinA), Node(thing, e.PinB!), HopKind.Contact, joints.Closed(thing, e)) { Switched = true },
        ElementKind.Fuse => new(Node(thing, e.PinA), Node(thing, e.PinB!), HopKind.Fuse, FuseOhm(plan, thing.Id)) { Fuse = thing.Id },
        _ => null,
    };

    private static double FuseOhm(Plan plan, string id) => PlanningOptions.Usual.FuseOhm(plan.Fuses.FirstOrDefault(f => f.Id == id)?.RatingA);

    private static IEnumerable<Hop> OnBar(Harness harness, Protection fuse) =>
        fuse.On is { } on && harness.Things.FirstOrDefault(t => t.Id == on) is { Pins.IsEmpty: false } bar ? [new(Node(bar, bar.Pins[0].Name), $"{fuse.Id}.in", HopKind.Joint, 0)] : [];

    private static IEnumerable<Hop> Cabin(Harness harness, JointOhms joints, KeptPin kept)
    {
        if (kept.ComesFrom is not { } from)
        {
            return [];
        }

        var start = harness.Protections.Any(p => p.Id == from) ? $"{from}.out" : from;
        return [new(start, $"{kept.Connector}.{kept.Cavity}", HopKind.Kept, joints.Kept(kept, 0)) { Switched = !kept.Through.IsEmpty }];
    }

    private static string Node(Thing thing, string pin) => $"{thing.Id}.{pin}";
}
