using System.Collections.Immutable;
using HarnessDraw.Electrical;

namespace HarnessDraw.Troubleshooting;

/// <summary>The most that a part may lose with its load on, volts at 12 V.</summary>
public sealed record DropLimit(string What, double Volts, string Source);

/// <summary>Published rules of thumb for tests on a live circuit, and what rest volts and lamp volts mean.</summary>
public static class TestLimits
{
    private const string Manual = "a passenger car service manual of 1999 to 2005 quoting SAE";
    private const string Training = "technician training page on voltage drop tests";
    private const string Encyclopedia = "encyclopedia page on voltage drop tests, after training material";

    public static ImmutableArray<DropLimit> Drops { get; } =
    [
        new("connection of a thin wire", 0.0, Manual),
        new("connection that carries much", 0.1, Manual),
        new("cable that carries much", 0.2, Manual),
        new("contact of a switch or solenoid", 0.3, Manual),
        new("ground side", 0.1, Training),
        new("wire of the feed", 0.2, Training),
        new("through a switch", 0.3, Training),
        new("starter cables, all together", 0.5, Training),
        new("starter, positive side", 0.6, Encyclopedia),
        new("starter, negative side", 0.3, Encyclopedia),
        new("charging, positive side", 0.5, Encyclopedia),
        new("charging, negative side", 0.2, Encyclopedia),
    ];

    /// <summary>Rest volts of a flooded 12 V battery by charge in percent (RV magazine answer, motorhome.com).</summary>
    public static ImmutableArray<(int Percent, double Volts)> RestV { get; } = [(100, 12.66), (75, 12.45), (50, 12.30), (25, 12.15)];

    /// <summary>Percent of charge by rest volts, hours after the last charge; straight between the published points, held at their ends. Null below the lowest: under 25 %.</summary>
    public static double? ChargePercent(double restV, double nominalV = 12)
    {
        var volts = restV * 12 / nominalV;
        if (volts < RestV[^1].Volts)
        {
            return null;
        }

        for (var i = 1; i < RestV.Length; i++)
        {
            if (volts >= RestV[i].Volts)
            {
                var (high, low) = (RestV[i - 1], RestV[i]);
                return Math.Min(100, low.Percent + ((volts - low.Volts) / (high.Volts - low.Volts) * (high.Percent - low.Percent)));
            }
        }

        return null;
    }

    /// <summary>Share of its light that a lamp gives at a share of its volts.</summary>
    public static double LightShare(double voltsShare) => Math.Pow(Math.Max(0, voltsShare), PartLaw.LightPower);
}
