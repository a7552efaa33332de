namespace HarnessDraw.Drawing;

/// <summary>The colour of a wire's insulation: a base and, on striped wire, a tracer ('BU/OG': blue, orange tracer).</summary>
public sealed record WireColour(ColourCode Base, ColourCode? Tracer = null)
{
    /// <summary>The code as it is printed, 'BU/OG'.</summary>
    public string Code => Tracer is null ? Base.Code : $"{Base.Code}/{Tracer.Code}";

    /// <summary>The code in words, 'blue, orange tracer'.</summary>
    public string Words => Tracer is null ? Base.Word : $"{Base.Word}, {Tracer.Word} tracer";

    /// <summary>Reads a code; null when a letter code is unknown, base and tracer are the same, or there are more than two.</summary>
    public static WireColour? TryParse(string? code)
    {
        var parts = (code ?? "").Split('/');
        if (parts.Length > 2 || ColourCodes.Find(parts[0].Trim()) is not { } first)
        {
            return null;
        }

        if (parts.Length == 1)
        {
            return new(first);
        }

        return ColourCodes.Find(parts[1].Trim()) is { } second && second.Code != first.Code ? new(first, second) : null;
    }

    /// <summary>Reads a code that an earlier stage has checked; an unknown code is drawn as white wire and keeps its letters.</summary>
    public static WireColour Parse(string code) =>
        TryParse(code) ?? new(ColourCodes.Find("WH")! with { Code = code, Word = code });
}
