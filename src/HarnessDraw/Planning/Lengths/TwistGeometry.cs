namespace HarnessDraw.Planning.Lengths;

/// <summary>Length of a wire that is laid as a helix: geometry, sqrt(1 + (pi D / lay)^2) times the straight one.</summary>
public static class TwistGeometry
{
    /// <param name="diameterMm">Diameter of the circle on which the middles of the wires lie.</param>
    /// <param name="layMm">Length in which a wire goes round once.</param>
    public static double Factor(double diameterMm, double layMm) => layMm > 0 ? Math.Sqrt(1 + Math.Pow(Math.PI * diameterMm / layMm, 2)) : 1;

    /// <summary>The circle through the middles of equal wires that touch their neighbours: one diameter for a pair, 1.155 for three.</summary>
    public static double MiddlesMm(int wires, double outsideMm) => wires < 2 ? 0 : outsideMm / Math.Sin(Math.PI / wires);
}
