namespace HarnessDraw.Writing.CutList;

/// <summary>Wire colours in words. Letters are those of IEC 60757; base and tracer are parted by a slash (common practice, no source).</summary>
internal static class ColourWords
{
    /// <summary>'yellow/black' for 'YE/BK'; letters this program does not know stay as they are.</summary>
    public static string Of(string colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        return string.Join('/', colour.Split('/').Select(Word));
    }

    private static string Word(string letters) => letters switch
    {
        "BK" => "black",
        "BN" => "brown",
        "RD" => "red",
        "OG" => "orange",
        "YE" => "yellow",
        "GN" => "green",
        "BU" => "blue",
        "VT" => "violet",
        "GY" => "grey",
        "WH" => "white",
        "PK" => "pink",
        "TQ" => "turquoise",
        _ => letters,
    };
}
