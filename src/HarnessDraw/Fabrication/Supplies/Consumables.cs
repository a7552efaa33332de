namespace HarnessDraw.Fabrication.Supplies;

/// <summary>Coverings, tape, sleeves, ties and labels that an order uses up.</summary>
internal static class Consumables
{
    private const double LabelMm = 50;

    public static IEnumerable<PurchaseLine> Lines(FabricationOrder order)
    {
        var cuts = order.Each.SelectMany(b => CoveringCuts.Of(b.Plan).Select(c => (Cut: c, b.Times))).ToArray();
        foreach (var part in cuts.Where(c => c.Cut.Part is not null).GroupBy(c => c.Cut.Part!.Id, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var metres = part.Sum(c => (c.Cut.TapeM ?? (c.Cut.SleeveMm / 1000) ?? 0) * c.Times);
            var isTape = part.First().Cut.TapeM is not null;
            yield return new("covering", part.Key, part.First().Cut.Part!.Title, "m", metres, isTape ? 0 : metres * 0.1, isTape ? "15 % for starts and waste is in it" : null);
        }

        foreach (var grommet in cuts.SelectMany(c => c.Cut.Grommets.Select(g => (Part: g, c.Times))).GroupBy(g => g.Part, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            yield return new("grommet", grommet.Key, order.Plan.Harness.Catalogue.Grommets.FirstOrDefault(g => g.Id == grommet.Key)?.Title ?? grommet.Key, "pcs", grommet.Sum(g => g.Times), 0, null);
        }

        foreach (var sleeve in order.Plan.Splices.GroupBy(s => SpliceSleeve.For(order.Plan, s)?.Id ?? "splice sleeve", StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            yield return new("sleeve", sleeve.Key, "Adhesive-lined heat shrink over splices", "m", sleeve.Sum(s => order.QuantityOf(s.Builds)) * SpliceSleeve.LengthMm / 1000, 0, $"{SpliceSleeve.LengthMm:0} mm each");
        }

        foreach (var bore in order.Wires.GroupBy(w => LabelSleeve.For(w.OutsideMm)?.BoreMm).OrderBy(g => g.Key))
        {
            var labels = 2 * bore.Sum(w => order.QuantityOf(w.Builds));
            yield return bore.Key is { } mm
                ? new("label", $"label sleeve {mm:0.0} mm", $"Printable heat-shrink sleeve, bore {mm:0.0} mm", "m", labels * LabelMm / 1000, 0, $"{labels} labels of 50 mm")
                : new("label", "flag label", "Flag label, no sleeve fits", "pcs", labels, 0, null);
        }

        var ties = cuts.Sum(c => c.Cut.Ties * c.Times);
        yield return new("fixing", "tie", "Cable tie, one on each side of a breakout", "pcs", ties, Math.Ceiling(ties * 0.1), null);
        yield return new("fixing", "clip", "Clip, as far apart as the layout says", "pcs", cuts.Sum(c => (c.Cut.Clips ?? 0) * c.Times), 0, null);
    }
}
