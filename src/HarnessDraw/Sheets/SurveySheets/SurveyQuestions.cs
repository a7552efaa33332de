using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.SurveySheets;

/// <summary>One thing to find out, what is known of it so far, and the unit to write it in.</summary>
internal sealed record SurveyQuestion(string Group, string What, string Known, string Unit)
{
    /// <summary>Measured twice: the second box is for the second person.</summary>
    public bool Twice { get; init; }
}

/// <summary>Collects what a plan does not know.</summary>
internal static class SurveyQuestions
{
    public static ImmutableArray<SurveyQuestion> Of(Plan plan) =>
        [.. Open(plan), .. Lengths(plan), .. Openings(plan), .. Torques(plan), .. Ratings(plan), .. WireCurrents(plan)];

    private static IEnumerable<SurveyQuestion> Open(Plan plan) =>
        plan.Harness.OpenQuestions.Select(q => new SurveyQuestion("Given as unknown", q.What, Shown.Unknown, ""));

    // only what wires of this build run through
    private static IEnumerable<SurveyQuestion> Lengths(Plan plan)
    {
        var used = plan.Tree.Segments.Where(s => !s.Wires.IsEmpty).ToList();
        foreach (var segment in used.Where(s => s.LengthMm is null || s.Estimated || s.Assumed))
        {
            var known = segment.LengthMm is { } mm ? $"{Shown.Number(mm)} mm, {(segment.Assumed ? "no path in the layout" : "estimated")}" : "not known";
            yield return new("Lengths along the run, with a rope or a wire", $"{segment.From} to {segment.To}", known, "mm") { Twice = true };
        }
    }

    private static IEnumerable<SurveyQuestion> Openings(Plan plan)
    {
        foreach (var opening in plan.Harness.Layout.Openings.Where(o => o.OldOpening is null || o.Datum is not { Measured: true }))
        {
            var now = opening.OldOpening is null ? "size of the opening as it is now" : "";
            var where = opening.Datum is { Measured: true } ? "" : $"its middle from {opening.Datum?.From ?? "two edges of the panel"}, across and up";
            yield return new("Openings", $"{opening.Place}: {string.Join("; ", new[] { now, where }.Where(w => w.Length > 0))}", $"wanted {Shown.Number(opening.WidthMm, 1)} × {Shown.Number(opening.HeightMm, 1)} mm", "mm") { Twice = true };
        }
    }

    /// <summary>Cavities of the kept half that this build uses and whose kept colour is not given, by connector.</summary>
    public static IEnumerable<(string Connector, ImmutableArray<string> Cavities)> Kept(Plan plan)
    {
        foreach (var mate in plan.Harness.Things.Where(t => t.Kind == ThingKind.Mate && !t.BothSidesBuilt))
        {
            var known = plan.Harness.Kept.Where(k => k.Connector == mate.Id && k.Colour is not null).Select(k => k.Cavity).ToHashSet(StringComparer.Ordinal);
            var used = plan.Cavities.Where(c => c.Connector == mate.Id && c.Side == Side.Bay && c.Wire is not null).Select(c => c.Cavity).Distinct(StringComparer.Ordinal);
            ImmutableArray<string> open = [.. used.Where(c => !known.Contains(c)).OrderBy(c => c, CavityOrder.Instance)];
            if (!open.IsEmpty)
            {
                yield return (mate.Id, open);
            }
        }
    }

    private static IEnumerable<SurveyQuestion> Torques(Plan plan)
    {
        var bolted = plan.Wires.SelectMany(w => new[] { w.From, w.To }).Where(e => !e.IsSplice).ToHashSet();
        foreach (var thing in plan.Harness.Things.Where(t => t.TorqueNm is null && t.Pins.Any(p => p.Style == PinStyle.Stud) && bolted.Any(e => e.At == t.Id)).OrderBy(t => t.Id, StringComparer.Ordinal))
        {
            var sizes = string.Join(", ", thing.Pins.Where(p => p.Style == PinStyle.Stud).Select(p => p.Size).Distinct(StringComparer.Ordinal));
            yield return new("Torques, from the maker", $"{thing.Id}: {sizes}", "not given", "N·m");
        }
    }

    private static IEnumerable<SurveyQuestion> Ratings(Plan plan) =>
        plan.Fuses.Where(f => f.RatingA is null).OrderBy(f => f.Id, CavityOrder.Instance).Select(f => new SurveyQuestion("Fuses", $"rating of fuse {f.Id}", "not known", "A"));

    // sizes whose published current comes without the ambient it holds for
    private static IEnumerable<SurveyQuestion> WireCurrents(Plan plan)
    {
        var used = plan.Wires.Select(w => (w.WireType, w.SizeLabel)).ToHashSet();
        foreach (var type in plan.Harness.Catalogue.WireTypes)
        {
            var open = type.Sizes.Where(s => s is { AirAmpacityA: not null, Basis: null } && used.Contains((type.Id, s.Label))).Select(s => s.Label).ToList();
            if (open.Count > 0)
            {
                yield return new("Data sheets", $"{type.Title}: ambient for which the currents of {string.Join(", ", open)}{(open.Exists(l => !l.EndsWith("AWG", StringComparison.Ordinal)) ? " mm²" : "")} are stated",
                    $"{Shown.Number(AmpacityBasis.AssumedAmbientC)} °C assumed", "°C");
            }
        }
    }
}
