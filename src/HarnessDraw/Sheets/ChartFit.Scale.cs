using System.Globalization;

namespace HarnessDraw.Sheets;

// lengths at one scale, as far as the paper allows
internal sealed partial class ChartFit
{
    /// <summary>Scales that are tried, mm of bundle a mm of paper: those of ISO 5455 and some between them.</summary>
    private static ReadOnlySpan<double> Scales => [1, 2, 2.5, 4, 5, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100];

    /// <summary>The scale of lengths in words, '1:5'; null: the chart is not to scale.</summary>
    public string? Scale { get; private set; }

    /// <summary>The same with how many lengths are to it; null: nobody asked.</summary>
    public string? ToScaleWords { get; private set; }

    /// <summary>How many of the lengths that are known are to scale, 0 to 1.</summary>
    public double ShareToScale { get; private set; }

    /// <summary>
    /// The finished chart at the scale at which most lengths are true. At a scale that is too large for the paper the longest are broken, one after the other; short ones are drawn
    /// longer where what stands beside them needs the room. Where not one length can be kept the chart is drawn as without.
    /// </summary>
    public ChartFit ToScale()
    {
        var lengths = Problem.Problem.Nodes.Select(n => n.LengthMm).Where(mm => mm > 0).Distinct().Order().ToList();
        (double Scale, double UpToMm)? best = null;
        var (most, all) = (0, 0);
        foreach (var scale in Scales)
        {
            for (var (low, high) = (0, lengths.Count); low < high;)
            {
                // first all of them
                var middle = high == lengths.Count ? high - 1 : (low + high) / 2;
                if (IsRoomFor(scale, lengths[middle]))
                {
                    low = middle + 1;
                    (var kept, all) = draft.LengthsToScale;
                    (best, most) = kept > most ? ((scale, lengths[middle]), kept) : (best, most);
                }
                else
                {
                    high = middle;
                }
            }
        }

        if (best is not { } at)
        {
            ToScaleWords = "not to scale: no length has the room";
            Frame = Sheets.Frame.Compose(Paper, title with { Note = $"No length has room to be to scale. {title.Note}" });
            return Stretched(0);
        }

        IsRoomFor(at.Scale, at.UpToMm);
        Scale = "1:" + at.Scale.ToString(CultureInfo.InvariantCulture);
        ShareToScale = (double)most / all;
        ToScaleWords = most == all ? $"{Scale}: all {all} lengths" : $"{Scale}: {most} of {all} lengths, others broken";
        Frame = Sheets.Frame.Compose(Paper, title with { Scale = Scale, Note = $"{ToScaleWords}. {title.Note}" });
        Chart = draft.Read();
        FillCorners();
        return this;
    }

    private bool IsRoomFor(double scale, double upToMm) => Suits(draft.ToScale(liftMm, enoughMm, stance with { Scale = 1 / scale, ScaledUpToMm = upToMm }));
}
