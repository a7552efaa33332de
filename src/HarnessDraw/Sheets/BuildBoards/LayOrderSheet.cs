using System.Collections.Immutable;
using HarnessDraw.Fabrication;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>The lay order beside the board: every wire once, heaviest and longest first, with the pegs it passes; then what is wrapped how far.</summary>
public static class LayOrderSheet
{
    /// <summary>As many A4 (or Letter) pages as the wires need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options) => WirePages.Compose(plan, findings, options,
        _ => new(SheetKinds.LayOrder, "LAY ORDER", "lay order")
        {
            Aside = "for the build board: heaviest and longest first",
            Caution = "Harness off the vehicle, battery disconnected there. Check colour and id, not colour alone. Sleeves, boots and seals on before crimping. No tape over labels.",
        },
        (flow, shown) =>
        {
            var segments = shown.Tree.Segments.GroupBy(s => s.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
            ImmutableArray<(Wire Wire, int Number)> wires = [.. shown.Wires.OrderByDescending(w => w.AreaMm2 >= 4).ThenByDescending(w => w.CutLengthMm ?? double.MaxValue).ThenBy(w => w.Id, StringComparer.Ordinal).Select((w, i) => (w, i + 1))];
            ImmutableArray<TextColumn<(Wire Wire, int Number)>> columns =
            [
                new TextColumn<(Wire Wire, int Number)>("", w => Shown.Number(w.Number)) { Right = true },
                new TextColumn<(Wire Wire, int Number)>("wire", w => w.Wire.Id) { Style = TextStyle.Bold, Swatch = w => w.Wire.Colour, Tag = w => new() { For = w.Wire.Id } },
                new TextColumn<(Wire Wire, int Number)>("from", w => EndText.Words(w.Wire.From)) { FloorMm = 24 },
                new TextColumn<(Wire Wire, int Number)>("over the pegs", w => Way(w.Wire, segments)) { FloorMm = 50 },
                new TextColumn<(Wire Wire, int Number)>("to", w => EndText.Words(w.Wire.To)) { FloorMm = 24 },
                .. Cut(shown, options.Units),
                TextColumn<(Wire Wire, int Number)>.Tick("laid"),
            ];
            flow.Table(new TextTable<(Wire Wire, int Number)>(wires, flow.Area, columns));
            flow.Heading("WHICH WIRES GO ROUND WHICH PEG", 20);
            flow.Table(new TextTable<PegTurn>(
                PegTurn.Of(shown), flow.Area,
                new TextColumn<PegTurn>("from", t => t.From) { LeastMm = 30 },
                new TextColumn<PegTurn>("to", t => t.To) { LeastMm = 30 },
                new TextColumn<PegTurn>("", t => Shown.Number(t.Wires.Length)) { Right = true, Style = TextStyle.Bold },
                new TextColumn<PegTurn>("wires", t => string.Join(", ", t.Wires)) { FloorMm = 60 })
            { GroupOf = t => t.Peg });
            flow.Heading("TAPE AND SLEEVE RUNS, FROM THE FAR ENDS IN", 20);
            flow.Table(new TextTable<Segment>(
                [.. shown.Tree.Segments.Where(s => !s.Wires.IsEmpty)], flow.Area,
                new TextColumn<Segment>("from", s => s.From) { LeastMm = 30 },
                new TextColumn<Segment>("to", s => s.To) { LeastMm = 30 },
                new TextColumn<Segment>("length", s => s.LengthMm is > 0 and var mm ? LengthWords.Of(mm, options.Units) + (s.Estimated ? " E" : "") : "____") { Right = true, Style = TextStyle.Bold },
                new TextColumn<Segment>("Ø mm", s => Shown.Number(s.DiameterMm, 1)) { Right = true },
                new TextColumn<Segment>("covering", s => s.Covering is { } id ? shown.Harness.Catalogue.Coverings.FirstOrDefault(c => c.Id == id)?.Title ?? id : "none given") { LeastMm = 40 },
                TextColumn<Segment>.Tick("done")));
            flow.Paragraph("Tie each side of every breakout before you wrap. Breakouts ±5 mm, ends +10 −0 mm (common practice, no source). Labels: within 75 mm of each end, clear of tape.");
        });

    private static IEnumerable<TextColumn<(Wire Wire, int Number)>> Cut(Plan plan, UnitsShown units)
    {
        if (units != UnitsShown.Inch)
        {
            yield return new("cut mm", w => Shown.Number(w.Wire.CutLengthMm)) { Right = true, Style = TextStyle.Bold };
        }

        if (units != UnitsShown.Metric)
        {
            yield return new(units == UnitsShown.Inch ? "cut in" : "in", w => CutRows.ExactMm(plan, w.Wire) is { } mm ? Shown.Number(InchLength.RoundedUp(mm), 2) : Shown.Unknown) { Right = true };
        }
    }

    private static string Way(Wire wire, Dictionary<string, Segment> segments)
    {
        var ways = wire.Segments.Where(segments.ContainsKey).Select(s => segments[s]).ToList();
        var places = ways.SelectMany(s => new[] { s.From, s.To }).GroupBy(p => p, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key).ToHashSet(StringComparer.Ordinal);
        var passed = new List<string>();
        for (var i = 0; i < ways.Count - 1; i++)
        {
            passed.Add(ways[i].From == ways[i + 1].From || ways[i].From == ways[i + 1].To ? ways[i].From : ways[i].To);
        }

        return passed.Count == 0 ? Shown.Unknown : string.Join(", ", passed.Where(places.Contains));
    }
}
