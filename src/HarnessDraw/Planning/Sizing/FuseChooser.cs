using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Planning.Sizing;

/// <summary>A rating with the reason for it; null when no standard rating is big enough or the load is unknown.</summary>
internal sealed record ChosenRating(double? RatingA, bool Given, string Why, double LoadA)
{
    /// <summary>The state that loads the fuse most; null when nothing does.</summary>
    public string? State { get; init; }
}

/// <summary>The most that something behind a fuse bears, as a rating, in words: 'the 8 A contact at firewall A3'.</summary>
internal readonly record struct FuseBound(double LimitA, string What);

/// <summary>
/// Chooses fuse ratings: the next standard value above the steady load with room (more for motors), for an alternator's lead above its
/// output. What passes while the starter turns (its solenoid) has less room. Where what lies behind bears less, the largest that it bears, if that still carries the load and its start. A given rating stays.
/// </summary>
internal sealed class FuseChooser(HarnessIndex index, PlanningOptions options, Func<string, FuseBound?> boundOf, Func<string, double> peakOf)
{
    /// <summary>As long as nothing is known of what lies behind.</summary>
    public FuseChooser(HarnessIndex index, PlanningOptions options)
        : this(index, options, _ => null, _ => 0)
    {
    }

    /// <summary>Every protection's rating by what it passes.</summary>
    public ImmutableSortedDictionary<string, ChosenRating> Rated(Func<string, FuseLoad?> loadOf) =>
        index.Harness.Protections.ToImmutableSortedDictionary(p => p.Id, p => Choose(p, loadOf(p.Id)), StringComparer.Ordinal);

    private ChosenRating Choose(Protection protection, FuseLoad? load)
    {
        var series = index.Harness.Catalogue.Fuses.FirstOrDefault(f => f.Kind == protection.Kind);
        var loadA = load is null ? 0 : Math.Max(load.LoadA, load.OutputA);
        var state = load is { LoadA: > 0 } ? load.State : null;
        if (protection.RatingA is { } given)
        {
            return new(given, true, "given by hand", loadA) { State = state };
        }

        var crankingA = load?.Cranking?.LoadA ?? 0;
        if (load is null || Math.Max(loadA, crankingA) <= 0)
        {
            return new(series?.Ratings.FirstOrDefault()?.RatingA, false, "no load known: smallest of the series", 0) { State = state };
        }

        var (rating, why) = ByLoad(protection, series, load, loadA);
        if (rating < (options.FuseOverCranking * crankingA) - 1e-9)
        {
            (loadA, state) = (crankingA, load.Cranking!.State);
            (rating, why) = Next(series, options.FuseOverCranking, crankingA, "what passes while the starter turns");
        }

        var bound = rating is null ? null : boundOf(protection.Id);
        if (bound is { } b && rating > b.LimitA + 1e-9)
        {
            (rating, why) = Largest(series, b.LimitA) is { } borne && Carries(protection, borne, loadA)
                ? (borne, Text($"by {b.What}, which bears a fuse of {b.LimitA:0.#} A at the most; by the load it would be {rating:0.#} A"))
                : (rating, Text($"{why}; {b.What} bears a fuse of {b.LimitA:0.#} A at the most, which would not carry the load and its start"));
        }

        return new(rating, false, why, loadA) { State = state };
    }

    private (double? RatingA, string Why) ByLoad(Protection protection, FuseSeries? series, FuseLoad load, double loadA)
    {
        var charges = load.OutputA > load.LoadA;
        var motor = load.MotorA > 0.5 * load.LoadA;
        // never more than the share that the rules about fuse loads leave it: less where it is hot
        var factor = Math.Max(charges ? options.FuseOverOutput : motor ? options.FuseOverMotor : options.FuseOverLoad, 1 / MostShare(protection));
        var what = charges ? "the alternator's output" : motor ? "the load and its starting current (mostly motors)" : "the load";
        return Next(series, factor, loadA, what);
    }

    private static (double? RatingA, string Why) Next(FuseSeries? series, double factor, double loadA, string what)
    {
        var rating = series?.Ratings.Select(r => r.RatingA).Order().Cast<double?>().FirstOrDefault(r => r >= (factor * loadA) - 1e-9);
        var text = Text($"by {what}: next standard above {factor:0.##} x {loadA:0.0#} A = {factor * loadA:0.0#} A");
        return (rating, rating is null ? $"{text}: none in the series" : text);
    }

    private bool Carries(Protection protection, double ratingA, double loadA)
    {
        var peakTimes = protection.Kind == ProtectionKind.BoltIn ? options.PeakOverBoltIn : options.PeakOverBlade;
        return MostShare(protection) * ratingA >= loadA - 1e-9 && peakTimes * ratingA >= peakOf(protection.Id) - 1e-9;
    }

    private double MostShare(Protection protection)
    {
        var place = index.Thing(protection.Id) is { Side: Side.Bay } thing ? index.Place(thing.Place) : null;
        return place is not null && index.AmbientC(place.Zone, options) >= options.FuseHeatC ? options.MostFuseShareInHeat : options.MostFuseShare;
    }

    /// <summary>Largest standard rating that a current limit bears; null when even the smallest is too big.</summary>
    public static double? Largest(FuseSeries? series, double limitA) =>
        series?.Ratings.Select(r => r.RatingA).Order().Cast<double?>().LastOrDefault(r => r <= limitA + 1e-9);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
