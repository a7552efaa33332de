using System.Collections.Immutable;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;
using HarnessDraw.Troubleshooting;

namespace HarnessDraw.Sheets.SymptomTables;

/// <summary>What the driver sees of every single fault: look the symptom up, read what may be wrong, likeliest first.</summary>
public static class SymptomSheets
{
    // a row taller than a page could not be set
    private const int MostParts = 10;
    private const int MostLoads = 18;
    private const int MostLoadsAlike = 6;

    /// <summary>As many A4 (or Letter) pages as the symptoms need; none where the build holds no wire.</summary>
    public static SheetResult Compose(Plan plan, ImmutableArray<Finding> findings, SheetOptions options)
    {
        var faults = new Lazy<SymptomTable>(() => SymptomTable.Of(plan, options.Build));
        return WirePages.Compose(plan, findings, options with { Build = options.Build ?? plan.Builds.FirstOrDefault() },
            _ => new(SheetKinds.Symptoms, "SYMPTOM TABLE", "symptoms")
            {
                Aside = "what is seen, and every single fault that looks so",
                Caution = "Battery disconnected before you part a connector. Never fit a larger fuse to find a fault. Verify the complaint first: work everything on the same fuse, ground and switch.",
            },
            (flow, _) =>
            {
                var table = faults.Value;
                flow.Table(new TextTable<Line>(
                    [.. table.Rows.SelectMany(Lines)], flow.Area,
                    new TextColumn<Line>("what is seen", l => l.Seen) { LeastMm = 55, Style = TextStyle.Bold },
                    new TextColumn<Line>("fuse opens", l => l.Fuses) { LeastMm = 12 },
                    new TextColumn<Line>("what may be wrong, likeliest first", l => l.Faults) { LeastMm = 100, FloorMm = 70 }));
                flow.Heading("HOW TO READ IT", 12);
                flow.Paragraph(FormattableString.Invariant($"Usual build unless the title says otherwise. One fault at a time, worked out for every state of the description: a load is dead (a lamp stays dark, a motor does not turn) under half of what it does (of a lamp: a thirtieth of its light), dim, slow or short of voltage under nine tenths. A bad joint is one of {SymptomTable.BadOhm} ohm. {table.Unseen.Length} further faults change nothing that can be seen."));
                flow.Paragraph("Where several loads are dead together, look for what they share; what works clears what it uses, at its own current. Likelihood is common practice, no source.");
            });
    }

    private static IEnumerable<Line> Lines(SymptomRow row)
    {
        var parts = row.Faults.GroupBy(f => f.Kind).Select(g => (Words: Words(g.Key), Parts: g.Select(f => f.Part).Distinct(StringComparer.Ordinal).ToList())).SelectMany(g => g.Parts.Select((p, i) => i == 0 && g.Words.Length > 0 ? $"{g.Words}: {p}" : p)).Chunk(MostParts).ToArray();
        for (var i = 0; i < parts.Length; i++)
        {
            yield return i == 0
                ? new(Seen(row.Sees) + States(row.Sees), string.Join(", ", row.Blown), string.Join("; ", parts[i]))
                : new("the same", "", string.Join("; ", parts[i]));
        }
    }

    private static string Seen(ImmutableArray<Symptom> sees)
    {
        var alike = sees.GroupBy(s => s.Load.Says(s.Seen)).ToList();
        var most = Math.Min(MostLoadsAlike, MostLoads / Math.Max(1, alike.Count));
        return alike.Count == 0 ? "nothing but the open fuse" : string.Join("; ", alike.Select(g =>
        {
            var loads = g.Select(s => s.Load.Called).Distinct(StringComparer.Ordinal).ToList();
            var more = loads.Count > most + 1 ? $" and {loads.Count - most} more" : "";
            return $"{g.Key}: {string.Join(", ", more.Length > 0 ? loads.Take(most) : loads)}{more}";
        }));
    }

    private static string States(ImmutableArray<Symptom> sees)
    {
        var states = sees.SelectMany(s => s.States).Distinct(StringComparer.Ordinal).ToList();
        return states.Count == 0 || sees.Any(s => s.States.IsEmpty) ? "" : $" (in {string.Join(", ", states)})";
    }

    private static string Words(FaultKind kind) => kind switch
    {
        FaultKind.Open => "open",
        FaultKind.HighResistance => "bad joint",
        FaultKind.ShortToGround => "short to ground",
        FaultKind.ShortToSupply => "touches a live wire",
        FaultKind.StuckClosed => "does not open",
        FaultKind.ShortedInside => "short inside",
        FaultKind.Swapped => "swapped",
        FaultKind.WrongOption => "wrongly built",
        _ => "run down",
    };

    private sealed record Line(string Seen, string Fuses, string Faults);
}
