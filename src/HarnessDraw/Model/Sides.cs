namespace HarnessDraw.Model;

/// <summary>The side of a thing, from its mark or, where it has none, from its name.</summary>
internal static class Sides
{
    public static string? Of(Thing thing) =>
        thing.SideMark is "L" or "R" ? thing.SideMark : Words(thing).Contains("left") ? "L" : Words(thing).Contains("right") ? "R" : null;

    /// <summary>True for 'front lamp left' and 'front lamp right'.</summary>
    public static bool Opposite(Thing a, Thing b) => Of(a) is { } x && Of(b) is { } y && x != y && Sideless(a) == Sideless(b);

    /// <summary>The name without its side.</summary>
    public static string Sideless(Thing thing) => string.Join(' ', Words(thing).Where(w => w is not ("left" or "right")));

    private static string[] Words(Thing thing) => thing.Id.Split(' ', StringSplitOptions.RemoveEmptyEntries);
}
