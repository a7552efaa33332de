using System.Collections.Immutable;

namespace HarnessDraw.Drawing;

/// <summary>Slanted bars set out along a lane, bent with it round corners, as one outline.</summary>
internal static class TracerBars
{
    private const double StepMm = 0.3;
    private const int CornersOfStraightBar = 4;

    /// <summary>
    /// Bars centred at phase, phase + pitch, ... that keep <paramref name="clearMm"/> from the ends. <paramref name="parts"/> are
    /// stretches relative to the bar's centre (several for strokes within one bar).
    /// </summary>
    public static Outline Along(Outline lane, ImmutableArray<(double FromMm, double ToMm)> parts, double pitchMm, double phaseMm, double halfWidthMm, double clearMm)
    {
        var (corners, ends) = (ImmutableArray.CreateBuilder<Point>(), ImmutableArray.CreateBuilder<int>());
        foreach (var line in CentreLine.Of(lane))
        {
            var most = parts.Length * (int)((line.LengthMm / pitchMm) + 1);
            corners.Capacity = Math.Max(corners.Capacity, corners.Count + (CornersOfStraightBar * most));
            ends.Capacity = Math.Max(ends.Capacity, ends.Count + most);
            for (var centre = First(phaseMm, pitchMm, clearMm); centre <= line.LengthMm - clearMm; centre += pitchMm)
            {
                foreach (var (from, to) in parts)
                {
                    AddBar(corners, line, centre + from, centre + to, halfWidthMm);
                    ends.Add(corners.Count);
                }
            }
        }

        return new(ends.Count == 0 ? [] : [new PathStep.Polygons(corners.DrainToImmutable(), ends.DrainToImmutable())]);
    }

    private static double First(double phaseMm, double pitchMm, double clearMm)
    {
        var phase = phaseMm % pitchMm;
        return phase >= clearMm ? phase : phase + (pitchMm * Math.Ceiling((clearMm - phase) / pitchMm));
    }

    private static void AddBar(ImmutableArray<Point>.Builder corners, CentreLine line, double from, double to, double half)
    {
        var slant = LeansForward(line.At((from + to) / 2).Direction) ? half : -half;
        var straight = line.StraightPiece(from - half, to + half);
        var count = straight is null ? (int)Math.Ceiling((to - from) / StepMm) : 1;
        for (var i = 0; i <= (2 * count) + 1; i++)
        {
            // forward along the one side, back along the other
            var (k, side) = i <= count ? (i, 1) : ((2 * count) + 1 - i, -1);
            corners.Add(line.Beside(from - (side * slant) + ((to - from) * k / count), side * half, straight));
        }
    }

    // Bars stand at 45 degrees to the lane, either way; the way nearer to a '/' on paper is taken, so that all bars lean alike
    // (turned half round, a bar leans as before, so the direction a lane was drawn in does not matter).
    private static bool LeansForward(Point d) => Math.Abs(d.X) > Math.Abs(d.Y) - 1e-6;
}
