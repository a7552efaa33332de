using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>
/// Shortest and longest time in which a fuse may open, by the multiple of its rating: ISO 8820-3 (blade) and ISO 8820-5 (bolt-in) windows as
/// reprinted on data sheets, joined on logarithmic scales. Null longest: it need not open at all.
/// </summary>
public static class FuseWindow
{
    private static readonly (double Times, double ShortestS, double LongestS)[] Blade = [(1.35, 0.75, 600), (1.6, 0.25, 50), (2, 0.15, 5), (3.5, 0.08, 0.5), (6, 0.03, 0.1)];
    private static readonly (double Times, double ShortestS, double LongestS)[] BoltIn = [(1.35, 120, 1800), (2, 1, 15), (3.5, 0.3, 5), (6, 0.1, 1)];

    public static (double ShortestS, double? LongestS) Of(ProtectionKind kind, double timesRating)
    {
        var gates = kind == ProtectionKind.Blade ? Blade : BoltIn;
        if (timesRating < gates[0].Times)
        {
            return (gates[0].ShortestS, null);
        }

        var last = gates[^1];
        if (timesRating >= last.Times)
        {
            // past the last gate the melting heat is the same
            var share = last.Times / timesRating * (last.Times / timesRating);
            return (last.ShortestS * share, last.LongestS * share);
        }

        var i = Array.FindIndex(gates, g => timesRating < g.Times);
        var (a, b) = (gates[i - 1], gates[i]);
        var along = Math.Log(timesRating / a.Times) / Math.Log(b.Times / a.Times);
        return (a.ShortestS * Math.Pow(b.ShortestS / a.ShortestS, along), a.LongestS * Math.Pow(b.LongestS / a.LongestS, along));
    }
}
