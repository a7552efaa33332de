using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class OpeningsTooClose : IDesignRule
{
    // farther from the panel's plane, a point is not in the panel
    private const double PanelMm = 50;

    public RuleInfo Info { get; } = new("openings-too-close", "Opening cuts into another hole or part", Severity.Error, Consequence.DoesNotWork, "common practice, no source",
        "Whoever follows the template cuts away the edge that holds the other part.")
    {
        Limits = [new("edge", 10, "mm", "FAA AC 43.13-1B chapter 11: 3/8 in to the edge of a hole")],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var openings = context.Harness.Layout.Openings.Where(o => context.Place(o.Place) is not null).ToList();
        for (var i = 0; i < openings.Count; i++)
        {
            var (o, at) = (openings[i], context.Place(openings[i].Place)!);
            if (o.RoomWidthMm is { } wide && o.RoomHeightMm is { } high && Math.Min(wide - o.WidthMm, high - o.HeightMm) / 2 is var rim && rim < context.Limit(Info, "edge"))
            {
                yield return context.Found(Info, $"The opening at {o.Place} {(rim < 0 ? $"reaches {Figure.Millimetres(-rim)} beyond its panel" : $"leaves {Figure.Millimetres(rim)} of metal to the edge of its panel; {Figure.Millimetres(context.Limit(Info, "edge"))} is the least")}.", "Move the opening, or take a smaller connector.", [o.Place], at: o.At);
            }

            foreach (var other in openings.Skip(i + 1).Where(x => x.Panel is not null && x.Panel == o.Panel))
            {
                if (Edge(o, at, context.Place(other.Place)!, other.WidthMm, other.HeightMm) is { } mm && mm < context.Limit(Info, "edge"))
                {
                    yield return context.Found(Info, $"The openings at {o.Place} and {other.Place} in {o.Panel} {(mm < 0 ? "overlap" : $"leave {Figure.Millimetres(mm)} of metal between them; {Figure.Millimetres(context.Limit(Info, "edge"))} is the least")}.", "Move one of them, or make one opening for both.", [o.Place, other.Place], at: other.At ?? o.At);
                }
            }

            foreach (var part in context.Harness.Layout.KeepClear)
            {
                if (Edge(o, at, new Place(part.What, part.Xmm, part.Ymm, part.Zmm), 0, 0) is < 0)
                {
                    yield return context.Found(Info, $"The opening at {o.Place} cuts through {part.What} at ({Figure.Number(part.Ymm - at.Ymm)}, {Figure.Number(part.Zmm - at.Zmm)}) mm from its middle.", $"Move the opening clear of {part.What}.", [o.Place, part.What], at: o.At);
                }
            }
        }
    }

    // openings are seen from ahead: width across the vehicle, height up; null when the two lie in different planes
    private static double? Edge(Opening opening, Place at, Place other, double widthMm, double heightMm) =>
        Math.Abs(at.Xmm - other.Xmm) > PanelMm ? null
            : Math.Max(Math.Abs(at.Ymm - other.Ymm) - ((opening.WidthMm + widthMm) / 2), Math.Abs(at.Zmm - other.Zmm) - ((opening.HeightMm + heightMm) / 2));
}
