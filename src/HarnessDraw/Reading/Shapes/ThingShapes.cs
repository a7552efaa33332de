using System.Collections.Immutable;
using HarnessDraw.Units;
using static HarnessDraw.Reading.Shape;

namespace HarnessDraw.Reading;

/// <summary>The keys of things, sources and converters. A new key is added here and read in ThingReader.</summary>
public static class ThingShapes
{
    /// <summary>Words of 'kind'.</summary>
    public static readonly ImmutableArray<string> Kinds =
        ["load", "lamp", "motor", "sender", "starter", "relay", "switch", "control unit", "stud", "bus bar", "fuse panel", "ground point"];

    private static readonly Shape LoadOrByPin = Either(Of(QuantityKind.Load), Named("a pin", Of(QuantityKind.Load)));
    private static readonly Shape ThreadOrByPin = Either(new TextShape("a thread such as 'M8'"), Named("a stud", new TextShape("a thread such as 'M8'")));
    private static readonly Shape BladeOrByPin = Either(Of(QuantityKind.Length, orUnknown: false), Named("a blade", Of(QuantityKind.Length, orUnknown: false)));

    private static readonly ImmutableArray<Key> Fastenings =
    [
        new("plug", new TextShape("a connector of the catalogue"), "Catalogue connector that the harness carries for this thing ('lamp-3'). Its cavities are the pins."),
        new("pins", Either(ListOf(Name), Named("a pin", new TextShape("a cavity of the plug"))), "Names of the pins: a list (filled into the plug's cavities in order, same names first), or each with its cavity. Without a plug they are 6.3 mm blades."),
        new("contacts", OneOf("sockets", "pins"), "What the harness side of the plug holds. Usual: sockets."),
        new("stud", ThreadOrByPin, "A stud for a ring terminal: its thread, or its name with the thread ({ B: M8 })."),
        new("studs", Named("a stud", new TextShape("a thread such as 'M8'")), "Studs by name with their threads."),
        new("posts", Named("a post", new TextShape("a thread such as 'M8'")), "Posts of a battery by name with their threads."),
        new("blade", BladeOrByPin, "A push-on blade: its width, or its name with the width ({ S: 6.3 mm })."),
        new("blades", Named("a blade", Of(QuantityKind.Length, orUnknown: false)), "Push-on blades by name with their widths."),
        new("leads", OneOrMore(Name), "The thing's own loose leads, joined by splices."),
        new("returns", Either(Name, ListOf(Name), Named("a pin", Name)), "Pins that the harness wires to ground: one, a list, or each with the ground point it goes to. Without one: the nearest along the harness. On the cabin side they stand on the metal of the vehicle, without a wire of ours."),
        new("grounds-itself", YesNo, "Yes when the thing's body returns its current; a switch's far pins then stand on the metal of the vehicle."),
        new("torque", Of(QuantityKind.Torque), "Tightening torque of its studs."),
    ];

    private static readonly ImmutableArray<Key> Standing =
    [
        new("at", new TextShape("a place"), "Place of the vehicle layout it sits at; for things on the cabin side any words.", Required: true),
        new("side", OneOf("bay", "cabin"), "Side of the firewall. Things on the cabin side stay in the vehicle. Usual: bay."),
        new("label", Text, "Name on the sheets. Usual: its name in capitals without left or right, which become the marks L and R."),
        new("only-with", OnlyWith, "Options that it is fitted with."),
        new("note", Text, "A remark for the builder, such as the surface of a ground point."),
        new("allowances", AllowanceShapes.OfThing, "Lengths added to the wire ends at it, where they are not the usual ones."),
    ];

    public static readonly BlockShape Relay = new("relay", "The coil and contacts of a relay.",
    [
        new("coil", ListOf(Name, 2, 2), "The two pins of the coil: [85, 86].", Required: true),
        new("makes", ContactPairs, "Pins that the working coil joins: [30, 87], or a list of such pairs."),
        new("breaks", ContactPairs, "Pins that the resting coil joins: [30, 87a], or a list of such pairs."),
        new("coil-draws", Of(QuantityKind.Load), "Current (or power) of the coil."),
        new("coil-resistance", Of(QuantityKind.Resistance), "Resistance of the coil, instead of its current."),
        new("contact", Of(QuantityKind.Current), "Rated current of the contacts."),
        new("suppression", OneOf("none", "resistor", "diode"), "What is fitted across the coil."),
    ]);

