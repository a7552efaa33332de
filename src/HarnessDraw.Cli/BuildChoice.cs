using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Cli;

/// <summary>Reads 'charging=exciter,cooling=belt fan' against the options of a harness; what is left out is as usual.</summary>
internal static class BuildChoice
{
    /// <exception cref="WrongUsageException">An option or choice that does not exist, or a build that the option rules forbid.</exception>
    public static ImmutableSortedDictionary<string, string> Read(string text, Harness harness)
    {
        var build = harness.Options.ToImmutableSortedDictionary(o => o.Id, o => o.Usual, StringComparer.Ordinal);
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (part == "usual")
            {
                continue;
            }

            var (id, choice) = part.Split('=', 2, StringSplitOptions.TrimEntries) is [var a, var b] ? (a, b) : throw new WrongUsageException($"--build: '{part}' is not of the form option=choice");
            var option = harness.Options.FirstOrDefault(o => o.Id == id)
                ?? throw new WrongUsageException($"--build: the harness has no option '{id}'; it has {Listed(harness.Options.Select(o => o.Id))}");
            if (!option.Choices.Contains(choice))
            {
                throw new WrongUsageException($"--build: '{id}' has no choice '{choice}'; it has {Listed(option.Choices)}");
            }

            build = build.SetItem(id, choice);
        }

        foreach (var rule in harness.OptionRules.Where(r => build.GetValueOrDefault(r.IfOption) == r.IfChoice && build.GetValueOrDefault(r.ThenOption) == r.ThenChoice != r.Needs))
        {
            throw new WrongUsageException($"--build: {rule.IfOption}={rule.IfChoice} {(rule.Needs ? "needs" : "excludes")} {rule.ThenOption}={rule.ThenChoice}");
        }

        return build;
    }

    private static string Listed(IEnumerable<string> names) => string.Join(", ", names.Select(n => $"'{n}'")) is { Length: > 0 } all ? all : "none";
}
