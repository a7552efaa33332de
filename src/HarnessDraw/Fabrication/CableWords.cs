using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>What the bench does with a cable: which conductors are laid together, how they are twisted, where the drain of the screen ends.</summary>
public static class CableWords
{
    /// <param name="row">The cable.</param>
    /// <param name="length">A length in mm as it is written.</param>
    public static string Of(CableRow row, Func<double, string> length)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(length);
        var laid = string.Join(" + ", row.Conductors.Select(w => w.Id));
        var twist = row.Cable.TwistPitchMm is { } pitchMm ? $"twisted together, {length(pitchMm)} a turn" : "laid together";
        return $"{laid} {twist}{(row.Cable.Screened ? $"; screened, {DrainWords(row.Cable.ScreenGroundedAt)}" : "")}";
    }

    // a screen that is grounded at both ends carries current
    private static string DrainWords(Model.PinRef? at) => at is null
        ? "no end given for its drain: ask before you build"
        : $"drain to {PointWords.Of(new(at.Thing, at.Pin))}, at this end only: cut it back and cover it at the other";
}
