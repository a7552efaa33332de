using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BenchTests;

/// <summary>The bench test: continuity of every wire in milliohms, isolation of every net in the fewest tests, readings under power; what a failure means; sign-off.</summary>
public static class BenchTestSheets
{
    /// <summary>As many A4 (or Letter) pages as the wires need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        _ => new(SheetKinds.BenchTest, "BENCH TEST", "bench test")
        {
            Aside = "before the final wrap, and once more after it",
            Caution = "Harness on the bench, battery disconnected. Modules, lamps, gauges and diodes unplugged before any insulation test: 500 V is a shock hazard and kills electronics. Never insulation-test in a vehicle with a battery or fuel vapour.",
        },
        (flow, shown) =>
        {
            Continuity(flow, shown);
            Isolation(flow, shown);
            Powered(flow, shown);
            flow.SignOff("Continuity by", "isolation by", "powered by", "date", "meter");
        });

    private static void Continuity(PageFlow flow, Plan plan)
    {
        flow.Heading("1 CONTINUITY", 40);
        flow.Paragraph($"Nothing powered. Expected: copper at 20 °C and {Shown.Number(plan.Harness.Assumed.ContactOhm * 1000, 1)} mΩ a contact, less for large terminals and rings. A usual meter cannot resolve this: zero its leads, or pass a 21 W lamp's current through the wire and read the drop (last limit). A beeper proves the path only. Move every connector while you read.");
        flow.Paragraph("Open: terminal not seated, wrong cavity, or crimp on insulation. Answers in another cavity: two cavities swapped. Too high: strands lost or a bad crimp.", TextStyle.Bold);
        flow.Gap(2);
        flow.Table(new TextTable<ContinuityRow>(
            ContinuityRow.Of(plan), flow.Area,
            new TextColumn<ContinuityRow>("", r => Shown.Number(r.Step)) { Right = true },
            new TextColumn<ContinuityRow>("wire", r => r.Wire.Id) { Style = TextStyle.Bold, Swatch = r => r.Wire.Colour, Tag = r => new() { For = r.Wire.Id } },
            new TextColumn<ContinuityRow>("probe A", r => Words(r.ProbeA)) { LeastMm = 26 },
            new TextColumn<ContinuityRow>("probe B", r => Words(r.ProbeB)) { LeastMm = 26 },
            new TextColumn<ContinuityRow>("mΩ", r => Shown.Fixed(r.ExpectedMilliohm, 1)) { Right = true },
            new TextColumn<ContinuityRow>("most mΩ", r => Shown.Number(r.LimitMilliohm)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<ContinuityRow>("lamp, most mV", r => Shown.Number(r.LampMillivolt)) { Right = true },
            TextColumn<ContinuityRow>.Box("reading", 20)));
    }

    private static void Isolation(PageFlow flow, Plan plan)
    {
        var nets = IsolationCode.Of(plan);
        var tests = IsolationCode.Tests(nets.Length);
        flow.Heading("2 ISOLATION", 60);
        if (tests == 0)
        {
            flow.Paragraph("Only one net: nothing to part.");
            return;
        }

        flow.Paragraph($"{Shown.Count(nets.Length, "net")}, each from every other, in {Shown.Count(tests, "test")}: in each test tie all nets marked 1 to one lead and all marked 2, with every connector shell, to the other. At least 100 MΩ at 500 V DC on a clean new harness (common practice, no source); without an insulation tester: over the 20 MΩ range. In the vehicle, loads unplugged: at least 1 MΩ.");
        flow.Paragraph("A test that fails: a pinch, a strand across, or a wire in a neighbour's cavity. Halve the nets on one lead until the pair is found; neighbours in a connector first.", TextStyle.Bold);
        flow.Gap(2);
        flow.Table(new TextTable<int>(
            [.. Enumerable.Range(1, tests)], flow.Area with { Width = 100 },
            new TextColumn<int>("test", t => Shown.Number(t)) { Style = TextStyle.Bold },
            new TextColumn<int>("least", _ => "100 MΩ or over range"),
            TextColumn<int>.Box("reading", 28),
            TextColumn<int>.Tick("pass")));
        flow.Gap(3);
        ImmutableArray<TextColumn<IsolationNet>> columns =
        [
            new("net", n => n.Net) { LeastMm = 30 },
            new("clip on at", n => Words(n.Clip)) { LeastMm = 30, Swatch = n => n.Wire.Colour },
            .. Enumerable.Range(0, tests).Select(k => new TextColumn<IsolationNet>(Shown.Number(k + 1), n => Shown.Number(n.Leads[k])) { Style = TextStyle.Bold }),
        ];
        flow.Table(new TextTable<IsolationNet>(nets, flow.Area, columns));
    }

    private static void Powered(PageFlow flow, Plan plan)
    {
        var rows = PoweredRow.Of(plan);
        if (rows.IsEmpty)
        {
            return;
        }

        flow.Heading("3 POWERED", 50);
        flow.Paragraph("Bench supply with a current limit just above the expected amperes, or a lamp in its lead; loads plugged in; one circuit at a time in the state named. Volts belong to the vehicle's own source in that state: a bench supply shifts them all by the same amount.");
        flow.Paragraph("No current: open, fuse or ground missing. Too much: pinch or wrong load, switch off at once. Volts low: a poor joint before the point. Another load moves: swapped or lost ground.", TextStyle.Bold);
        flow.Gap(2);
        flow.Table(new TextTable<PoweredRow>(
            [.. rows.Where(r => r.IsKnown)], flow.Area,
            new TextColumn<PoweredRow>("circuit", r => r.Circuit.Id) { LeastMm = 24 },
            new TextColumn<PoweredRow>("fuse", r => r.Fuse.Length == 0 ? Shown.Unknown : r.Fuse) { Style = TextStyle.Bold },
            new TextColumn<PoweredRow>("state", r => r.State ?? Shown.Unknown) { LeastMm = 18 },
            new TextColumn<PoweredRow>("A, within", r => PoweredRow.Amperes(r.CurrentA)) { Right = true, LeastMm = 26, Style = TextStyle.Bold, Under = r => r.CurrentA is null ? "" : $"{PoweredRow.Amperes(r.LeastA)}–{PoweredRow.Amperes(r.MostA)}" },
            TextColumn<PoweredRow>.Box("A read", 12),
            new TextColumn<PoweredRow>("V at", r => EndText.OfNode(r.Point)) { LeastMm = 24 },
            new TextColumn<PoweredRow>("V", r => Shown.Fixed(r.Volts, 1)) { Right = true, Style = TextStyle.Bold },
            new TextColumn<PoweredRow>("least", r => Shown.Fixed(r.LeastV, 1)) { Right = true },
            TextColumn<PoweredRow>.Box("V read", 12))
        { LeastRowMm = 6.4 });
        if (PoweredRow.Unread(rows) is { } unread)
        {
            flow.Gap(1.5);
            flow.Paragraph(unread);
        }
    }

    private static string Words(WireEnd end) => end.IsSplice ? $"{end.At}, not sleeved yet" : EndText.Words(end);
}
