using HarnessDraw.Units;
using static HarnessDraw.Reading.Shape;

namespace HarnessDraw.Reading;

/// <summary>The keys of a harness description, outside in. The JSON Schema and the key reference are made from them.</summary>
public static class DescriptionShapes
{
    private static readonly BlockShape Revision = new("revision", "One line of the revision table; the last is the current one.",
    [
        new("rev", Name, "Its letter.", Required: true),
        new("on", Name, "Its date, text as typed.", Required: true),
        new("what", Text, "What changed.", Required: true),
        new("where", Text, "Where on the sheet."),
        new("who", Text, "By whom."),
    ]);

    private static readonly BlockShape SheetTitle = new("sheet-title", "What the title block says. Dates are text, never the clock.",
    [
        new("number", Name, "Drawing number."),
        new("owner", Text, "Legal owner of the drawing."),
        new("drawn", Text, "Drawn by."),
        new("approved", Text, "Approved by."),
        new("issued", Name, "Date of issue."),
        new("language", Name, "Language of the sheets' words. Usual: en."),
        new("logo", new TextShape("a file"), "An SVG file beside the description, for the title block."),
        new("font", new TextShape("a file"), "A TrueType file beside the description, for scripts that the shipped faces lack."),
        new("revisions", ListOf(Revision), "The revision table."),
    ]);

    private static readonly BlockShape Power = new("power", "Sources and how current returns to them.",
    [
        new("ground", OneOf("negative", "positive"), "The pole that is joined to the body. Usual: negative."),
        new("returns-by", OneOf("body", "wire"), "Wire where the body is glass fibre or wood. Usual: body."),
        new("sources", Named("a source", ThingShapes.Source), "Batteries, alternators and dynamos by name.", Required: true),
        new("converters", Named("a converter", ThingShapes.Converter), "Converters by name, each with the source it draws from."),
    ]);

    private static readonly BlockShape Option = new("option", "A choice the builder makes.",
    [
        new("one of", ListOf(Name, 2), "The choices.", Required: true),
        new("usual", Name, "The choice of the usual build.", Required: true),
    ]);

    private static readonly BlockShape State = new("state", "Positions of key and switches and whether the engine runs.",
    [
        new("key", OneOf("off", "accessory", "run", "start"), "Position of the key.", Required: true),
        new("engine", OneOf("stopped", "cranking", "running"), "What the engine does. Usual: stopped."),
        new("on", OneOrMore(new TextShape("a circuit")), "Circuits that are switched on."),
    ]);

    private static readonly BlockShape Protection = new("protection", "A fuse, link or breaker. Other keys name its two ends NAME.in and NAME.out; 'from: NAME' means NAME.out.",
    [
        new("kind", OneOf("bolt-in", "blade", "fusible link", "breaker"), "How it is built.", Required: true),
        new("rating", Of(QuantityKind.Current), "Fixes the rating. Left out: worked out."),
        new("on", new TextShape("a bus bar, stud or panel"), "The thing it sits on and is fed from. Left out: a circuit feeds NAME.in."),
        new("at", new TextShape("a place"), "Where it sits, when not where 'on' sits."),
        new("side", OneOf("bay", "cabin"), "Side of the firewall. Usual: that of 'on', else bay."),
        new("link-size", Of(QuantityKind.WireSize), "Size of a fusible link's own wire: 1.0 mm2 or 16 AWG."),
        new("link-length", Of(QuantityKind.Length, orUnknown: false), "Length of a fusible link."),
        new("protects", OneOrMore(new TextShape("a circuit")), "Circuits protected by it beside those that come from it."),
        new("label", Text, "Name on the sheets."),
        new("torque", Of(QuantityKind.Torque), "Tightening torque of its nuts."),
        new("note", Text, "A remark for the builder."),
    ]);

    private static readonly BlockShape KeptPin = new("kept-pin", "What the kept cabin side offers at one cavity.",
    [
        new("comes-from", Pin, "Protection or pin on the cabin side."),
        new("through", OneOrMore(new TextShape("a thing")), "Switches on the way."),
        new("colour", Colour, "Colour of the kept wire."),
        new("adds", Of(QuantityKind.Resistance), "Resistance of the kept wiring up to the cavity: 60 mohm."),
    ]);

