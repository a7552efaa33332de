using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Identity;

internal sealed class IdNotSpreadsheetSafe : IDesignRule
{
    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];

    public RuleInfo Info { get; } = new("id-not-spreadsheet-safe", "Wire id that a spreadsheet changes", Severity.Warning, Consequence.DoesNotWork, "workshop practice, no standard",
        "A spreadsheet turns such ids into numbers or dates: label and cut list no longer agree.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var unsafeIds = context.Plan.Wires.Where(w => !IsSafe(w.Id)).ToList();
        return unsafeIds.Count switch
        {
            0 => [],
            <= 3 => unsafeIds.Select(w => context.Found(Info, $"'{w.Id}' {Becomes(w.Id)}.", $"Use {Better(w.Id)}.", [w.Id], w.Builds)),
            _ => [context.Found(Info, $"{unsafeIds.Count} wire ids are not safe in a spreadsheet or a label printer: {Wording.List(unsafeIds.Select(w => w.Id))}.", "Use one to three capitals, one to four digits: E05, W705.", unsafeIds.Select(w => w.Id))],
        };
    }

    /// <summary>One to three capitals, one to four digits, perhaps a capital; and not a month with a day. Up to five digits alone, the first no nought: a number is shown as it was typed.</summary>
    internal static bool IsSafe(string id)
    {
        if (id.Length is > 0 and <= 5 && id.All(char.IsAsciiDigit))
        {
            return id[0] != '0';
        }

        var letters = id.TakeWhile(char.IsAsciiLetterUpper).Count();
        var digits = id.Skip(letters).TakeWhile(char.IsAsciiDigit).Count();
        var rest = id[(letters + digits)..];
        return letters is >= 1 and <= 3 && digits is >= 1 and <= 4 && (rest.Length == 0 || (rest.Length == 1 && char.IsAsciiLetterUpper(rest[0]))) && !Months.Contains(id[..letters]);
    }

    private static string Becomes(string id) => id switch
    {
        _ when id.Length > 0 && id[0] is '=' or '+' or '-' or '@' => "will be read as a formula by a spreadsheet",
        _ when double.TryParse(id, out _) => "will turn into a number in a spreadsheet",
        _ when Months.Any(m => id.StartsWith(m, StringComparison.OrdinalIgnoreCase)) => "will turn into a date in a spreadsheet",
        _ => "is not a short id of capitals and digits: label printers and spreadsheets change it",
    };

    private static string Better(string id)
    {
        var digits = string.Concat(id.Where(char.IsAsciiDigit).Take(4));
        return digits.Length == 0 ? "W01, W02 ..." : $"W{digits}";
    }
}
