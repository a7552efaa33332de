using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication.Supplies;

/// <summary>
/// What covers and holds one segment. Sleeves in millimetres to cut, tape in metres off the roll, ties and clips by number; null where the length is unknown.
/// </summary>
public sealed record CoveringCut(Segment Segment, CoveringPart? Part, double? SleeveMm, double? TapeM, int Ties, int? Clips)
{
    /// <summary>Grommets of the openings at its far end (the first segment: at its near end too): catalogue part, or the hole in words.</summary>
    public ImmutableArray<string> Grommets { get; init; } = [];

    /// <summary>Splices on it, each under a piece of adhesive-lined shrink.</summary>
    public int SpliceSleeves { get; init; }

    /// <summary>Things whose plugs are closed after the sleeve is on.</summary>
    public ImmutableArray<string> PutOnBefore { get; init; } = [];

    /// <summary>Distance of its supports, mm; null where the layout names none.</summary>
    public double? ClipsApartMm { get; init; }
}

/// <summary>Coverings and fixings segment by segment.</summary>
public static class CoveringCuts
{
    // half-lapped tape of 19 mm advances half its width a turn; 15 % more for starts, crossings and waste (common practice, no source)
    private const double TapeWidthMm = 19;
    private const double TapeMore = 1.15;

    public static ImmutableArray<CoveringCut> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return [.. plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).Select(s => Cut(plan, s))];
    }

    private static CoveringCut Cut(Plan plan, Segment segment)
    {
        var part = plan.Harness.Catalogue.Coverings.FirstOrDefault(c => c.Id == segment.Covering);
        var isTape = part?.Kind.Contains("tape", StringComparison.Ordinal) == true;
        var path = plan.Harness.Layout.Paths.FirstOrDefault(p => (p.From, p.To) == (segment.From, segment.To) || (p.To, p.From) == (segment.From, segment.To));
        return new(
            segment,
            part,
            part is null || isTape ? null : segment.LengthMm,
            isTape ? segment.LengthMm * Math.PI * segment.DiameterMm / (TapeWidthMm * 0.5) / 1000 * TapeMore : null,
            // one tie on each side of every breakout (NASA-STD-8739.4)
            new[] { segment.From, segment.To }.Count(p => IsBreakout(plan, p)),
            path?.ClipsEveryMm is { } every && segment.LengthMm is { } length ? (int)Math.Max(0, Math.Ceiling((length / every) - 1e-9) - 1) : null)
        {
            Grommets = [.. plan.Harness.Layout.Openings.Where(o => o.Place == segment.To || (o.Place == segment.From && plan.Tree.Above(segment.From) is null && plan.Tree.Below(segment.From).First(s => !s.Wires.IsEmpty) == segment)).Select(o => Grommet(plan, o)).OfType<string>()],
            PutOnBefore = ClosedSleeves.PutOnBefore(plan, segment, part),
            SpliceSleeves = plan.Splices.Count(s => s.Segment == segment.Id),
            ClipsApartMm = path?.ClipsEveryMm,
        };
    }

    // an opening with a mate in it is filled by that
    private static string? Grommet(Plan plan, Opening opening)
    {
        if (plan.Harness.Things.Any(t => t.Id == opening.Holds && t.Kind is ThingKind.Mate or ThingKind.Inline) || !opening.Round)
        {
            return null;
        }

        var part = plan.Harness.Catalogue.Grommets.FirstOrDefault(g => g.Id == opening.Holds) ?? plan.Harness.Catalogue.Grommets.FirstOrDefault(g => Math.Abs(g.HoleMm - opening.WidthMm) < 0.5);
        return part?.Id ?? string.Create(CultureInfo.InvariantCulture, $"grommet for a hole of {opening.WidthMm:0.#} mm");
    }

    private static bool IsBreakout(Plan plan, string place) =>
        plan.Tree.Segments.Count(s => !s.Wires.IsEmpty && (s.From == place || s.To == place)) >= 3;
}
