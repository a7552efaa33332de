using HarnessDraw.Drawing;

namespace HarnessDraw.Checking;

/// <summary>Finds, on a finished sheet, the wires that are drawn side by side.</summary>
internal static class LaneNeighbours
{
    /// <summary>Farther apart, mm, something lies between them or a gap does: one and a half times the widest pitch of lanes.</summary>
    private const double BesideMm = 2.4;

    /// <summary>Shorter, mm, no eye takes one for the other.</summary>
    private const double LeastMm = 30;

    private readonly record struct Leg(string Wire, double Across, double From, double To);

    /// <summary>Each pair once, in the order of ids, with how far it runs side by side, mm.</summary>
    public static SortedDictionary<(string A, string B), double> Of(IEnumerable<PrintedItem> items)
    {
        var (level, upright) = (new List<Leg>(), new List<Leg>());
        foreach (var item in items)
        {
            if (item.Item is PathItem { Role: ItemRole.Lane, Tag.Wire: not null } path)
            {
                Collect(path, level, upright);
            }
        }

        var pairs = new SortedDictionary<(string, string), double>();
        Pair(level, pairs);
        Pair(upright, pairs);
        return pairs;
    }

    private static void Collect(PathItem path, List<Leg> level, List<Leg> upright)
    {
        Point? last = null;
        foreach (var step in path.Outline.Steps)
        {
            Point? to = step switch { PathStep.MoveTo m => m.To, PathStep.LineTo l => l.To, PathStep.ArcTo a => a.To, _ => null };
            if (step is PathStep.LineTo && last is { } a0 && to is { } b)
            {
                if (Math.Abs(a0.Y - b.Y) < 0.01)
                {
                    level.Add(new(path.Tag!.Wire!, b.Y, Math.Min(a0.X, b.X), Math.Max(a0.X, b.X)));
                }
                else if (Math.Abs(a0.X - b.X) < 0.01)
                {
                    upright.Add(new(path.Tag!.Wire!, b.X, Math.Min(a0.Y, b.Y), Math.Max(a0.Y, b.Y)));
                }
            }

            last = to ?? last;
        }
    }

    private static void Pair(List<Leg> legs, SortedDictionary<(string, string), double> pairs)
    {
        legs.RemoveAll(l => l.To - l.From < LeastMm);
        legs.Sort((a, b) => a.Across != b.Across ? a.Across.CompareTo(b.Across) : a.From.CompareTo(b.From));
        for (var i = 0; i < legs.Count; i++)
        {
            for (var j = i + 1; j < legs.Count && legs[j].Across - legs[i].Across < BesideMm; j++)
            {
                var beside = Math.Min(legs[i].To, legs[j].To) - Math.Max(legs[i].From, legs[j].From);
                if (legs[i].Wire != legs[j].Wire && beside >= LeastMm)
                {
                    var pair = string.CompareOrdinal(legs[i].Wire, legs[j].Wire) < 0 ? (legs[i].Wire, legs[j].Wire) : (legs[j].Wire, legs[i].Wire);
                    pairs[pair] = Math.Max(pairs.GetValueOrDefault(pair), beside);
                }
            }
        }
    }
}
