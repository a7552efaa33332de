using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Rules about what is printed: they look at the sheets, not at the plan.</summary>
public static class SheetRules
{
    private const double TouchMm = 0.05;
    private const double BarToleranceMm = 0.05;
    private const double ArmM = 0.6;
    private const double FarM = 1.5;

    internal static readonly RuleInfo TextSmall = new("text-too-small", "Lettering below what can be read", Severity.Warning, Consequence.Untidy, "NUREG-0700 as quoted: 16 minutes of arc",
        "What cannot be read at arm's length is not on the sheet.")
    {
        Limits = [new("capitals", 2.5, "mm", "design rule of this program; 2.8 mm is 16 minutes of arc at 0.6 m"), new("capitals at 1.5 m", 7, "mm", "NUREG-0700 as quoted: 16 minutes of arc at 1.5 m"), new("capitals on labels", 2, "mm", "common practice, no source: type on a wire")],
    };

    internal static readonly RuleInfo Overlap = new("labels-overlap", "Lettering over lettering or beyond the paper", Severity.Warning, Consequence.Untidy, "common practice, no source",
        "Two words on one spot are no word.");

    internal static readonly RuleInfo PaleLine = new("line-too-pale", "Pale wire drawn without an outline", Severity.Warning, Consequence.Untidy, "WCAG 2, 1.4.11: 3 to 1 for what is not text",
        "A white or yellow wire on white paper is overlooked.")
    {
        Limits = [new("contrast", 3, "to 1", "WCAG 2, 1.4.11")],
    };

    internal static readonly RuleInfo LookAlike = new("neighbours-look-alike", "Wires side by side that a colour-blind eye takes for one another", Severity.Advice, Consequence.Untidy, "Machado, Oliveira and Fernandes 2009 (simulation, severity 1); CIE 1976 distance",
        "Who cannot tell two lanes apart by colour follows the wrong one to the wrong load.")
    {
        Limits = [new("distance", ColourVision.NeighbourDistance, "of CIE 1976", "common practice, no source")],
    };

    internal static readonly RuleInfo NoBar = new("check-bar-missing", "Sheet at 1:1 without its check bars", Severity.Error, Consequence.Damage, "common practice, no source",
        "Printers fit to the page: only a bar on the print itself tells whether it is true, and it tells it for one direction only.");

    internal static readonly RuleInfo NoCaution = new("caution-missing", "Sheet without its caution", Severity.Error, Consequence.Fire, "common practice, no source",
        "The caution stands where the hand is, on every sheet.");

    internal static readonly RuleInfo NotMarked = new("not-for-build-missing", "Sheet of a plan with errors that is not marked", Severity.Error, Consequence.Fire, "common practice, no source",
        "Who finds the sheet in a drawer must see that it is not to be built from.");

    internal static readonly RuleInfo LettersMissing = new("letters-missing", "Letters that no face has", Severity.Warning, Consequence.Untidy, "common practice, no source",
        "They print as empty boxes: a name that cannot be read is no name.");

