using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>The keys of a parts catalogue file: what the reader checks and the JSON Schema says.</summary>
public static class CatalogueShapes
{
    public static readonly TextShape LengthRange = new("a range such as '1.4 to 2.6 mm'");
    public static readonly TextShape AreaRange = new("a range such as '0.5 to 1.0 mm2'");
    public static readonly TextShape Box = new("a width and a height such as '70 x 110 mm'");
    private static readonly QuantityShape Length = Shape.Of(QuantityKind.Length, orUnknown: false);
    private static readonly QuantityShape Current = Shape.Of(QuantityKind.Current, orUnknown: false);
    private static readonly QuantityShape Temperature = Shape.Of(QuantityKind.Temperature, orUnknown: false);
    private static readonly Key Title = new("title", Shape.Text, "The part in words, as a list of parts prints it.", Required: true);
    private static readonly Key Source = new("source", Shape.Text, "Where the figures come from and how they are known; 'no source' if they have none.", Required: true);
    private static readonly Key ContactSize = new("size", Length, "Contact size, by the width of its blade or the diameter of its pin.");

    private static readonly Key AmpsAmbient = new("amps-ambient", Temperature, "Ambient that the source states for the current; where neither size nor family has it, 25 degC is assumed.");
    private static readonly Key AmpsConductor = new("amps-conductor", Temperature, "Conductor temperature that the source states for the current; without it the family's highest.");

    public static readonly BlockShape WireSize = new("catalogueWireSize", "One size of a wire family.",
    [
        new("area", Shape.Of(QuantityKind.Area, orUnknown: false), "True copper area. Needed for AWG sizes; a metric size is its own area."),
        new("resistance", Shape.Of(QuantityKind.ResistancePerLength, orUnknown: false), "Resistance by length at 20 degC.", Required: true),
        new("outside", Length, "Largest outside diameter.", Required: true),
        new("amps", Shape.Of(QuantityKind.Current), "Continuous current of a single wire in air; 'unknown' is allowed."),
        AmpsAmbient, AmpsConductor,
        new("mass", Shape.Of(QuantityKind.MassPerLength), "Mass by length; 'unknown' is allowed."),
        new("source", Shape.Text, "Where this size's figures come from, where that differs from the family's."),
    ]);

    public static readonly BlockShape WireSources = new("catalogueWireSources", "Where each figure of a wire family comes from and how it is known.",
    [
        new("area", Shape.Text, "Source of the areas."), new("resistance", Shape.Text, "Source of the resistances."),
        new("outside", Shape.Text, "Source of the outside diameters."), new("amps", Shape.Text, "Source of the currents."), new("mass", Shape.Text, "Source of the masses."),
    ]);

    public static readonly BlockShape Wire = new("catalogueWire", "A wire family: one insulation, many sizes.",
    [
        new("title", Shape.Text, "The family in words."),
        new("usual", Shape.YesNo, "Yes for the family that is used where a circuit names none."),
        new("max", Temperature, "Highest conductor temperature of the insulation."),
        AmpsAmbient, AmpsConductor,
        new("cross-linked", Shape.YesNo, "Yes for cross-linked insulation, which may replace PVC but not the other way round."),
        new("colours", Shape.ListOf(Shape.Colour), "Colours in stock; without this key any colour is."),
        new("sources", Shape.Either(Shape.Text, WireSources), "Where the figures come from and how they are known."),
        new("sizes", Shape.Named("a wire size", WireSize), "Sizes by name, such as '0.75 mm2' or '16 AWG'.", Required: true),
    ]);

    public static readonly BlockShape CavityRow = new("catalogueCavities", "Cavities in one row of a body, in the wire-entry view.",
    [
        new("names", Shape.ListOf(Shape.Name, 1), "Names of the cavities.", Required: true),
        new("x", Shape.ListOf(Shape.Number, 1), "Distance of each from the left edge, in mm.", Required: true),
        new("y", Shape.Number, "Distance of the row from the upper edge, in mm.", Required: true),
        ContactSize with { Required = true },
        new("half", Shape.Name, "Half of a bulkhead connector that the row belongs to: A or B."),
    ]);

    public static readonly BlockShape Bolt = new("catalogueBolt", "The bolt that draws two halves together.",
        [new("torque", Shape.Of(QuantityKind.Torque), "Tightening torque; 'unknown' prints 'see maker'.", Required: true)]);