    public static readonly BlockShape Thing = new("thing", "Whatever wires end in: a load, sender, relay, stud, ground point or connector.",
    [
        .. Standing,
        new("kind", new ChoiceShape(Kinds), "What it is, when neither its keys nor the last word of its name say so."),
        .. Fastenings,
        new("lamp", LoadOrByPin, "A lamp with one filament (5 W), or its filaments by pin."),
        new("beams", Named("a pin", Of(QuantityKind.Load)), "Filaments of a headlamp by pin: { 56a: 60 W, 56b: 55 W }."),
        new("motor", LoadOrByPin, "A motor's running current, or its speeds by pin."),
        new("stalls", Of(QuantityKind.Current), "Highest short-time current: motor stall, solenoid pull-in."),
        new("heater", LoadOrByPin, "A heater: glow plug, heated screen, carburettor or choke heater."),
        new("coil", LoadOrByPin, "A coil that is no relay: solenoid, valve, clutch, ignition coil, horn."),
        new("electronics", LoadOrByPin, "Electronics that take constant power, by pin where there are several."),
        new("sender", Either(Of(QuantityKind.Resistance), Named("a pin", Of(QuantityKind.Resistance))), "A sender's lowest resistance, by pin where there are several."),
        new("draws", LoadOrByPin, "Current or power of any other load, by pin where there are several."),
        new("resistance", Of(QuantityKind.Resistance), "Resistance of its only element."),
        new("nominal", Of(QuantityKind.Voltage), "Volts it is made for, when they are not those of its circuit."),
        new("relay", Relay, "A relay: coil and contacts."),
        new("diode", ListOf(Name, 2, 2), "A diode in a wire: it conducts from the first pin to the second: [A, K]."),
        new("switch", Named("a pin", OneOrMore(Name)), "A switch: a pin with the pins it can be joined to: { 30: [56, 58] }."),
        new("contact", Of(QuantityKind.Current), "Rated current of the switch's contacts."),
        new("least-load", Of(QuantityKind.Current), "For a thermal flasher: the least current of its lamps that it flashes with."),
        new("bar", new TextShape("a bus bar such as '3 studs M8'"), "A bus bar: how many studs of which thread, all joined. They are named 1, 2, 3."),
        new("ground", new TextShape("a thread such as 'M8'"), "A ground point: the thread of its stud or screw."),
        new("on", new TextShape("a surface of the layout"), "Surface of the layout that a ground point sits on. Usual: body."),
        new("mate", new TextShape("a bulkhead connector of the catalogue"), "The mated pair in an opening of the firewall, a catalogue connector ('bulkhead-44')."),
        new("halves", Named("a half", Name), "Halves of the harness that share the mate, with the letters of its cavities: { engine: A, front lighting: B }."),
        new("builds", OneOf("bay", "both sides"), "Which sides of the mate the harness makes. Usual: bay, the cabin side is kept."),
        new("inline", new TextShape("a connector of the catalogue"), "A connector within the harness, a catalogue connector. Circuits pass it by 'route-by': its name alone has the cavity chosen, 'NAME.3' fixes it."),
    ]);

    public static readonly BlockShape Source = new("source", "A battery, alternator or dynamo.",
    [
        new("kind", OneOf("battery", "alternator", "dynamo"), "What it is.", Required: true),
        new("nominal", Of(QuantityKind.Voltage, orUnknown: false), "Nominal volts: 6 V, 12 V, 24 V. A battery must say; an alternator has those of the first battery, with what stands in series with it."),
        new("output", Of(QuantityKind.Current), "Rated output of an alternator or dynamo."),
        new("internal", Of(QuantityKind.Resistance), "Internal resistance."),
        new("draws", LoadOrByPin, "Current into a pin, such as the exciter: { L: 0.3 A }."),
        .. Standing,
        .. Fastenings,
    ]);

    public static readonly BlockShape Converter = new("converter", "A converter, such as 24 V to 12 V. Two of its pins are named 'in' and 'out'.",
    [
        new("fed-from", new TextShape("a source"), "The source it draws from.", Required: true),
        new("nominal", Of(QuantityKind.Voltage, orUnknown: false), "Nominal volts it gives.", Required: true),
        new("output", Of(QuantityKind.Current), "Rated output."),
        new("internal", Of(QuantityKind.Resistance), "Internal resistance."),
        .. Standing,
        .. Fastenings,
    ]);

    private static EitherShape ContactPairs => Either(new ListShape(Either(Name, ListOf(Name, 2, 2)), 1, int.MaxValue));
}