    // what the hand that holds this sheet must be told beside 'battery disconnected'
    private static readonly ImmutableSortedDictionary<string, ImmutableArray<string>> Cautions = new Dictionary<string, ImmutableArray<string>>
    {
        ["opening-template"] = ["eye protection", "behind the panel"],
        ["build-board"] = ["colour and id", "no solder"],
        ["lay-order"] = ["colour and id"],
        ["cut-list"] = ["colour and id"],
        ["connectors"] = ["which side"],
        ["bench-test"] = ["500 V", "unplugged"],
        ["commissioning"] = ["extinguisher", "all fuses out"],
        ["installation"] = ["not fused", "exhaust"],
        ["power"] = ["not fused", "polarity"],
        ["fuse-card"] = ["never fit a larger"],
        ["trace"] = ["pierce"],
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    private static readonly ImmutableArray<string> Bars = ["check bar 100 mm, level", "check bar 4 in, level", "check bar 100 mm, upright", "check bar 4 in, upright"];

    internal static ImmutableArray<RuleInfo> Infos => [TextSmall, LettersMissing, Overlap, PaleLine, LookAlike, NoBar, NoCaution, NotMarked];

    public static ImmutableArray<Finding> Check(Plan plan, IEnumerable<Sheet> sheets, FaceSet? faces = null, RuleSettings? settings = null, bool hasErrors = false)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sheets);
        var context = new RuleContext(plan, settings ?? RuleSettings.BuiltIn);
        ImmutableArray<Sheet> all = [.. sheets];
        var found = new ImmutableArray<Finding>[all.Length];
        // a sheet is looked at by itself: side by side, each fills its own place
        SideBySide.For(all.Length, s => found[s] = Of(context, all[s], hasErrors));
        return FindingOrder.Sort(found.SelectMany(f => f).Concat(Missing(context, all, faces)));
    }

    // once for all sheets: the same names stand on most of them
    private static IEnumerable<Finding> Missing(RuleContext context, ImmutableArray<Sheet> sheets, FaceSet? faces)
    {
        var missing = new SortedDictionary<string, string>(StringComparer.Ordinal);
        var texts = new List<string>();
        foreach (var sheet in sheets)
        {
            AddTexts(sheet.Items, texts);
        }

        foreach (var text in texts.Distinct(StringComparer.Ordinal))
        {
            foreach (var letter in Glyphs.Missing(text, faces))
            {
                missing.TryAdd(letter, text);
            }
        }

        if (missing.Count > 0)
        {
            const int Named = 8;
            var letters = Wording.List(missing.Keys.Take(Named).Select(l => $"{l} ({Glyphs.CodePoint(l)})"));
            yield return context.Found(LettersMissing, $"{Wording.Count(missing.Count, "letter")} of the names can be drawn with none of the faces: {letters}{(missing.Count > Named ? " and more" : "")}, first in '{missing.First().Value}'.", "Name a TrueType file that has them: 'font:' under 'sheet-title', or --font FILE.", []);
        }
    }

    /// <summary>Every piece of a sheet on small paper has its bars; its words are those of the sheet.</summary>
    public static ImmutableArray<Finding> CheckTiles(Plan plan, IEnumerable<Sheet> tiles)
    {
        ArgumentNullException.ThrowIfNull(tiles);
        var context = new RuleContext(plan, RuleSettings.BuiltIn);
        return FindingOrder.Sort(tiles.SelectMany(t => TrueSize(context, $"{t.Name} {t.Number}", PrintedItem.Of(t.Items))));
    }

    private static ImmutableArray<Finding> Of(RuleContext context, Sheet sheet, bool hasErrors)
    {
        var items = PrintedItem.Of(sheet.Items);
        var texts = items.FindAll(i => i.Item is TextItem t && !string.IsNullOrWhiteSpace(t.Text));
        var name = sheet.Number is { } number ? $"{sheet.Name} {number}" : sheet.Name;
        return [.. Small(context, sheet, name, texts), .. Overlaps(context, sheet, name, texts), .. Pale(context, name, items), .. LookAlikes(context, sheet, name, items), .. IsMeasuredFrom(sheet, items) ? TrueSize(context, name, items) : [], .. Words(context, sheet, name, texts, hasErrors)];
    }

    private static IEnumerable<Finding> Small(RuleContext context, Sheet sheet, string name, List<PrintedItem> texts)
    {
        foreach (var distance in texts.GroupBy(t => Text(t).ReadFromM).OrderBy(g => g.Key))
        {
            var far = distance.Key > ArmM;
            // what is read from afar is held to its angle
            var least = far ? context.Limit(TextSmall, "capitals at 1.5 m") * distance.Key / FarM : context.Limit(TextSmall, sheet.Name.Contains("label", StringComparison.Ordinal) ? "capitals on labels" : "capitals");
            var small = distance.Select(t => (Text(t).Text, CapMm: Text(t).CapHeightMm * t.Scale)).Where(t => t.CapMm < least - 1e-6).OrderBy(t => t.CapMm).ThenBy(t => t.Text, StringComparer.Ordinal).ToList();
            if (small.Count > 0)
            {
                var from = far ? $" to be read from {Figure.Of(distance.Key, "m")}" : "";
                yield return context.Found(TextSmall, $"{name} on {sheet.Paper.Name}: {Wording.Count(small.Count, "text")}{from} under {Figure.Of(least, "mm")} capitals, down to {Figure.Of(small[0].CapMm, "mm")} ('{small[0].Text}').", "Use larger paper.", [name]);
            }
        }
    }

    private static IEnumerable<Finding> Overlaps(RuleContext context, Sheet sheet, string name, List<PrintedItem> texts)
    {
        var paper = new Box(0, 0, sheet.Paper.WidthMm, sheet.Paper.HeightMm);
        if (texts.Find(t => t.Box.X < -TouchMm || t.Box.Y < -TouchMm || t.Box.Right > paper.Right + TouchMm || t.Box.Bottom > paper.Bottom + TouchMm) is { } beyond)
        {
            yield return context.Found(Overlap, $"{name} on {sheet.Paper.Name}: '{Text(beyond).Text}' reaches beyond the paper.", "Use larger paper.", [name]);
        }

        var pairs = 0;
        PrintedItem? first = null, second = null;
        var sorted = texts.OrderBy(t => t.Box.X).ToList();
        for (var i = 0; i < sorted.Count; i++)
        {
            var box = sorted[i].Box.Grow(-TouchMm);
            for (var j = i + 1; j < sorted.Count && sorted[j].Box.X < box.Right; j++)
            {
                if (box.Overlaps(sorted[j].Box.Grow(-TouchMm)))
                {
                    (first, second) = pairs++ == 0 ? (sorted[i], sorted[j]) : (first, second);
                }
            }
        }

        if (pairs > 0)
        {
            yield return context.Found(Overlap, $"{name} on {sheet.Paper.Name}: {Wording.Count(pairs, "pair")} of texts over each other, first '{Text(first!).Text}' and '{Text(second!).Text}'.", "Use larger paper, or shorter names.", [name]);
        }
    }

    // the outline lies under the lane along the same line and is wider
    private static IEnumerable<Finding> Pale(RuleContext context, string name, List<PrintedItem> items)
    {
        var least = context.Limit(PaleLine, "contrast");
        var lanes = items.FindAll(i => i.Item is PathItem { Role: ItemRole.Lane or ItemRole.LaneDress, Stroke: not null }).ConvertAll(i => (PathItem)i.Item);
        var pale = lanes.FindAll(p => p.Role == ItemRole.Lane && Contrast.Ratio(p.Stroke!.Colour, Ink.Paper) < least);
        if (pale.Count == 0)
        {
            yield break;
        }

        var dressed = lanes.FindAll(p => p.Role == ItemRole.LaneDress && Contrast.Ratio(p.Stroke!.Colour, Ink.Paper) >= least).ToLookup(p => p.Outline);
        var bare = pale.FindAll(p => !dressed[p.Outline].Any(d => d.Stroke!.WidthMm > p.Stroke!.WidthMm));
        if (bare.Count > 0)
        {
            yield return context.Found(PaleLine, $"{name}: {Wording.Count(bare.Count, "wire")} with less than {Figure.Of(least, "to 1")} against the paper and no outline, first {bare[0].Tag?.Wire}.", "Draw a dark outline.", [name]);
        }
    }

    // wires of one colour are told apart by no eye: their ids are, and so is what the planner gave them
    private static IEnumerable<Finding> LookAlikes(RuleContext context, Sheet sheet, string name, List<PrintedItem> items)
    {
        if (sheet.Name != "wall-chart")
        {
            yield break;
        }

        const int Named = 4;
        var least = context.Limit(LookAlike, "distance");
        var colours = context.Plan.Wires.ToDictionary(w => w.Id, w => w.Colour, StringComparer.Ordinal);
        var alike = LaneNeighbours.Of(items).Keys.Where(p => colours.TryGetValue(p.A, out var a) && colours.TryGetValue(p.B, out var b) && a != b)
            .Select(p => (p.A, p.B, Apart: ColourVision.LeastDistance(WireColour.Parse(colours[p.A]), WireColour.Parse(colours[p.B])))).Where(p => p.Apart < least)
            .OrderBy(p => p.Apart).ThenBy(p => p.A, StringComparer.Ordinal).ThenBy(p => p.B, StringComparer.Ordinal).ToList();
        if (alike.Count > 0)
        {
            var named = Wording.List(alike.Take(Named).Select(p => $"{p.A} {colours[p.A]} beside {p.B} {colours[p.B]} ({Figure.Of(p.Apart, "")})"));
            yield return context.Found(LookAlike, $"{name}: {Wording.Count(alike.Count, "pair")} of wires side by side nearer than {Figure.Of(least, "")} to a colour-blind eye, {named}{(alike.Count > Named ? " and more" : "")}.", "Read both ids at both ends, print with --ink black, or give one of each pair another colour.", [name]);
        }
    }

    // a run of the board or a cut line
    private static bool IsMeasuredFrom(Sheet sheet, List<PrintedItem> items) => sheet.Name == "build-board" || items.Exists(i => i.Item.Tag?.Title?.StartsWith("cut line", StringComparison.Ordinal) == true);

    // four bars, as long as they say
    private static IEnumerable<Finding> TrueSize(RuleContext context, string name, List<PrintedItem> items)
    {
        var paths = items.FindAll(i => i.Item is PathItem);
        foreach (var bar in Bars)
        {
            var want = bar.Contains("100 mm", StringComparison.Ordinal) ? 100 : 101.6;
            var drawn = paths.Find(p => p.Item.Tag?.Title == bar);
            var mm = drawn is null ? 0 : Math.Max(drawn.Box.Width, drawn.Box.Height) - ((((PathItem)drawn.Item).Stroke?.WidthMm ?? 0) * drawn.Scale);
            if (drawn is null || Math.Abs(mm - want) > BarToleranceMm)
            {
                yield return context.Found(NoBar, $"{name} is to be measured from and {(drawn is null ? $"has no {bar}" : $"its {bar} is {Figure.Of(mm, "mm")} long")}.", "Print the bars in both directions; without them do not cut or build from the sheet.", [name]);
            }
        }
    }

    private static IEnumerable<Finding> Words(RuleContext context, Sheet sheet, string name, List<PrintedItem> texts, bool hasErrors)
    {
        var words = texts.ConvertAll(t => Text(t).Text);
        if (!words.Exists(t => t.Contains("battery", StringComparison.OrdinalIgnoreCase) && (t.Contains("disconnect", StringComparison.OrdinalIgnoreCase) || t.Contains("off", StringComparison.OrdinalIgnoreCase))))
        {
            yield return context.Found(NoCaution, $"{name} does not say that the battery is disconnected while you work.", "Print the caution in the frame.", [name]);
        }

        // broken lines of one caution are read as one
        var all = string.Join(' ', words);
        foreach (var missing in Cautions.GetValueOrDefault(sheet.Name, []).Where(c => !all.Contains(c, StringComparison.OrdinalIgnoreCase)))
        {
            yield return context.Found(NoCaution, $"{name} lacks its caution '{missing}'.", "Print the caution in the frame.", [name]);
        }

        if (hasErrors && !words.Exists(t => t.Contains("NOT FOR BUILD", StringComparison.OrdinalIgnoreCase)))
        {
            yield return context.Found(NotMarked, $"The plan has errors and {name} is not marked NOT FOR BUILD.", "Mark the sheet.", [name]);
        }
    }

    // texts with letters beyond ASCII, in the order in which they stand
    private static void AddTexts(ImmutableArray<Item> items, List<string> texts)
    {
        foreach (var item in items)
        {
            if (item is GroupItem group)
            {
                AddTexts(group.Items, texts);
            }
            else if (item is TextItem { Text: var text } && !Ascii.IsValid(text))
            {
                texts.Add(text);
            }
        }
    }

    private static TextItem Text(PrintedItem item) => (TextItem)item.Item;
}