    public static readonly BlockShape Connector = new("catalogueConnector", "A connector body in the wire-entry view with its latch up.",
    [
        Title, Source,
        new("body", Box, "Width and height of the body.", Required: true),
        new("key", Shape.OneOf("left", "right", "bottom", "none"), "Side of the key rib in the wire-entry view."),
        new("bulkhead", Shape.YesNo, "Yes for a mated pair in a panel; its rows name their half."),
        new("centre-bolt", Bolt, "The bolt in its middle, if it has one."),
        new("passes", Length, "Smallest hole that the largest part of it passes."),
        new("total", Shape.Of(QuantityKind.Current), "Largest current of all cavities together."),
        new("sealed", Shape.YesNo, "Yes when every cavity takes a wire seal or a plug."),
        new("terminals", Shape.ListOf(Shape.Name, 1), "Terminal families that lock in it.", Required: true),
        new("cavities", Shape.ListOf(CavityRow, 1), "Its cavities, row by row.", Required: true),
    ]);

    public static readonly BlockShape Terminal = new("catalogueTerminal", "A crimp terminal.",
    [
        Title, Source,
        new("family", Shape.Name, "Family that connector bodies name; 'push-on' fits bare blades and 'ring' studs.", Required: true),
        ContactSize,
        new("stud", Shape.Name, "Thread that a ring fits, such as M8. A terminal has either 'size' or 'stud'."),
        new("crimp", AreaRange, "Copper areas that its barrel takes.", Required: true),
        new("insulation", LengthRange, "Wire diameters that its insulation crimp holds.", Required: true),
        new("strip", Length, "Length to strip.", Required: true),
        new("barrel", Length, "Length of the crimp barrel."),
        new("current", Current, "Continuous current, warm.", Required: true),
        new("sealed", Shape.YesNo, "Yes when a wire seal is crimped with it."),
    ]);

    public static readonly BlockShape Seal = new("catalogueSeal", "A seal round one wire.",
        [Title, Source, ContactSize with { Required = true }, new("insulation", LengthRange, "Wire diameters that it seals.", Required: true)]);

    public static readonly BlockShape Plug = new("cataloguePlug", "A plug for an unused cavity.", [Title, Source, ContactSize with { Required = true }]);

    public static readonly BlockShape Splice = new("catalogueSplice", "A crimp splice.",
    [
        Title, Source,
        new("total", AreaRange, "Copper areas of all its wires together.", Required: true),
        new("strip", Length, "Length to strip.", Required: true),
        new("sealed", Shape.YesNo, "Yes with an adhesive-lined shrink."),
    ]);

    public static readonly BlockShape Rating = new("catalogueRating", "A standard rating.",
    [
        new("colour", Shape.Text, "Colour of its body in words."),
        new("resistance", Shape.Of(QuantityKind.Resistance), "Cold resistance."),
    ]);

    public static readonly BlockShape Fuse = new("catalogueFuse", "A fuse series.",
    [
        Title, Source,
        new("kind", Shape.OneOf("bolt-in", "blade", "fusible-link", "breaker"), "How it is built.", Required: true),
        new("max-volts", Shape.Of(QuantityKind.Voltage, orUnknown: false), "Highest voltage."),
        new("ratings", Shape.Named("a rating", Rating), "Standard ratings, such as '7.5 A'.", Required: true),
    ]);

    public static readonly BlockShape Covering = new("catalogueCovering", "What goes round a bundle.",
    [
        Title, Source,
        new("kind", Shape.Text, "tape, split loom, braided sleeve, heat sleeve, heat shrink.", Required: true),
        new("bundle", LengthRange, "Bundle diameters that it fits.", Required: true),
        new("wall", Length, "Thickness it adds on each side.", Required: true),
        new("max", Temperature, "Highest temperature.", Required: true),
    ]);

    public static readonly BlockShape Grommet = new("catalogueGrommet", "A grommet.",
        [Title, Source, new("hole", Length, "Hole in the panel.", Required: true), new("bore", Length, "Its own hole.", Required: true)]);

    public static readonly BlockShape File = new("catalogue", "A parts catalogue; rows add to the built-in ones and replace those of the same id.",
    [
        new("notes", Shape.Named("a note", Shape.Text), "Texts to repeat by YAML aliases; not read otherwise."),
        new("wire", Shape.Named("a wire family", Wire), "Wire families. Sizes add to and replace those of a family that is there."),
        new("connectors", Shape.Named("a connector", Connector), "Connector bodies."),
        new("terminals", Shape.Named("a terminal", Terminal), "Terminals and rings."),
        new("seals", Shape.Named("a seal", Seal), "Single-wire seals."),
        new("plugs", Shape.Named("a plug", Plug), "Cavity plugs."),
        new("splices", Shape.Named("a splice", Splice), "Splices."),
        new("fuses", Shape.Named("a fuse series", Fuse), "Fuse series."),
        new("coverings", Shape.Named("a covering", Covering), "Coverings."),
        new("grommets", Shape.Named("a grommet", Grommet), "Grommets."),
    ]);
}
