namespace HarnessDraw.Tracing;

/// <summary>
/// Adds up volts lost along a way. A stretch of unknown stops is bridged from the last known stop to the next; past a load whose far side is unknown
/// the sum is unknown for good.
/// </summary>
internal sealed class Losses
{
    private double? sumV = 0;
    private double? lastV;
    private bool loadSince;

    /// <summary>The sum up to a stop whose volts are <paramref name="onV"/>; null where that is not known.</summary>
    public double? At(double? onV, bool afterLoad)
    {
        loadSince |= afterLoad;
        if (onV is not { } volts)
        {
            return null;
        }

        if (!loadSince)
        {
            sumV += lastV is { } last ? Math.Abs(last - volts) : 0;
        }
        else if (!afterLoad)
        {
            sumV = null;
        }

        loadSince = false;
        lastV = volts;
        return sumV;
    }
}
