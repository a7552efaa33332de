using System.Collections.Immutable;

namespace HarnessDraw.Fabrication.Kits;

/// <summary>
/// Least force in newtons that pulls a conductor out of a good crimp: the commercial column of terminal makers' application specifications (the UL 486A set),
/// by AWG. A metric size takes the row of the next smaller gauge. Once in the harness a crimp is not pulled harder than 80 % of it (NASA-STD-8739.4).
/// </summary>
public static class PullStrength
{
    // area in mm2 after ASTM B258, least force in N
    private static readonly ImmutableArray<(double AreaMm2, double Newton)> Rows =
    [
        (0.129, 13.4), (0.205, 22.3), (0.326, 35.6), (0.519, 57.9), (0.823, 89.0), (1.31, 133.5), (2.08, 222.5), (3.31, 311.5), (5.26, 356.0),
        (8.37, 400.5), (13.3, 445.0), (21.2, 623.0), (33.6, 801.0), (53.5, 1112.5), (67.4, 1335.0),
    ];

    private const double InHarnessShare = 0.8;

    /// <summary>Null for sizes below the table. Vehicle strandings hold up to 7 % less copper than their gauge and still count as it.</summary>
    public static double? LeastN(double areaMm2)
    {
        var row = Rows.LastOrDefault(r => r.AreaMm2 * 0.92 <= areaMm2);
        return row.Newton > 0 ? row.Newton : null;
    }

    public static double? InHarnessN(double areaMm2) => LeastN(areaMm2) is { } n ? Math.Floor(n * InHarnessShare) : null;
}
