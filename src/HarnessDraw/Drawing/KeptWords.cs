using System.Collections.Frozen;

namespace HarnessDraw.Drawing;

/// <summary>
/// The words of a text between which a line may end: a figure and its unit, the figures of '124 × 148' and a name and the number that ends it stay one word, as
/// long as that fits a line.
/// </summary>
public static class KeptWords
{
    private static readonly FrozenSet<string> UnitSigns = FrozenSet.Create(StringComparer.Ordinal,
        "%", "°C", "K", "A", "mA", "V", "mV", "W", "Ω", "mΩ", "kΩ", "MΩ", "mm", "mm²", "m", "in", "ft", "kg", "g", "s", "min", "h", "N·m", "AWG");

    /// <summary>The words in their order; those kept together with a space between.</summary>
    /// <param name="text">As it is shown.</param>
    /// <param name="fits">Whether words kept together are short enough for a line.</param>
    public static IEnumerable<string> Of(string text, Predicate<string> fits)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(fits);
        string? held = null;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (held is not null && Belongs(held, word) && fits($"{held} {word}"))
            {
                held = $"{held} {word}";
                continue;
            }

            if (held is not null)
            {
                yield return held;
            }

            held = word;
        }

        if (held is not null)
        {
            yield return held;
        }
    }

    private static bool Belongs(string before, string word) =>
        word == "×" || before.EndsWith('×')
        || (char.IsAsciiDigit(before[^1]) && UnitSigns.Contains(word.TrimEnd('.', ',', ';', ':', ')')))
        || (char.IsLetterOrDigit(before[^1]) && IsCount(word));

    // '3', '12,' or '2 – 1' with its spaces that do not break: the number of a lamp, a place, a pin
    private static bool IsCount(string word)
    {
        var digits = word.AsSpan(0, word.AsSpan().IndexOf('\u00a0') is >= 0 and var end ? end : word.Length).TrimEnd(".,;:)");
        return digits.Length is 1 or 2 && digits.IndexOfAnyExceptInRange('0', '9') < 0;
    }
}
