using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>
/// Which texts are wire colours: IEC 60757 letters, with TN (tan), CL (clear) and a leading L or D (light, dark) as additions; base and tracer with a slash.
/// </summary>
public static class ColourLetters
{
    public static readonly ImmutableArray<string> All = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR", "TN", "CL"];

    // the names that IEC 60757 gives its letters, and those of the additions; other spellings behind
    private static readonly ImmutableArray<(string Word, string Letters)> Words =
    [
        ("black", "BK"), ("brown", "BN"), ("red", "RD"), ("orange", "OG"), ("yellow", "YE"), ("green", "GN"), ("blue", "BU"), ("violet", "VT"), ("grey", "GY"), ("white", "WH"), ("pink", "PK"),
        ("gold", "GD"), ("turquoise", "TQ"), ("silver", "SR"), ("tan", "TN"), ("clear", "CL"), ("gray", "GY"), ("purple", "VT"),
    ];

    /// <summary>Black, white, clear and the metals have no shades.</summary>
    private static readonly ImmutableArray<string> WithoutShades = ["BK", "WH", "CL", "GD", "SR"];

    /// <summary>True for 'BN', 'LBU', 'BN/WH'; a tracer must differ from its base.</summary>
    public static bool IsColour(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('/');
        return parts.Length <= 2 && parts.All(IsOne) && (parts.Length == 1 || parts[0] != parts[1]);
    }

    /// <summary>'Yellow/Green' and 'light blue' in letters; null where a word is no colour of the list.</summary>
    public static string? OfWords(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string?[] parts = [.. text.ToLowerInvariant().Split('/', '-').Select(OneOfWords)];
        return parts.All(p => p is not null) && string.Join('/', parts) is var letters && IsColour(letters) ? letters : null;
    }

    private static string? OneOfWords(string text)
    {
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var shade = words.FirstOrDefault() switch { "light" => "L", "dark" => "D", _ => "" };
        return words.Length == 1 + shade.Length && Words.FirstOrDefault(w => w.Word == words[^1]).Letters is { } letters ? shade + letters : null;
    }

    /// <summary>True for one colour without a tracer.</summary>
    public static bool IsOne(string letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        return All.Contains(letters) || (letters.Length == 3 && letters[0] is 'L' or 'D' && All.Contains(letters[1..]) && !WithoutShades.Contains(letters[1..]));
    }
}
