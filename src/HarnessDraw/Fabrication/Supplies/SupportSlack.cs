namespace HarnessDraw.Fabrication.Supplies;

/// <summary>Slack between supports: a bundle may be pushed aside by 1/2 in with moderate force of the hand, not more (FAA AC 43.13-1B chapter 11).</summary>
public static class SupportSlack
{
    public const double MostSagMm = 12.7;

    /// <summary>How much longer than the straight distance a bundle is that sags so far between two supports (flat parabola: 8 s2 / 3 L).</summary>
    public static double ExtraMm(double apartMm) => apartMm > 0 ? 8 * MostSagMm * MostSagMm / (3 * apartMm) : 0;
}
