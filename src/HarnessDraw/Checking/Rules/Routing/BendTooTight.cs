using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Routing;

internal sealed class BendTooTight : IDesignRule
{
    public RuleInfo Info { get; } = new("bend-too-tight", "No room for the bend radius of a bundle", Severity.Warning, Consequence.DoesNotLast, "US Army TM 1-1500-204-23-4; FAA AC 43.13-1B chapter 11",
        "A sharp bend breaks strands inside and opens the covering outside.")
    {
        Limits =
        [
            new("times diameter", PlanningOptions.Usual.BendFactor, "", "US Army TM 1-1500-204-23-4: radius of at least ten bundle diameters"),
            new("times diameter, clipped", 3, "", "FAA AC 43.13-1B chapter 11: three diameters where the bend is supported"),
        ],
    };

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var bends = new List<Bend>();
        foreach (var above in context.Plan.Tree.Segments)
        {
            foreach (var below in context.Plan.Tree.Below(above.To))
            {
                if (Of(context, above, below) is { } bend)
                {
                    bends.Add(bend);
                }
            }
        }

        var tight = bends.OrderBy(b => b.Above.Id, StringComparer.Ordinal).ThenBy(b => b.Below.Id, StringComparer.Ordinal).ToList();
        if (tight.Count > 0)
        {
            var worst = tight.MaxBy(b => b.WantedMm - b.RoomMm)!;
            yield return context.Found(Info, $"{Wording.List(tight.Select(b => $"{b.Above.Id}/{b.Below.Id} at {b.Above.To} turns {Figure.Number(Math.Round(b.Degrees))}°: {Figure.Of(b.DiameterMm, "mm")} thick, it needs a radius of {Figure.Millimetres(b.WantedMm)} and has room for {Figure.Millimetres(b.RoomMm)}"), "; ")}.",
                $"Clip both sides of the bend, move {worst.Above.To}, or split the bundle.", tight.SelectMany(b => new[] { b.Above.Id, b.Below.Id, b.Above.To }), at: context.Place(worst.Above.To)?.At);
        }
    }

    private sealed record Bend(Segment Above, Segment Below, double Degrees, double DiameterMm, double WantedMm, double RoomMm);

    // an arc of radius r that turns by an angle takes r tan(angle / 2) of the straight runs on both sides
    private Bend? Of(RuleContext context, Segment above, Segment below)
    {
        if (above.Assumed || below.Assumed || !above.Wires.Intersect(below.Wires).Any() || context.Place(above.From) is not { } a || context.Place(above.To) is not { } b || context.Place(below.To) is not { } c)
        {
            return null;
        }

        var turn = Turn(a, b, c);
        var diameterMm = Math.Min(above.DiameterMm, below.DiameterMm);
        var clipped = context.PathOf(above)?.ClipsEveryMm is not null || context.PathOf(below)?.ClipsEveryMm is not null;
        var wantedMm = diameterMm * context.Limit(Info, clipped ? "times diameter, clipped" : "times diameter");
        var roomMm = Math.Min(Distance(a, b), Distance(b, c)) / Math.Tan(turn / 2);
        return turn > 0.01 && roomMm < wantedMm - 0.5 ? new(above, below, turn * 180 / Math.PI, diameterMm, wantedMm, roomMm) : null;
    }

    private static double Turn(Place a, Place b, Place c)
    {
        var (ab, bc) = (Distance(a, b), Distance(b, c));
        var dot = ((b.Xmm - a.Xmm) * (c.Xmm - b.Xmm)) + ((b.Ymm - a.Ymm) * (c.Ymm - b.Ymm)) + ((b.Zmm - a.Zmm) * (c.Zmm - b.Zmm));
        return ab * bc == 0 ? 0 : Math.Acos(Math.Clamp(dot / (ab * bc), -1, 1));
    }

    private static double Distance(Place a, Place b) => Math.Sqrt(((a.Xmm - b.Xmm) * (a.Xmm - b.Xmm)) + ((a.Ymm - b.Ymm) * (a.Ymm - b.Ymm)) + ((a.Zmm - b.Zmm) * (a.Zmm - b.Zmm)));
}
