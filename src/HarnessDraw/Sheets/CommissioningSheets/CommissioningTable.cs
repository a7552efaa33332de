using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.BenchTests;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.CommissioningSheets;

/// <summary>First power with limited current: fuse by fuse, switch by switch, what should flow and how the limiting lamp should glow, boxes for what does.</summary>
public static class CommissioningTable
{
    // shares of the lamp's current: below the first it stays dark, above the second it is bright (common practice, no source)
    private const double DarkBelow = 0.05;
    private const double BrightFrom = 0.5;

    /// <summary>As many A4 (or Letter) pages as the circuits need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        _ => new(SheetKinds.Commissioning, "COMMISSIONING", "first power")
        {
            Aside = "first power, with the current limited",
            Caution = "Battery disconnected and all fuses out at the start; a supply with a current limit or a lamp in the battery lead. Extinguisher at hand. If the lamp is bright, or anything smells or warms: off, do not try again. Never crank through the limiting lamp or a meter.",
        },
        (flow, shown) =>
        {
            Before(flow, shown);
            Circuits(flow, shown);
            After(flow, shown);
        });

    private static void Before(PageFlow flow, Plan plan)
    {
        var ground = plan.Harness.Power.Ground == GroundPolarity.Negative ? "minus" : "plus";
        flow.Heading("BEFORE THE FIRST FUSE", 30);
        flow.Table(Steps(flow,
        [
            new("All fuses out, key off. Ohms between the battery clamps, battery off.", "not near 0 Ω", true),
            new($"A 21 W lamp in the lead of the {(ground == "minus" ? "plus" : "minus")} post, {ground} post last. Key off.", "lamp dark", true),
            new("Milliamperes with everything off, fuses out.", "under 5 mA", true),
        ]));
    }

    private static void Circuits(PageFlow flow, Plan plan)
    {
        var lampA = LimitedPower.LampA(plan);
        var all = PoweredRow.Of(plan);
        ImmutableArray<(PoweredRow Row, LimitedPower? Limited)> rows = [.. all.Where(r => r.IsKnown).Select(r => (r, LimitedPower.Of(plan, r)))];
        flow.Heading("FUSE BY FUSE", 40);
        flow.Paragraph($"Put in one fuse, bring about the state with this circuit alone if you can, compare, go on. The engine stays off: a state in which it runs is that of key and switches. Lamp: what a {LimitedPower.LampW:0} W lamp in the battery lead should show ({Shown.Fixed(lampA, 2)} A passes it at most, so larger loads work weakly); amperes and volts are those through it, from a charged battery at rest ({Shown.Fixed(LimitedPower.RestV(plan), 1)} V). 'A alone': what the circuit draws once the lamp is out, for the second round. Starter and other unfused leads come last, without the lamp.");
        flow.Gap(2);
        flow.Table(new TextTable<(PoweredRow Row, LimitedPower? Limited)>(
            rows, flow.Area,
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("circuit", r => r.Row.Circuit.Id) { LeastMm = 26 },
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("state", r => r.Row.State ?? Shown.Unknown) { LeastMm = 18 },
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("A", r => PoweredRow.Amperes(r.Limited?.CurrentA)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("lamp", r => Lamp(r.Row, r.Limited, lampA)),
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("volts at", r => EndText.OfNode(r.Row.Point)) { LeastMm = 24 },
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("V", r => Shown.Fixed(r.Limited?.Volts, 1)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<(PoweredRow Row, LimitedPower? Limited)>("A alone", r => PoweredRow.Amperes(r.Row.CurrentA)) { Right = true },
            TextColumn<(PoweredRow Row, LimitedPower? Limited)>.Box("A read", 15),
            TextColumn<(PoweredRow Row, LimitedPower? Limited)>.Box("V read", 15),
            TextColumn<(PoweredRow Row, LimitedPower? Limited)>.Tick("pass"))
        { LeastRowMm = 6.4, GroupOf = r => FuseWords(plan, r.Row.Fuse) });
        if (PoweredRow.Unread(all) is { } unread)
        {
            flow.Gap(1.5);
            flow.Paragraph(unread);
        }
    }

    private static void After(PageFlow flow, Plan plan)
    {
        var alternator = plan.Harness.Power.Sources.FirstOrDefault(s => s.Kind == SourceKind.Alternator);
        var factor = plan.Harness.Power.NominalV / 12;
        ImmutableArray<Step> steps =
        [
            new("All fuses in, lamp out, battery connected. Key off: milliamperes drawn.", "50 mA at most; without electronics under 5 mA", true),
            .. alternator is null ? ImmutableArray<Step>.Empty : [new($"Engine running: volts across the battery, charging ({alternator.Id}).", $"{Shown.Fixed(13.8 * factor, 1)} to {Shown.Fixed(14.5 * factor, 1)} V", true)],
            new("Under load, warm: every bolted joint and the connectors by hand. Switch off before you touch.", "hand-warm, 20 to 30 K over the air at most", true),
            new("Check at full steering lock, with the engine rocking and the bonnet closed.", "nothing rubs, nothing pulls", false),
            new("Keep the readings with the vehicle: a joint that loses more next year is the fault.", "", false),
        ];
        flow.Heading("AFTER THE LAST FUSE", 30);
        flow.Table(Steps(flow, steps));
        flow.SignOff("Commissioned by", "date", "place", "ambient °C");
    }

    private static TextTable<Step> Steps(PageFlow flow, ImmutableArray<Step> steps) => new(
        steps, flow.Area,
        new TextColumn<Step>("what", s => s.What) { LeastMm = 60 },
        new TextColumn<Step>("good", s => s.Good) { LeastMm = 40, Style = TextStyle.Bold },
        TextColumn<Step>.Box("reading", 22, s => s.Reads),
        TextColumn<Step>.Tick("pass"))
    { LeastRowMm = 7 };

    private static string FuseWords(Plan plan, string fuse)
    {
        if (plan.Fuses.FirstOrDefault(f => f.Id == fuse) is not { } known)
        {
            return "Without a fuse";
        }

        return $"Fuse {known.Id}, {Shown.Number(known.RatingA, 1)} A";
    }

    private static string Lamp(PoweredRow row, LimitedPower? limited, double lampA) =>
        limited is null ? Shown.Unknown : row.Fuse.Length == 0 ? "no lamp" : limited.CurrentA < DarkBelow * lampA ? "dark" : limited.CurrentA < BrightFrom * lampA ? "dim" : "bright";

    private sealed record Step(string What, string Good, bool Reads);
}
