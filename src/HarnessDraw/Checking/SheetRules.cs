using System.Collections.Immutable;
using System.Text;
using HarnessDraw.Diagnostics;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Rules about what is printed: they look at the sheets, not at the plan.</summary>
public static class SheetRules
{
    internal static readonly RuleInfo TextSmall = new("text-too-small", "Lettering below what can be read", Severity.Warning, Consequence.Untidy, "NUREG-0700 as quoted: 16 minutes of arc",
        "What cannot be read at arm's length is not on the sheet.")
    {
        Limits = [new("capitals", 2.5, "mm", "design rule of this program; 2.8 mm is 16 minutes of arc at 0.6 m"), new("capitals on labels", 2, "mm", "common practice, no source: type on a wire")],
    };

    internal static readonly RuleInfo NoCaution = new("caution-missing", "Sheet without its caution", Severity.Error, Consequence.Fire, "common practice, no source",
        "The caution stands where the hand is, on every sheet.");

    internal static readonly RuleInfo NotMarked = new("not-for-build-missing", "Sheet of a plan with errors that is not marked", Severity.Error, Consequence.Fire, "common practice, no source",
        "Who finds the sheet in a drawer must see that it is not to be built from.");

    internal static readonly RuleInfo LettersMissing = new("letters-missing", "Letters that no face has", Severity.Warning, Consequence.Untidy, "common practice, no source",
        "They print as empty boxes: a name that cannot be read is no name.");

    public static ImmutableArray<Finding> Check(Plan plan, IEnumerable<Sheet> sheets, FaceSet? faces = null, RuleSettings? settings = null, bool hasErrors = false)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sheets);
        var context = new RuleContext(plan, settings ?? RuleSettings.BuiltIn);
        ImmutableArray<Sheet> all = [.. sheets];
        return FindingOrder.Sort(all.SelectMany(s => Of(context, s, hasErrors)).Concat(Missing(context, all, faces)));
    }

    // once for all sheets: the same names stand on most of them
    private static IEnumerable<Finding> Missing(RuleContext context, ImmutableArray<Sheet> sheets, FaceSet? faces)
    {
        var missing = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var text in sheets.SelectMany(s => s.Items).SelectMany(i => Texts(i, 1)).Select(t => t.Text).Where(t => !Ascii.IsValid(t)).Distinct(StringComparer.Ordinal))
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

    private static IEnumerable<Finding> Of(RuleContext context, Sheet sheet, bool hasErrors)
    {
        var texts = sheet.Items.SelectMany(i => Texts(i, 1)).ToList();
        var name = sheet.Number is { } number ? $"{sheet.Name} {number}" : sheet.Name;
        var least = context.Limit(TextSmall, sheet.Name.Contains("label", StringComparison.Ordinal) ? "capitals on labels" : "capitals");
        var small = texts.Where(t => t.CapMm < least - 1e-6 && !string.IsNullOrWhiteSpace(t.Text)).OrderBy(t => t.CapMm).ThenBy(t => t.Text, StringComparer.Ordinal).ToList();
        if (small.Count > 0)
        {
            yield return context.Found(TextSmall, $"{name} on {sheet.Paper.Name}: {Wording.Count(small.Count, "text")} under {Figure.Of(least, "mm")} capitals, down to {Figure.Of(small[0].CapMm, "mm")} ('{small[0].Text}').", "Use larger paper.", [name]);
        }

        if (!texts.Any(t => t.Text.Contains("battery", StringComparison.OrdinalIgnoreCase) && (t.Text.Contains("disconnect", StringComparison.OrdinalIgnoreCase) || t.Text.Contains("off", StringComparison.OrdinalIgnoreCase))))
        {
            yield return context.Found(NoCaution, $"{name} does not say that the battery is disconnected while you work.", "Print the caution in the frame.", [name]);
        }

        if (hasErrors && !texts.Any(t => t.Text.Contains("NOT FOR BUILD", StringComparison.OrdinalIgnoreCase)))
        {
            yield return context.Found(NotMarked, $"The plan has errors and {name} is not marked NOT FOR BUILD.", "Mark the sheet.", [name]);
        }
    }

    private static IEnumerable<(string Text, double CapMm)> Texts(Item item, double scale) => item switch
    {
        TextItem text => [(text.Text, text.CapHeightMm * scale)],
        GroupItem group => group.Items.SelectMany(i => Texts(i, scale * group.Scale)),
        _ => [],
    };
}
