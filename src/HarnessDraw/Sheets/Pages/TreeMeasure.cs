using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets.Pages;

/// <summary>Distances along the harness, mm; null where a length on the way is not known.</summary>
internal sealed class TreeMeasure(Plan plan)
{
    private readonly Dictionary<string, Segment> above = plan.Tree.Segments.GroupBy(s => s.To, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    /// <summary>From the root of the harness to a place.</summary>
    public double? Station(string place)
    {
        var sum = 0.0;
        for (var at = place; at != plan.Tree.Root;)
        {
            if (!above.TryGetValue(at, out var segment) || segment.LengthMm is not { } mm)
            {
                return null;
            }

            sum += mm;
            at = segment.From;
        }

        return sum;
    }

    /// <summary>Where an end of a wire lies: its splice, or the place of its thing.</summary>
    public double? Station(WireEnd end)
    {
        if (plan.Splices.FirstOrDefault(s => s.Id == end.At) is { } splice)
        {
            return splice.StationMm;
        }

        return plan.Harness.Things.FirstOrDefault(t => t.Id == end.At) is { } thing ? Station(thing.Place) : null;
    }

    /// <summary>Between two splices along the bundle.</summary>
    public double? Between(Splice a, Splice b)
    {
        if (a.Segment == b.Segment)
        {
            return Math.Abs(a.AtMm - b.AtMm);
        }

        var wayA = Way(a);
        var wayB = Way(b);
        var common = wayA.Intersect(wayB, StringComparer.Ordinal).FirstOrDefault();
        // one segment lies on the way of the other: the fork is the nearer of the two splices
        if (common is null || a.StationMm is not { } stationA || b.StationMm is not { } stationB || Station(common) is not { } fork)
        {
            return null;
        }

        var meet = wayA.Contains(ToOf(b)) ? stationB : wayB.Contains(ToOf(a)) ? stationA : fork;
        return stationA + stationB - (2 * meet);
    }

    /// <summary>The branch a place belongs to: the nearest named one on the way to the root, else the place itself.</summary>
    public string Branch(string place) => Named(place)?.Branch ?? (Way(place).Last() == plan.Tree.Root ? "TRUNK" : place);

    /// <summary>The nearest place on the way to the root that has a branch's name; null: there is none.</summary>
    public Place? Named(string place) => Way(place).Select(at => plan.Harness.Layout.Places.FirstOrDefault(p => p.Id == at && p.Branch is not null)).FirstOrDefault(p => p is not null);

    private IEnumerable<string> Way(string place)
    {
        for (var at = place; ; at = above[at].From)
        {
            yield return at;
            if (!above.ContainsKey(at))
            {
                yield break;
            }
        }
    }

    // the places from a splice to the root
    private List<string> Way(Splice splice)
    {
        var way = new List<string>();
        for (var at = plan.Tree.Segments.FirstOrDefault(s => s.Id == splice.Segment)?.From; at is not null;)
        {
            way.Add(at);
            at = above.TryGetValue(at, out var segment) ? segment.From : null;
        }

        return way;
    }

    private string ToOf(Splice splice) => plan.Tree.Segments.First(s => s.Id == splice.Segment).To;
}
