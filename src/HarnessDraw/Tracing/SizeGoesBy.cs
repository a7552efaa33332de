using System.Globalization;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>Why a wire is as thick as it is, in a few words.</summary>
internal static class SizeGoesBy
{
    public static string Of(Plan plan, Wire wire)
    {
        // which load it is at, and its share in contacts and fuses, is for the plan file
        var because = wire.RunnerUp is { } told ? Without(Without(told.Split(", of which")[0], " at ", ", limit"), " to ", ", which are held") : null;
        return wire.DecidedBy switch
        {
            "voltage drop" => Joined("goes by voltage drop", because),
            "protection" when wire.ProtectedBy is [var fuse, ..] && plan.Fuses.FirstOrDefault(f => f.Id == fuse)?.RatingA is { } rating => string.Create(CultureInfo.InvariantCulture, $"goes by {fuse}, {rating:0.##} A"),
            "protection" => "goes by its fuse",
            "ampacity" => Joined("goes by its current", because),
            "terminal" => Joined("goes by its terminal", because),
            "sized alike" => Joined("goes by its pair", because),
            "unfused cable" => "goes by the starter's other cables",
            "given by hand" => "size given by hand",
            "as built" => "size as built",
            _ => "",
        };
    }

    private static string Without(string text, string from, string to) =>
        text.IndexOf(from, StringComparison.Ordinal) is >= 0 and var start && text.IndexOf(to, start, StringComparison.Ordinal) is >= 0 and var end ? text[..start] + text[end..] : text;

    private static string Joined(string goesBy, string? because) => because is null ? goesBy : $"{goesBy}: {because}";
}
