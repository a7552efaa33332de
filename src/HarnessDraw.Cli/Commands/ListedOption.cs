using System.Collections.Immutable;
using System.CommandLine;
using HarnessDraw.Diagnostics;

namespace HarnessDraw.Cli.Commands;

/// <summary>Options that take one or several of a few words, with a comma between ('svg,pdf').</summary>
internal static class ListedOption
{
    public static Option<ImmutableArray<string>> Several(string name, string description, ImmutableArray<string> allowed, ImmutableArray<string> usual, string? all = null) =>
        new(name)
        {
            Description = $"{description}: {string.Join(", ", allowed)}{(all is null ? "" : $", or {all}")}",
            HelpName = "LIST",
            AllowMultipleArgumentsPerToken = false,
            Arity = ArgumentArity.OneOrMore,
            DefaultValueFactory = _ => usual,
            CustomParser = result =>
            {
                var words = result.Tokens.SelectMany(t => t.Value.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)).ToList();
                if (words.Count == 0)
                {
                    result.AddError($"{name} needs one of {string.Join(", ", allowed)}");
                }

                if (all is not null && words.Contains(all))
                {
                    return allowed;
                }

                foreach (var word in words.Where(w => !allowed.Contains(w)))
                {
                    result.AddError(NotKnown(name, word, all is null ? allowed : allowed.Add(all)));
                }

                return [.. allowed.Where(words.Contains)];
            },
        };

    private static string NotKnown(string name, string word, ImmutableArray<string> allowed) =>
        $"{name}: '{word}' is not known; {(Near(word, allowed) is { } hint ? $"{hint} Expected" : "expected")} {string.Join(", ", allowed)}";

    // '12 V' where the unit goes without saying
    private static string? Near(string word, ImmutableArray<string> allowed) =>
        allowed.FirstOrDefault(a => word.StartsWith(a, StringComparison.Ordinal) && word[a.Length..].Trim() == "V") is { } alone ? $"write '{alone}' without the unit." : NearestName.Hint(word, allowed);

    /// <summary>One of a few words, or nothing.</summary>
    public static Option<string?> Choice(string name, string description, ImmutableArray<string> allowed)
    {
        var option = new Option<string?>(name) { Description = $"{description}: {string.Join(", ", allowed)}", HelpName = "WORD" };
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => !allowed.Contains(t.Value)))
            {
                result.AddError(NotKnown(name, token.Value, allowed));
            }
        });
        return option;
    }

    public static Option<string> One(string name, string description, ImmutableArray<string> allowed, string usual)
    {
        var option = new Option<string>(name) { Description = $"{description}: {string.Join(", ", allowed)}", HelpName = "WORD", DefaultValueFactory = _ => usual };
        option.Validators.Add(result =>
        {
            foreach (var token in result.Tokens.Where(t => !allowed.Contains(t.Value)))
            {
                result.AddError(NotKnown(name, token.Value, allowed));
            }
        });
        return option;
    }
}
