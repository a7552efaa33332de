using System.Collections.Immutable;

namespace HarnessDraw.Model;

/// <summary>
/// Which texts are wire colours: IEC 60757 letters, with TN (tan), CL (clear) and a leading L or D (light, dark) as additions; base and tracer with a slash.
/// </summary>
public static class ColourLetters
{
    public static readonly ImmutableArray<string> All = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "GD", "TQ", "SR", "TN", "CL"];

    /// <summary>Black, white, clear and the metals have no shades.</summary>
    private static readonly ImmutableArray<string> WithoutShades = ["BK", "WH", "CL", "GD", "SR"];

    /// <summary>True for 'BN', 'LBU', 'BN/WH'; a tracer must differ from its base.</summary>
    public static bool IsColour(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('/');
        return parts.Length <= 2 && parts.All(IsOne) && (parts.Length == 1 || parts[0] != parts[1]);
    }

    /// <summary>True for one colour without a tracer.</summary>
    public static bool IsOne(string letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        return All.Contains(letters) || (letters.Length == 3 && letters[0] is 'L' or 'D' && All.Contains(letters[1..]) && !WithoutShades.Contains(letters[1..]));
    }
}
