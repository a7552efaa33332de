using System.Collections.Immutable;
using HarnessDraw.Diagnostics;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads the options and their rules ('single wire needs electric fan').</summary>
internal static class OptionReader
{
    private const string RulesKey = "rules";

    public static OptionSet Read(Draft draft)
    {
        var bag = draft.Bag;
        NameRules.ReportCaseOnly(draft.Root.Map("options"), "option", bag);
        ImmutableArray<Option> options = [.. draft.Blocks("options").Where(o => o.Name.Value != RulesKey).Select(o => ReadOption(o.Name, o.Map, bag))];
        ImmutableArray<OptionRule> rules = [.. (draft.Root.Map("options")?.TextNodes(RulesKey) ?? []).Select(r => ReadRule(r, options, bag)).OfType<OptionRule>()];
        if (!new OptionSpace(options, rules).CanHold(BuildCondition.Always))
        {
            bag.Error(DiagnosticCodes.NotBuildable, $"the rules leave no build at all: each of the {options.Aggregate(1L, (n, o) => n * o.Choices.Length)} combinations of {string.Join(", ", options.Select(o => o.Id))} breaks one", rules[0].At, "take out or loosen a rule");
            return new OptionSet(options, rules);
        }

        var usual = options.ToImmutableDictionary(o => o.Id, o => o.Usual, StringComparer.Ordinal);
        foreach (var rule in rules.Where(r => !OptionSet.Keeps(r, usual)))
        {
            bag.Error(DiagnosticCodes.NotBuildable, $"the usual build has '{rule.IfChoice}' and breaks the rule that it {(rule.Needs ? "needs" : "excludes")} '{rule.ThenChoice}'", rule.At, "change a 'usual' choice or the rule");
        }

        return new OptionSet(options, rules);
    }

    private static Option ReadOption(InputText name, InputMap map, DiagnosticBag bag)
    {
        var choices = ImmutableArray.CreateBuilder<string>();
        foreach (var choice in map.TextNodes("one of"))
        {
            if (choices.Contains(choice.Value))
            {
                bag.Error(DiagnosticCodes.DuplicateName, $"the option '{name.Value}' has the choice '{choice.Value}' twice", choice.At);
            }
            else
            {
                choices.Add(choice.Value);
            }
        }

        var usual = map.TextNode("usual");
        if (usual is not null && choices.Count > 0 && !choices.Contains(usual.Value))
        {
            bag.Error(DiagnosticCodes.UnknownChoice, $"the usual choice '{usual.Value}' is not one of those of '{name.Value}'", usual.At, NearestName.Hint(usual.Value, choices) ?? NameRules.Listed(choices, "choice"));
        }

        return new Option(name.Value, choices.ToImmutable(), usual?.Value ?? choices.FirstOrDefault() ?? "", name.At);
    }

    private static OptionRule? ReadRule(InputText text, ImmutableArray<Option> options, DiagnosticBag bag)
    {
        foreach (var (word, needs) in new[] { (" needs ", true), (" excludes ", false) })
        {
            var at = text.Value.IndexOf(word, StringComparison.Ordinal);
            if (at < 0)
            {
                continue;
            }

            var first = FindChoice(text.Value[..at].Trim(), text, options, bag);
            var second = FindChoice(text.Value[(at + word.Length)..].Trim(), text, options, bag);
            return first is { } f && second is { } s ? new OptionRule(f.Option, f.Choice, needs, s.Option, s.Choice, text.At) : null;
        }

        bag.Error(DiagnosticCodes.RuleText, $"the rule '{text.Value}' is not understood", text.At, "write 'CHOICE needs CHOICE' or 'CHOICE excludes CHOICE'");
        return null;
    }

    // 'electric fan', or 'cooling electric fan' where two options have the same choice
    private static (string Option, string Choice)? FindChoice(string words, InputText at, ImmutableArray<Option> options, DiagnosticBag bag)
    {
        (string Option, string Choice)[] found = [.. options.SelectMany(o => o.Choices.Where(c => c == words || $"{o.Id} {c}" == words).Select(c => (o.Id, c)))];
        if (found.Length == 1)
        {
            return found[0];
        }

        if (found.Length > 1)
        {
            bag.Error(DiagnosticCodes.RuleText, $"'{words}' is a choice of {string.Join(" and ", found.Select(f => $"'{f.Option}'"))}", at.At, $"put the option in front: '{found[0].Option} {words}'");
        }
        else
        {
            string[] all = [.. options.SelectMany(o => o.Choices)];
            bag.Error(DiagnosticCodes.UnknownChoice, $"no option has a choice '{words}'", at.At, NearestName.Hint(words, all) ?? NameRules.Listed(all, "choice"));
        }

        return null;
    }
}
