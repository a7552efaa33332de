namespace HarnessDraw.Fabrication.Supplies;

/// <summary>Coverings, tape, sleeves, ties and labels that an order uses up.</summary>
internal static class Consumables
{
    // a splice is sleeved 25 mm to each side (common practice, no source); its own length is taken as 20 mm
    private const double SpliceSleeveMm = 70;
    private const double LabelMm = 50;

    public static IEnumerable<PurchaseLine> Lines(FabricationOrder order)
    {
        var plan = order.Shown;
        var harnesses = order.Harnesses;
        var cuts = CoveringCuts.Of(plan);
        foreach (var part in cuts.Where(c => c.Part is not null).GroupBy(c => c.Part!.Id, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var metres = part.Sum(c => c.TapeM ?? (c.SleeveMm / 1000) ?? 0) * harnesses;
            var isTape = part.First().TapeM is not null;
            yield return new("covering", part.Key, part.First().Part!.Title, "m", metres, isTape ? 0 : metres * 0.1, isTape ? "15 % for starts and waste is in it" : null);
        }

        yield return new("sleeve", "splice sleeve", "Adhesive-lined heat shrink over splices", "m", plan.Splices.Sum(s => order.QuantityOf(s.Builds)) * SpliceSleeveMm / 1000, 0, "70 mm each");
        foreach (var bore in order.Wires.GroupBy(w => LabelSleeve.For(w.OutsideMm)?.BoreMm).OrderBy(g => g.Key))
        {
            var labels = 2 * bore.Sum(w => order.QuantityOf(w.Builds));
            yield return bore.Key is { } mm
                ? new("label", $"label sleeve {mm:0.0} mm", $"Printable heat-shrink sleeve, bore {mm:0.0} mm", "m", labels * LabelMm / 1000, 0, $"{labels} labels of 50 mm")
                : new("label", "flag label", "Flag label, no sleeve fits", "pcs", labels, 0, null);
        }

        yield return new("fixing", "tie", "Cable tie, one on each side of a breakout", "pcs", cuts.Sum(c => c.Ties) * harnesses, Math.Ceiling(cuts.Sum(c => c.Ties) * harnesses * 0.1), null);
        yield return new("fixing", "clip", "Clip, as far apart as the layout says", "pcs", cuts.Sum(c => c.Clips ?? 0) * harnesses, 0, null);
    }
}
