using System.Globalization;
using HarnessDraw.Units;

namespace HarnessDraw.Reading;

/// <summary>How shapes are spoken of in messages.</summary>
public static class ShapeWords
{
    private const int MostUnits = 4;

    public static string Expected(Shape shape) => shape switch
    {
        TextShape text => text.Expected,
        YesNoShape => "yes or no",
        NumberShape => "a plain number",
        QuantityShape quantity => $"{quantity.Kind.Title} in {quantity.Kind.UnitsInWords()}",
        PairShape { Joint: PairShape.Range } => "a range such as '2 to 60 mm'",
        PairShape { OrRound: true } => "a size such as '62 x 98 mm' or 'round 40 mm'",
        PairShape => "a size such as '62 x 98 mm'",
        ChoiceShape { Words.Length: 1 } choice => $"'{choice.Words[0]}'",
        ChoiceShape choice => string.Join(", ", choice.Words[..^1]) + " or " + choice.Words[^1],
        ListShape => "a list",
        EitherShape either => string.Join(" or ", either.Shapes.Select(Expected).Distinct()),
        _ => "a block of keys",
    };

    /// <summary>How a quantity is written: a plain number with each unit that may be meant, else an example.</summary>
    public static string WriteLike(string typed, QuantityKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return double.TryParse(typed, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _)
            ? $"write the unit: {string.Join(" or ", kind.Units.Where(u => u.Symbol.All(char.IsAscii)).Take(MostUnits).Select(u => $"'{typed} {u.Symbol}'"))}"
            : $"write it like '{Meant(typed, kind) ?? Example(kind)}'";
    }

    // '2,5 A' and '4 Amps' leave no doubt
    private static string? Meant(string typed, QuantityKind kind)
    {
        var number = string.Concat(typed.Replace(',', '.').TakeWhile(c => char.IsAsciiDigit(c) || c == '.'));
        var word = typed[number.Length..].Trim();
        string[] symbols = [.. kind.Units.Select(u => u.Symbol).Where(s => s.All(char.IsAscii))];
        var unit = symbols.FirstOrDefault(s => s.Equals(word, StringComparison.OrdinalIgnoreCase))
            ?? symbols.FirstOrDefault(s => UnitWords.TryGetValue(s, out var words) && words.Contains(word.TrimEnd('s'), StringComparer.OrdinalIgnoreCase));
        return unit is not null && Quantity.TryParse($"{number} {unit}", kind, out _, out _) ? $"{number} {unit}" : null;
    }

    // each without the s of many
    private static readonly Dictionary<string, string[]> UnitWords = new(StringComparer.Ordinal)
    {
        ["A"] = ["amp", "ampere"],
        ["V"] = ["volt"],
        ["W"] = ["watt"],
        ["ohm"] = ["ohm", "Ω"],
        ["mm2"] = ["sqmm", "sq mm", "mm^2"],
        ["mm"] = ["millimetre", "millimeter"],
        ["in"] = ["inch", "inche", "\""],
        ["ft"] = ["foot", "feet", "'"],
        ["degC"] = ["°C", "C"],
        ["AWG"] = ["ga", "gauge"],
    };

    public static string Example(QuantityKind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        var number = kind.Units[0].Symbol switch
        {
            "mm" => "1200",
            "mm2" => "0.75",
            "A" => "4.6",
            "degC" => "105",
            "V" => "12",
            "W" => "55",
            _ => "5",
        };
        return $"{number} {kind.Units[0].Symbol}";
    }
}
