namespace HarnessDraw.Model;

/// <summary>
/// Allowances that a description states for itself, lengths in mm; null: as usual. A harness may state all of them, a thing those of the wire ends at it.
/// </summary>
public sealed record AllowanceRules
{
    public static readonly AllowanceRules AsUsual = new();

    /// <summary>Lay of parallel wires, mm a metre of path.</summary>
    public double? LayMmPerM { get; init; }

    /// <summary>More than the bundle's radius for a turn out of the bundle.</summary>
    public double? BreakoutMm { get; init; }

    /// <summary>False: nothing for the outer wires of a bend.</summary>
    public bool? Bends { get; init; }
    public double? DressMm { get; init; }
    public double? LargeDressMm { get; init; }
    public double? MateDressMm { get; init; }

    /// <summary>How often an end may be cut off and terminated again.</summary>
    public int? NewTerminals { get; init; }
    public double? ServiceLoopMm { get; init; }
    public double? DripLoopMm { get; init; }
    public double? StudStackMm { get; init; }

    /// <summary>Left long at the bench and cut at the vehicle; of a thing.</summary>
    public double? CutAtCarMm { get; init; }

    /// <summary>Cut lengths are rounded up to a multiple of this.</summary>
    public double? RoundUpMm { get; init; }
}
