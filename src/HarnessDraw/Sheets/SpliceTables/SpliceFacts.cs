using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.SpliceTables;

/// <summary>A wire at a splice with the end it goes to.</summary>
internal sealed record SpliceLeg(Wire Wire, WireEnd There);

/// <summary>What the bench needs to make one splice. Side A lies towards the root of the harness. Null figures are not known.</summary>
internal sealed record SpliceFacts(Splice Splice, Segment Segment, string Branch, ImmutableArray<SpliceLeg> SideA, ImmutableArray<SpliceLeg> SideB)
{
    /// <summary>Beyond the joint on each side, mm (common practice, no source).</summary>
    private const double SleeveBeyondMm = 25;

    public required UnitsShown Units { get; init; }
    public required SplicePart? Part { get; init; }
    public required CoveringPart? Sleeve { get; init; }

    /// <summary>'SP2 at 130 mm' or null.</summary>
    public required string? NearestSplice { get; init; }
    public required ImmutableArray<Splice> Neighbours { get; init; }

    public double TotalMm2 => SideA.Concat(SideB).Sum(l => l.Wire.AreaMm2);

    public double? StripMm => Part?.StripMm;

    /// <summary>The joint is taken as two strip lengths, mm.</summary>
    public double? SleeveMm => Part is null ? null : (2 * Part.StripMm) + (2 * SleeveBeyondMm);

    public bool InRange => Part is { } part && TotalMm2 >= part.MinTotalMm2 - 1e-9 && TotalMm2 <= part.MaxTotalMm2 + 1e-9;

    /// <summary>The splices of a plan by branch, then by station.</summary>
    public static ImmutableArray<SpliceFacts> Of(Plan plan, UnitsShown units)
    {
        var measure = new TreeMeasure(plan);
        return
        [
            .. plan.Splices.Where(s => plan.Tree.Segments.Any(g => g.Id == s.Segment))
                .Select(s => One(plan, measure, s, units))
                .OrderBy(f => f.Branch, StringComparer.Ordinal)
                .ThenBy(f => f.Splice.StationMm ?? double.MaxValue)
                .ThenBy(f => f.Splice.Id, CavityOrder.Instance),
        ];
    }

    private static SpliceFacts One(Plan plan, TreeMeasure measure, Splice splice, UnitsShown units)
    {
        var segment = plan.Tree.Segments.First(g => g.Id == splice.Segment);
        var legs = splice.Wires.Select(id => plan.Wires.First(w => w.Id == id)).Select(w => new SpliceLeg(w, w.From.At == splice.Id ? w.To : w.From)).ToList();
        var sides = legs.ToLookup(l => TowardsRoot(plan, splice, segment, l));
        var nearest = plan.Splices.Where(o => o.Id != splice.Id).Select(o => (o.Id, Mm: measure.Between(splice, o))).Where(o => o.Mm is not null).OrderBy(o => o.Mm).ThenBy(o => o.Id, StringComparer.Ordinal).FirstOrDefault();
        return new(splice, segment, measure.Branch(segment.To), [.. sides[true]], [.. sides[false]])
        {
            Units = units,
            Part = plan.Harness.Catalogue.Splices.FirstOrDefault(p => p.Id == splice.Part),
            Sleeve = Sleeving(plan.Harness.Catalogue, sides),
            NearestSplice = nearest.Id is null ? null : $"splice {nearest.Id} at {LengthWords.Of(nearest.Mm ?? 0, units)}",
            Neighbours = [.. plan.Splices.Where(o => o.Segment == splice.Segment && o.Id != splice.Id)],
        };
    }

    private static bool TowardsRoot(Plan plan, Splice splice, Segment segment, SpliceLeg leg)
    {
        var ids = leg.Wire.Segments;
        var at = ids.IndexOf(segment.Id);
        if (at < 0)
        {
            return leg.Wire.To.At == splice.Id;
        }

        if (ids.Length > 1)
        {
            // the wire is listed from its first end: what lies before or after this segment says where it leaves
            var next = plan.Tree.Segments.First(s => s.Id == ids[leg.Wire.From.At == splice.Id ? Math.Min(at + 1, ids.Length - 1) : Math.Max(at - 1, 0)]);
            if (next.Id != segment.Id)
            {
                return next.To == segment.From || next.From == segment.From;
            }
        }

        var other = plan.Splices.FirstOrDefault(s => s.Id == leg.There.At);
        return other is not null
            ? other.Segment == segment.Id ? other.AtMm < splice.AtMm : other.StationMm < splice.StationMm
            : plan.Harness.Things.FirstOrDefault(t => t.Id == leg.There.At)?.Place == segment.From;
    }

    // the joint is as thick as the thicker side's bundle
    private static CoveringPart? Sleeving(Catalogue catalogue, ILookup<bool, SpliceLeg> sides)
    {
        var thickMm = sides.Select(s => 1.2 * Math.Sqrt(s.Sum(l => l.Wire.OutsideMm * l.Wire.OutsideMm))).DefaultIfEmpty(0).Max();
        return catalogue.Coverings.Where(c => c.Kind == "heat shrink" && c.MinBundleMm <= thickMm && c.MaxBundleMm >= thickMm).OrderBy(c => c.MaxBundleMm).FirstOrDefault();
    }
}
