namespace HarnessDraw.Model;

/// <summary>What the name of a thing says: its label, its side mark, and its kind where nothing else tells.</summary>
public static class ThingName
{
    /// <summary>'headlamp left' gives 'HEADLAMP'; a name of nothing but left or right keeps it.</summary>
    public static string Label(string name)
    {
        var words = name.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(w => Mark(w) is null).ToArray();
        return (words.Length == 0 ? name : string.Join(' ', words)).ToUpperInvariant();
    }

    /// <summary>'L', 'R' or null.</summary>
    public static string? SideMark(string name) =>
        name.Split(' ').Select(Mark).FirstOrDefault(m => m is not null);

    /// <summary>The kind that the last word before left, right or a number names.</summary>
    public static ThingKind? Kind(string name)
    {
        var word = name.Split(' ', StringSplitOptions.RemoveEmptyEntries).LastOrDefault(w => Mark(w) is null && !w.All(char.IsAsciiDigit));
        return word?.ToLowerInvariant() switch
        {
            "starter" => ThingKind.Starter,
            "sender" or "sensor" => ThingKind.Sender,
            "switch" => ThingKind.Switch,
            "relay" => ThingKind.Relay,
            "lamp" or "headlamp" => ThingKind.Lamp,
            "motor" => ThingKind.Motor,
            "panel" => ThingKind.FusePanel,
            _ => null,
        };
    }

    private static string? Mark(string word) => word.ToLowerInvariant() switch
    {
        "left" => "L",
        "right" => "R",
        _ => null,
    };
}