    private static readonly BlockShape Assume = new("assume", "Values where nothing is given; printed as 'assumed'.",
    [
        new("contact", Of(QuantityKind.Resistance, orUnknown: false), "A connector contact. Usual: 5 mohm."),
        new("switch", Of(QuantityKind.Resistance, orUnknown: false), "A switch contact. Usual: 20 mohm."),
        new("relay-contact", Of(QuantityKind.Resistance, orUnknown: false), "A relay contact. Usual: 10 mohm."),
        new("ground-joint", Of(QuantityKind.Resistance, orUnknown: false), "A ring on bare metal. Usual: 2 mohm."),
    ]);

    private static readonly BlockShape Ampacity = new("ampacity", "By which published figures a wire bears its current.",
    [
        new("in-air", OneOf("catalogue", "marine"), "One wire in air: the catalogue's column, or 33 CFR 183.425 Table E (105 degC, 30 degC). Usual: catalogue."),
        new("in-bundles", OneOf("steps", "marine"), "Loaded wires of a bundle: the program's steps (1, 0.8, 0.7, 0.5, 0.4 from 1, 4, 8, 20, 40 wires), or those of the US Coast Guard's guideline (1, 0.7, 0.6, 0.5, 0.4 from 1, 3, 4, 7, 25). Usual: steps."),
    ]);

    private static readonly BlockShape Kept = new("kept", "What stays in the vehicle on the cabin side and is not built.",
    [
        new("pins", Named("a cavity", KeptPin), "The kept pin-out by cavity ('B9'; with several mates 'firewall.B9')."),
        new("assume", Assume, "Values assumed where nothing is given."),
    ]);

    private static readonly BlockShape Waiver = new("waiver", "A finding the owner accepts. Printed on the sheets.",
    [
        new("rule", Name, "Id of the rule.", Required: true),
        new("for", OneOrMore(Name), "What it is accepted for.", Required: true),
        new("because", Text, "The reason.", Required: true),
        new("by", Text, "Who accepts it.", Required: true),
        new("on", Name, "The date, text as typed.", Required: true),
    ]);

    public static readonly BlockShape Description = new("harness-description", "A wire harness: who and what. Every quantity has its unit; everything is text until it is read.",
    [
        new("harness", Text, "What the harness is, in words.", Required: true),
        new("vehicle", Text, "The vehicle.", Required: true),
        new("sheet-title", SheetTitle, "Fields of the title block."),
        new("vehicle-layout", new TextShape("a file"), "The vehicle layout file, beside this file.", Required: true),
        new("parts-from", OneOrMore(new TextShape("a file")), "Catalogue files beside this one, added to the built-in catalogue and overriding it."),
        new("wire-type", new TextShape("a wire type of the catalogue"), "The usual wire type of this harness."),
        new("power", Power, "Sources and how current returns to them.", Required: true),
        new("options", Named("an option", Option, new Key("rules", ListOf(new TextShape("a rule such as 'single wire needs electric fan'")), "Rules between choices: 'CHOICE needs CHOICE', 'CHOICE excludes CHOICE'.")), "Choices the builder makes, by name."),
        new("states", Named("a state", State), "Operating states by name, added to off, ignition on, cranking, running, night and rain."),
        new("things", Named("a thing", ThingShapes.Thing), "Whatever wires end in, by name.", Required: true),
        new("protection", Named("a protection", Protection), "Fuses, links and breakers by name."),
        new("kept", Kept, "What stays in the vehicle on the cabin side."),
        new("circuits", Named("a circuit", CircuitShapes.Circuit), "Named jobs with all their wires.", Required: true),
        new("ampacity", Ampacity, "What the currents of wires are judged by, where it is not the catalogue and the program's own steps."),
        new("allowances", AllowanceShapes.OfHarness, "Lengths added to the routes of wires, where they are not the usual ones."),
        new("keep-apart", ListOf(ListOf(new TextShape("a circuit"), 2)), "Groups of circuits whose cavities must not be neighbours."),
        new("sized-alike", ListOf(ListOf(new TextShape("a thing, or a circuit"), 2)), "Groups of things whose wires are sized alike, pin by pin ([headlamp left, headlamp right]), or of circuits, end by end."),
        new("unknown-allowed", YesNo, "Yes: a measurement may be 'unknown' and is listed as an open question."),
        new("waivers", ListOf(Waiver), "Findings the owner accepts."),
    ]);
}
