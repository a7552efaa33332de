using System.Collections.Immutable;
using HarnessDraw.Units;
using static HarnessDraw.Reading.Shape;

namespace HarnessDraw.Reading;

/// <summary>The keys of allowances on wire lengths. A new key is added here and read in AllowanceReader.</summary>
public static class AllowanceShapes
{
    private static readonly ImmutableArray<Key> AtAnEnd =
    [
        new("dress", Mm, "For reaching any cavity of a connector. Usual: 20 mm."),
        new("drip-loop", Mm, "For a loop below a connector in a wet zone. Usual: 60 mm."),
        new("stud-stack", Mm, "For a ring on a stud. Usual: 10 mm."),
        new("new-terminals", Number, "How often an end may be cut off and terminated again. Usual: 2."),
    ];

    public static readonly BlockShape OfThing = new("end-allowances", "Allowances of the wire ends at one thing; each goes before that of the harness.",
    [
        .. AtAnEnd,
        new("cut-at-car", Mm, "Left longer at the bench, to be cut at the vehicle. The row is marked LONG."),
    ]);

    public static readonly BlockShape OfHarness = new("allowances", "What is added to the route of a wire. Each is listed by name in the cut list and counted once; the sum is rounded up once.",
    [
        new("lay", Mm, "For parallel wires of a taped bundle, by metre of path. Usual: 15 mm. Twisted cables have the length of their helix instead."),
        new("breakout", Mm, "For a turn out of the bundle, beside its radius. Usual: 5 mm."),
        new("bends", YesNo, "No: nothing for the outer wires of a bend. Usual: angle times radius of the bundle."),
        .. AtAnEnd,
        new("large-dress", Mm, "As 'dress', in connectors of twelve cavities and more. Usual: 50 mm."),
        new("mate-dress", Mm, "As 'dress', in the connector in the firewall. Usual: 70 mm."),
        new("service-loop", Mm, "Least loop where a path moves. Usual: 50 mm."),
        new("round-up", Mm, "Cut lengths are rounded up to a multiple of this. Usual: 10 mm."),
    ]);

    private static QuantityShape Mm => Of(QuantityKind.Length, orUnknown: false);
}
