using HarnessDraw.Model;
using HarnessDraw.Planning.Sizing;

namespace HarnessDraw.Planning.Routing;

/// <summary>What a net asks of the tree: the places of its members (the root first) and the largest current of each.</summary>
internal sealed record NetDemand(int[] Places, double[] LargestA)
{
    /// <summary>Its wire, from whose sizes the zones' heat asks; null: heat counts for nothing.</summary>
    public WireType? Type { get; init; }

    /// <summary>Rating of the protection that its wires must bear, A; 0: none is known.</summary>
    public double FuseA { get; init; }

    /// <summary>Its size where that is given by hand, mm2.</summary>
    public double? GivenMm2 { get; init; }

    /// <summary>Copper guessed for a current before sizes are known, mm2.</summary>
    public static double GuessMm2(double currentA) => Math.Max(0.5, 0.2 * currentA);

    /// <summary>
    /// Copper guessed for a wire, mm2: by its current, and as much more as the hottest stretch of its way (degC) makes it thicker than its own ends (degC) would have it anyway.
    /// </summary>
    public double Mm2(double currentA, double wayC, double endsC)
    {
        var guess = GuessMm2(currentA);
        return wayC <= endsC || GivenMm2 is not null ? GivenMm2 ?? guess : guess + Math.Max(guess, BearingMm2(currentA, wayC)) - Math.Max(guess, BearingMm2(currentA, endsC));
    }

    /// <summary>The least size that bears current and fuse at an ambient as a single wire, mm2. Where the ambient reaches the class none does: 0, as such paths are weighed by themselves.</summary>
    private double BearingMm2(double currentA, double ambientC)
    {
        var factor = Type is { Sizes.IsEmpty: false } ? Ampacity.AmbientFactor(Type.MaxC, ambientC) : 0;
        if (factor <= 0)
        {
            return 0;
        }

        var bearsA = Math.Max(currentA, FuseA);
        foreach (var size in Type!.Sizes)
        {
            if (Ampacity.InAirA(size) * factor >= bearsA - 1e-9)
            {
                return size.AreaMm2;
            }
        }

        var largest = Type.Sizes[^1];
        return largest.AreaMm2 * Math.Pow(bearsA / (Ampacity.InAirA(largest) * factor), 1 / Ampacity.AreaPower);
    }
}
