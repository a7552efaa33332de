using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.FuseCards;

/// <summary>
/// Cards for the lids of the fuse panels, to be cut out: every position with its rating, what it feeds in plain words and the largest fuse its wires bear.
/// </summary>
public static class FuseCardSheets
{
    /// <summary>As many A4 (or Letter) pages as the cards need; none where the plan has no fuse.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(options);
        var shown = options.Build is { } build ? plan.For(build) : plan;
        var panels = FusePanelSeats.Of(shown);
        if (panels.IsEmpty)
        {
            return new([]);
        }

        var form = new PageForm(SheetKinds.FuseCard, "FUSE CARD", "fuse card")
        {
            Aside = "cut out along the outline, fix inside the lid",
            Caution = "Battery disconnected, or at least everything off, before a fuse is pulled. A fuse protects the wire: never fit a larger one, find the fault.",
        };
        var flow = new PageFlow(new(plan, findings, options, form));
        foreach (var panel in panels)
        {
            FuseCard.Put(flow, panel, Imprint(plan));
        }

        // what is carried stands with the cards; reasons come last
        Spares(flow, shown);
        Notes(flow, shown);
        Why(flow, shown);
        return flow.ToResult();
    }

    // a card that is cut out must still say whose it is
    private static string Imprint(Plan plan)
    {
        var drawing = plan.Harness.Drawing;
        ImmutableArray<string?> parts = [plan.Harness.Vehicle, drawing.Number, drawing.Revisions.IsEmpty ? null : $"rev {drawing.Revisions[^1].Rev}"];
        return string.Join(", ", parts.Where(p => !string.IsNullOrEmpty(p)));
    }

    private static void Why(PageFlow flow, Plan plan)
    {
        ImmutableArray<FuseChoice> rated = [.. plan.Fuses.Where(f => f is { RatingA: not null, Given: false }).OrderBy(f => f.Id, CavityOrder.Instance)];
        ImmutableArray<FuseChoice> given = [.. plan.Fuses.Where(f => f is { RatingA: not null, Given: true }).OrderBy(f => f.Id, CavityOrder.Instance)];
        if (rated.IsEmpty && given.IsEmpty)
        {
            return;
        }

        flow.Heading("WHY THESE RATINGS", 20);
        if (!given.IsEmpty)
        {
            flow.Paragraph("Given by hand, amperes of the fuse for those of its load:");
            flow.Columns([.. given.Select(f => $"{f.Id}: {Shown.Number(f.RatingA, 1)} for {Shown.Number(f.LoadA, 1)}")]);
            flow.Gap(2);
        }

        if (rated.IsEmpty)
        {
            return;
        }

        flow.Table(new TextTable<FuseChoice>(
            rated, flow.Area,
            new TextColumn<FuseChoice>("fuse", f => f.Id) { Style = TextStyle.Bold },
            new TextColumn<FuseChoice>("A", f => Shown.Number(f.RatingA, 1)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<FuseChoice>("load A", f => Shown.Number(f.LoadA, 1)) { Right = true },
            new TextColumn<FuseChoice>("most in", f => f.LoadState ?? Shown.Unknown),
            new TextColumn<FuseChoice>("decided by", f => f.Why ?? Shown.Unknown) { LeastMm = 60 }));
    }

    private static void Spares(PageFlow flow, Plan plan)
    {
        var kinds = plan.Fuses.Where(f => f.RatingA is not null).GroupBy(f => (f.Kind, Rating: f.RatingA!.Value)).OrderBy(g => g.Key.Kind).ThenBy(g => g.Key.Rating);
        var words = kinds.Select(g => $"{Shown.Number(g.Key.Rating, 1)} A {Kind(g.Key.Kind)} ({g.Count()} fitted)");
        flow.Heading("SPARE FUSES TO CARRY", 10);
        flow.Paragraph($"One of each, at least: {string.Join(", ", words)}.");
    }

    private static void Notes(PageFlow flow, Plan plan)
    {
        var series = plan.Harness.Catalogue.Fuses.Where(s => plan.Fuses.Any(f => f.Kind == s.Kind)).GroupBy(s => s.Kind).Select(g => g.First().Title);
        flow.Paragraph($"Body colours: {string.Join("; ", series)}. The rating printed on the fuse decides, not its colour.");
        flow.Paragraph($"Positions stand in the order of their names: compare with the panel before the card is fixed.{(FusePanelSeats.Of(plan).Any(p => p.Blanks is not null) ? " Blank positions are for what is added by hand." : "")}");
        if (plan.Fuses.Any(f => f.LargestA is null))
        {
            flow.Paragraph("Never above –: no standard rating is small enough for every wire, contact and splice behind it, or they are not known. Ask before you fit anything.");
        }
    }

    internal static string Kind(Model.ProtectionKind kind) => kind switch
    {
        Model.ProtectionKind.BoltIn => "bolt-in",
        Model.ProtectionKind.Blade => "blade",
        Model.ProtectionKind.FusibleLink => "link",
        _ => "breaker",
    };
}
