using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Checking;

/// <summary>Looks the names of a rule file up: unknown rules and limits are errors with the nearest name, and every value carries the unit of its limit.</summary>
public static class RuleFileResolver
{
    private static readonly ImmutableArray<string> SeverityWords = ["error", "warning", "advice"];

    public static Outcome<RuleSettings> Resolve(RuleFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var bag = new DiagnosticBag();
        var limits = ImmutableArray.CreateBuilder<LimitSetting>();
        var severities = ImmutableArray.CreateBuilder<SeveritySetting>();
        foreach (var entry in file.Rules)
        {
            if (RuleCatalogue.Info(entry.Rule.Value) is { } info)
            {
                severities.AddRange(OfSeverity(entry, info, bag));
                limits.AddRange(entry.Limits.SelectMany(l => OfLimit(l, info, bag)));
            }
            else
            {
                bag.Error(DiagnosticCodes.UnknownName, $"there is no rule '{entry.Rule.Value}'", entry.Rule.At, NearestName.Hint(entry.Rule.Value, RuleCatalogue.Infos.Select(i => i.Id)));
            }
        }

        return new(bag.HasErrors ? null : new RuleSettings { File = file.File, Limits = limits.ToImmutable(), Severities = severities.ToImmutable() }, bag.ToSorted());
    }

    private static IEnumerable<SeveritySetting> OfSeverity(RuleEntry entry, RuleInfo info, DiagnosticBag bag)
    {
        if (entry.Severity is not { } typed)
        {
            return [];
        }

        if (SeverityWords.IndexOf(typed.Value) is >= 0 and var index)
        {
            return [new(info.Id, index switch { 0 => Severity.Error, 1 => Severity.Warning, _ => Severity.Advice })];
        }

        bag.Error(DiagnosticCodes.UnknownChoice, $"the severity of {info.Id} is '{typed.Value}'; it is one of {string.Join(", ", SeverityWords)}", typed.At, "a single finding is accepted by a waiver in the description");
        return [];
    }

    private static IEnumerable<LimitSetting> OfLimit(RuleLimitEntry entry, RuleInfo info, DiagnosticBag bag)
    {
        if (info.Limits.FirstOrDefault(l => l.Name == entry.Limit.Value) is not { } limit)
        {
            var names = info.Limits.Select(l => l.Name).ToList();
            bag.Error(DiagnosticCodes.UnknownName, $"rule {info.Id} has no limit '{entry.Limit.Value}'", entry.Limit.At,
                NearestName.Hint(entry.Limit.Value, names) ?? (names.Count == 0 ? "it has no limits" : $"it has {string.Join(", ", names.Select(n => $"'{n}'"))}"));
            return [];
        }

        if (Number(entry.Value.Value, limit.Unit) is { } value)
        {
            return [new(info.Id, limit.Name, value)];
        }

        bag.Error(DiagnosticCodes.Quantity, $"'{limit.Name}' of {info.Id} is '{entry.Value.Value}'; a number{(limit.Unit.Length == 0 ? "" : $" in {limit.Unit}")} is expected", entry.Value.At, $"as built in: {Figure.Of(limit.Value, limit.Unit)}");
        return [];
    }

    /// <summary>A number that is not negative, with the limit's unit, which may also be typed in plain letters.</summary>
    private static double? Number(string text, string unit)
    {
        string[] spellings = unit switch
        {
            "mm²" => ["mm²", "mm2"],
            "°C" => ["°C", "degC"],
            "Ω" => ["Ω", "ohm"],
            _ => [unit],
        };
        var trimmed = text.Trim();
        var number = unit.Length == 0 ? trimmed : spellings.Where(s => trimmed.EndsWith(s, StringComparison.Ordinal)).Select(s => trimmed[..^s.Length].TrimEnd()).FirstOrDefault();
        return double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }
}
