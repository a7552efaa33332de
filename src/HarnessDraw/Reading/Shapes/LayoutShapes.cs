using HarnessDraw.Units;
using static HarnessDraw.Reading.Shape;

namespace HarnessDraw.Reading;

/// <summary>The keys of a vehicle layout. A new key is added here and read in LayoutReader.</summary>
public static class LayoutShapes
{
    private static readonly Shape Point = ListOf(Number, 3, 3);
    private static readonly TextShape ZoneName = new("a zone");
    private static readonly TextShape PlaceName = new("a place");

    private static readonly BlockShape Datum = new("datum", "Where the middle of an opening lies on its panel, seen from the bay.",
    [
        new("from", Text, "A point that can be found on the panel, left of the opening and below it: 'left seam and upper edge of the crossmember'.", Required: true),
        new("across", Of(QuantityKind.Length), "From there to the middle of the opening, to the right.", Required: true),
        new("up", Of(QuantityKind.Length), "From there to the middle of the opening, upwards.", Required: true),
    ]);

    private static readonly BlockShape Opening = new("opening", "A hole in a panel.",
    [
        new("shape", SizeOf(QuantityKind.Length, orRound: true), "62 x 98 mm (width and height) or round 40 mm.", Required: true),
        new("panel", Text, "The panel it is in."),
        new("room", SizeOf(QuantityKind.Length), "Flat metal around it, with the opening in its middle: '140 x 180 mm'. Left out: there is enough."),
        new("edge", OneOrMore(Text), "Remarks on its edge, such as the old opening."),
        new("datum", Datum, "Where its middle lies on the panel. Left out: the template has blanks to write it in."),
        new("holds", Name, "What sits in it: a mate, an inline connector or a grommet."),
    ]);

    private static readonly BlockShape Place = new("place", "A named point of the vehicle.",
    [
        new("at", Point, "x, y and z in mm: towards the nose, to the vehicle's right, up.", Required: true),
        new("zone", ZoneName, "Its zone."),
        new("branch", Text, "Name of the branch that ends or hangs here."),
        new("behind", Text, "What covers it once the vehicle is assembled, such as 'inner wing panel'. Left out: it can be reached."),
    ]);

    private static readonly BlockShape Path = new("path", "A permitted run between two places.",
    [
        new("from", PlaceName, "One end.", Required: true),
        new("to", PlaceName, "The other end.", Required: true),
        new("measured", Of(QuantityKind.Length), "Its length, measured along the run; 'unknown' when it is yet to be measured."),
        new("estimated", Of(QuantityKind.Length), "Its length, estimated."),
        new("again", Of(QuantityKind.Length), "A second measurement of the same run."),
        new("clips-every", Of(QuantityKind.Length), "Distance of its clips."),
        new("zone", ZoneName, "Its zone."),
        new("moves", Of(QuantityKind.Length), "Travel between its ends: engine rock, a hinge."),
    ]);

    private static readonly BlockShape Zone = new("zone", "Ambient and exposure of paths and places.",
    [
        new("ambient", Of(QuantityKind.Temperature), "Highest ambient temperature."),
        new("exposure", OneOf("dry", "spray", "splash", "fuel", "acid"), "What may reach a wire. Usual: dry."),
    ]);

    private static readonly BlockShape Surface = new("surface", "What a part of the vehicle is made of.",
    [
        new("material", Text, "The material.", Required: true),
        new("conducts", YesNo, "Whether it returns current. Left out: metals do, all else does not."),
    ]);

    private static readonly BlockShape KeepClear = new("keep-clear", "Something the harness stays away from.",
    [
        new("what", Text, "What it is.", Required: true),
        new("at", Point, "x, y and z in mm.", Required: true),
        new("to", Point, "x, y and z of its other end, for a pipe or a shaft. Left out: it lies at one point."),
        new("by", Of(QuantityKind.Length, orUnknown: false), "The distance to keep.", Required: true),
        new("forbidden", YesNo, "Yes where no wire may pass, sleeved or not: paths through it are taken only when nothing else is left, and are errors."),
    ]);

    private static readonly BlockShape Line = new("body-line", "A line of the body, drawn behind the harness.",
    [
        new("line", Text, "What it shows: body, wheel arch, engine.", Required: true),
        new("points", ListOf(ListOf(Number, 2, 2), 2), "Points [x, y] in mm.", Required: true),
        new("closed", YesNo, "Yes when the last point joins the first."),
    ]);

    public static readonly BlockShape Layout = new("vehicle-layout", "A vehicle seen from above. Axes in mm: x towards the nose, y to the vehicle's right, z up.",
    [
        new("vehicle-layout", Text, "The vehicle, in words.", Required: true),
        new("root", PlaceName, "Place where stations and the trunk start.", Required: true),
        new("openings", Named("a place", Opening), "Holes in panels, by the place they are at."),
        new("places", Named("a place", Place), "Named points.", Required: true),
        new("paths", ListOf(Path), "Permitted runs between places.", Required: true),
        new("zones", Named("a zone", Zone), "Zones by name."),
        new("surfaces", Named("a surface", Either(new TextShape("a material"), Surface)), "Parts of the body with their material. Only metal returns current."),
        new("keep-clear", ListOf(KeepClear), "What the harness stays away from."),
        new("outline", Either(new TextShape("a file"), ListOf(Line)), "Body lines: an SVG file beside this one (nose to the left, right side at the top, a unit a millimetre, 0,0 at the origin), or lines."),
    ]);
}
