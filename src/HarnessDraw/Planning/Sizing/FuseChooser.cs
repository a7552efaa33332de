using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>A rating with the reason for it; null when no standard rating is big enough or the load is unknown.</summary>
internal sealed record ChosenRating(double? RatingA, bool Given, string Why, double LoadA)
{
    /// <summary>The state that loads the fuse most; null when nothing does.</summary>
    public string? State { get; init; }
}

/// <summary>
/// Chooses fuse ratings: the next standard value above the steady load with room (more for motors), for an alternator's lead above its
/// output. A given rating stays.
/// </summary>
internal static class FuseChooser
{
    /// <summary>Every protection's rating by what it passes.</summary>
    public static ImmutableSortedDictionary<string, ChosenRating> Rated(HarnessIndex index, Func<string, FuseLoad?> loadOf, PlanningOptions options) =>
        index.Harness.Protections.ToImmutableSortedDictionary(
            p => p.Id, p => Choose(p, index.Harness.Catalogue.Fuses.FirstOrDefault(f => f.Kind == p.Kind), loadOf(p.Id), options), StringComparer.Ordinal);

    public static ChosenRating Choose(Protection protection, FuseSeries? series, FuseLoad? load, PlanningOptions options) =>
        ByLoad(protection, series, load, options) with { State = load is { LoadA: > 0 } ? load.State : null };

    private static ChosenRating ByLoad(Protection protection, FuseSeries? series, FuseLoad? load, PlanningOptions options)
    {
        var loadA = load is null ? 0 : Math.Max(load.LoadA, load.OutputA);
        if (protection.RatingA is { } given)
        {
            return new(given, true, "given by hand", loadA);
        }

        if (load is null || loadA <= 0)
        {
            return new(series?.Ratings.FirstOrDefault()?.RatingA, false, "no load known: smallest of the series", 0);
        }

        var motor = load.MotorA > 0.5 * load.LoadA;
        var charges = load.OutputA > load.LoadA;
        var factor = charges ? options.FuseOverOutput : motor ? options.FuseOverMotor : options.FuseOverLoad;
        var what = charges ? "alternator output" : motor ? "load, mostly motors" : "load";
        var rating = series?.Ratings.Select(r => r.RatingA).Order().Cast<double?>().FirstOrDefault(r => r >= (factor * loadA) - 1e-9);
        var text = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"next standard rating above {factor:0.##} x {loadA:0.0#} A = {factor * loadA:0.0#} A ({what})");
        return new(rating, false, rating is null ? $"{text}: none in the series" : text, loadA);
    }

    /// <summary>Largest standard rating that a current limit bears; null when even the smallest is too big.</summary>
    public static double? Largest(FuseSeries? series, double limitA) =>
        series?.Ratings.Select(r => r.RatingA).Order().Cast<double?>().LastOrDefault(r => r <= limitA + 1e-9);
}
