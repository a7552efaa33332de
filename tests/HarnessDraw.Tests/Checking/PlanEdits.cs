using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tests.Checking;

/// <summary>One change to one row of a plan, named by its id; an id that is not there fails the test.</summary>
internal static class PlanEdits
{
    public static Plan Wire(this Plan plan, string id, Func<Wire, Wire> change) => plan with { Wires = Changed(plan.Wires, w => w.Id == id, change) };

    public static Plan NoWire(this Plan plan, params string[] ids) => plan with { Wires = [.. plan.Wires.Where(w => !ids.Contains(w.Id))], Cavities = [.. plan.Cavities.Where(c => c.Wire is null || !ids.Contains(c.Wire))] };

    public static Plan AddWire(this Plan plan, string like, Func<Wire, Wire> change) => plan with { Wires = [.. plan.Wires, change(plan.WireOf(like))] };

    public static Plan Fuse(this Plan plan, string id, Func<FuseChoice, FuseChoice> change) => plan with { Fuses = Changed(plan.Fuses, f => f.Id == id, change) };

    public static Plan Segment(this Plan plan, string id, Func<Segment, Segment> change) => plan with { Tree = plan.Tree with { Segments = Changed(plan.Tree.Segments, s => s.Id == id, change) } };

    public static Plan Splice(this Plan plan, string id, Func<Splice, Splice> change) => plan with { Splices = Changed(plan.Splices, s => s.Id == id, change) };

    public static Plan Cavity(this Plan plan, string connector, string cavity, Func<CavityUse, CavityUse> change) => plan with { Cavities = Changed(plan.Cavities, c => c.Connector == connector && c.Cavity == cavity, change) };

    public static Plan Volts(this Plan plan, string node, double volts, string state = "night") =>
        plan with { Nodes = [.. plan.Nodes.Where(n => n.Node != node), new(node, ImmutableSortedDictionary<string, double?>.Empty.Add(state, volts))] };

    public static Plan Harness(this Plan plan, Func<Harness, Harness> change) => plan with { Harness = change(plan.Harness) };

    public static Plan Thing(this Plan plan, string id, Func<Thing, Thing> change) => plan.Harness(h => h with { Things = Changed(h.Things, t => t.Id == id, change) });

    public static Plan Element(this Plan plan, string thing, string id, Func<Element, Element> change) => plan.Thing(thing, t => t with { Elements = Changed(t.Elements, e => e.Id == id, change) });

    public static Plan Circuit(this Plan plan, string id, Func<Circuit, Circuit> change) => plan.Harness(h => h with { Circuits = Changed(h.Circuits, c => c.Id == id, change) });

    public static Plan Protection(this Plan plan, string id, Func<Protection, Protection> change) => plan.Harness(h => h with { Protections = Changed(h.Protections, c => c.Id == id, change) });

    public static Plan Path(this Plan plan, string id, Func<HarnessDraw.Model.Path, HarnessDraw.Model.Path> change) => plan.Harness(h => h with { Layout = h.Layout with { Paths = Changed(h.Layout.Paths, p => p.Id == id, change) } });

    public static Plan Zone(this Plan plan, string id, Func<Zone, Zone> change) => plan.Harness(h => h with { Layout = h.Layout with { Zones = Changed(h.Layout.Zones, z => z.Id == id, change) } });

    public static Plan Source(this Plan plan, string id, Func<Source, Source> change) => plan.Harness(h => h with { Power = h.Power with { Sources = Changed(h.Power.Sources, s => s.Id == id, change) } });

    public static Plan Part(this Plan plan, string id, Func<ConnectorPart, ConnectorPart> change) => plan.Harness(h => h with { Catalogue = h.Catalogue with { Connectors = Changed(h.Catalogue.Connectors, c => c.Id == id, change) } });

    /// <summary>Moves one end of a wire to another pin, its cavity with it.</summary>
    public static Plan Move(this Plan plan, string wire, string cavity, string toCavity) =>
        (plan with { Cavities = [.. plan.Cavities.Where(c => !(c.Cavity == toCavity && c.Wire is null)).Select(c => c.Wire == wire && c.Cavity == cavity ? c with { Cavity = toCavity } : c)] })
            .Wire(wire, w => w.From.Pin == cavity ? w with { From = w.From with { Pin = toCavity } } : w with { To = w.To with { Pin = toCavity } });

    private static ImmutableArray<T> Changed<T>(ImmutableArray<T> rows, Func<T, bool> which, Func<T, T> change)
    {
        Assert.Contains(rows, r => which(r));
        return [.. rows.Select(r => which(r) ? change(r) : r)];
    }
}
