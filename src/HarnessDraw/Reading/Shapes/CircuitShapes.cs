using HarnessDraw.Units;
using static HarnessDraw.Reading.Shape;

namespace HarnessDraw.Reading;

/// <summary>The keys of circuits and of wires given by hand. A new key is added here and read in CircuitReader.</summary>
public static class CircuitShapes
{
    public static readonly BlockShape HandWire = new("hand-wire", "One wire given wholly by hand: all of it is checked, none of it is changed.",
    [
        new("wire", Name, "Its id, text as typed.", Required: true),
        new("from", Pin, "Pin it starts at.", Required: true),
        new("to", Pin, "Pin it ends at.", Required: true),
        new("size", Of(QuantityKind.WireSize), "1.5 mm2 or 16 AWG."),
        new("colour", Colour, "IEC 60757 letters, base/tracer."),
        new("route", ListOf(new TextShape("a place")), "Places it passes, in order. Left out: routed by the program."),
        new("cut", Of(QuantityKind.Length), "Cut length."),
    ]);

    public static readonly BlockShape Screen = new("screen", "The screen of a cable.",
    [
        new("drain", YesNo, "Yes when it has a drain wire."),
        new("grounded-at", Pin, "The one pin its drain goes to."),
    ]);

    public static readonly BlockShape Cable = new("cable", "Wires laid together.",
    [
        new("id", Name, "Its id. Usual: the circuit's name."),
        new("twisted", Of(QuantityKind.Length), "Twist pitch: 33 mm."),
        new("screen", Either(YesNo, Screen), "Its screen: yes, or how it is drained."),
    ]);

    public static readonly BlockShape Circuit = new("circuit", "A named job and all its wires: feed, switched legs, return.",
    [
        new("from", OneOrMore(Pin), "Where its current comes from: a protection, a source, a switch's or a thing's pin. A list for a cable (one a conductor) or for returns."),
        new("feeds", OneOrMore(Pin), "Pins it feeds. With several a splice is placed where it costs least."),
        new("to", Pin, "For a circuit of returns: the ground point (or battery post) its wires go to."),
        new("enters-by", new TextShape("a mate"), "The mate it crosses the firewall by. The cavity is chosen."),
        new("cavity", OneOrMore(Name), "Fixes the cavity of the mate (a list for a cable)."),
        new("half", new TextShape("a half of the mate"), "The half it belongs to, by name or letter. Left out: chosen."),
        new("route-by", ListOf(Pin, 2), "Pins it passes one after another, through switches, relays and mates; it may cross the firewall more than once."),
        new("duty", new TextShape("continuous, intermittent, momentary, signal, or '2 min on / 5 min off'"), "How long it works at a time. Usual: continuous."),
        new("importance", OneOf("ordinary", "critical"), "Critical circuits are held to 3 % voltage drop, motors to 5 %, others to 10 %."),
        new("draws", Of(QuantityKind.Load), "Its current when given for the circuit as a whole. Left out: from its loads. For the feed of a fuse panel it is not drawn with the key off, unless the state names the circuit."),
        new("live", OneOf("always", "accessory", "run", "start"), "Key position from which its feed is live. Left out: from where it comes (30 always, 75 accessory, 15 run, 50 start)."),
        new("colour", OneOrMore(Colour), "Fixes its colour: IEC 60757 letters, base/tracer (a list for a cable, one a conductor)."),
        new("size", Of(QuantityKind.WireSize), "Fixes its size: 1.5 mm2 or 16 AWG."),
        new("wire-type", new TextShape("a wire type of the catalogue"), "Its wire type, when not the usual one."),
        new("replaces", new TextShape("a wire type of the catalogue"), "Wire type of the wiring that it replaces: cross-linked is never replaced by PVC."),
        new("wire", Name, "Fixes the wire's id; for a circuit that is one wire."),
        new("triggers-only", YesNo, "Yes: anything heavier than a relay coil on it is an error."),
        new("protected-by", OneOrMore(new TextShape("a protection")), "Protections upstream, nearest first, when they do not follow from where it comes from."),
        new("unfused", new TextShape("a reason"), "Why it has no fuse. The reason is printed on the sheet."),
        new("only-with", OnlyWith, "Options that it is built with."),
        new("when-not-fitted", OneOf("remove", "cap"), "What to do with its kept cabin terminal when the option is not fitted."),
        new("cable", Cable, "Twist and screen when its conductors are laid together."),
        new("by-hand", ListOf(HandWire, 1), "Its wires given one by one."),
    ]);
}
