using System.Collections.Immutable;
using HarnessDraw.Electrical;

namespace HarnessDraw.Planning.Sizing;

/// <summary>
/// A wire of a loop with the current it carries there; <see cref="HeatC"/> is its rise over the ambient times the square of what its size bears in air, which
/// no size changes. Null: by the bundle factor of the fullest segment.
/// </summary>
internal readonly record struct LoopPass(WireRow Wire, double CurrentA, double? HeatC)
{
    /// <summary>What a wire would drop in another area: as much thicker as cooler.</summary>
    public double DropVAs(double areaMm2)
    {
        var share = Wire.SizeNow.AreaMm2 / areaMm2;
        var rise = (HeatC is { } heat ? heat / (Ampacity.InAirA(Wire.SizeNow) * Ampacity.InAirA(Wire.SizeNow)) : Wire.SteadyC(Wire.Size, CurrentA) - Wire.AmbientC) * Math.Pow(share, 2 * Ampacity.AreaPower);
        return CurrentA * share * Wire.OhmAt(Wire.Size, Wire.AmbientC + rise);
    }

    public double DropV(int size)
    {
        var inAirA = Ampacity.InAirA(Wire.Sizes[size]);
        return CurrentA * Wire.OhmAt(size, HeatC is { } heat ? Wire.AmbientC + (heat / (inAirA * inAirA)) : Wire.SteadyC(size, CurrentA));
    }
}

/// <summary>The wires one loop passes, with their currents, against what it may drop.</summary>
internal sealed record LoopBudget(DropPath Path, ImmutableArray<LoopPass> Wires)
{
    /// <summary>What contacts, fuses and kept wiring leave of the limit; not above zero where they alone lose more.</summary>
    public double RemainderV => Path.LimitV - Path.FixedV;

    public double WiresV
    {
        get
        {
            var sum = 0.0;
            foreach (var pass in Wires)
            {
                sum += pass.DropV(pass.Wire.Size);
            }

            return sum;
        }
    }

    /// <summary>With all wires that are sized alike with that one in another size.</summary>
    public double WiresVWithAlike(WireRow changed, int size) => Wires.Sum(w => w.DropV(w.Wire.First == changed.First ? size : w.Wire.Size));

    /// <summary>With that wire alone in another size.</summary>
    public double WiresVWith(WireRow changed, int size) => Wires.Sum(w => w.DropV(w.Wire == changed ? size : w.Wire.Size));
}
