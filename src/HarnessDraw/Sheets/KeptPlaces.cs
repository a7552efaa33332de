using System.Collections.Immutable;
using HarnessDraw.Layout;
using HarnessDraw.Model;

namespace HarnessDraw.Sheets;

/// <summary>
/// The places of a chart that was drawn before, found again on a harness that has changed a little: branches by the names of their places, tables by their loads.
/// Where a place has come between two others, or has gone, what lies behind it still leaves as it did.
/// </summary>
internal sealed class KeptPlaces
{
    private readonly WallChartSubject subject;
    private readonly Dictionary<string, (FrozenBranch Was, int Rank)> branches;
    private readonly Dictionary<string, (FrozenCard Was, int Rank)> cards;
    private readonly HashSet<string> known;
    private readonly ILookup<int, int> children;

    public KeptPlaces(FrozenChartSheet sheet, WallChartSubject subject)
    {
        this.subject = subject;
        branches = sheet.Branches.Select((b, i) => (b, i)).DistinctBy(b => b.b.Place, StringComparer.Ordinal).ToDictionary(b => b.b.Place, b => (b.b, b.i), StringComparer.Ordinal);
        cards = sheet.Cards.Select((c, i) => (c, i)).DistinctBy(c => c.c.Card, StringComparer.Ordinal).ToDictionary(c => c.c.Card, c => (c.c, c.i), StringComparer.Ordinal);
        known = [.. sheet.Branches.SelectMany(b => (string[])[b.Place, b.From])];
        children = Enumerable.Range(1, Math.Max(0, subject.NodeParents.Count - 1)).ToLookup(i => subject.NodeParents[i]);
    }

    public KeptBranch? BranchTo(int node)
    {
        if (node == 0 || !known.Contains(subject.NodePlaces[0]) || FirstKnown(node) is not { } place)
        {
            return null;
        }

        var from = subject.NodePlaces[subject.NodeParents[node]];
        var left = ImmutableHashSet<string>.Empty;
        for (var at = place; branches.TryGetValue(at, out var branch) && !left.Contains(at); at = branch.Was.From)
        {
            if (branch.Was.From == from)
            {
                return new(branch.Was.Turn, branch.Rank, branch.Was.StemMm, branch.Was.HoldMm);
            }

            left = left.Add(at);
        }

        // behind a place that has come between the bundle runs on
        return known.Contains(from) ? null : new(ChartTurn.Straight, branches[place].Rank, 0, branches[place].Was.HoldMm);
    }

    // the nearest place at or behind a node that the chart had
    private string? FirstKnown(int node)
    {
        var open = new Queue<int>([node]);
        while (open.TryDequeue(out var at))
        {
            if (branches.ContainsKey(subject.NodePlaces[at]))
            {
                return subject.NodePlaces[at];
            }

            foreach (var child in children[at])
            {
                open.Enqueue(child);
            }
        }

        return null;
    }

    public KeptCard? CardOf(ChartCardSubject card) => cards.TryGetValue(card.Key, out var found)
        ? new(found.Was, found.Rank, found.Was.On is { } on ? subject.NodePlaces.IndexOf(on) : -1)
        : null;

    /// <summary>Takes down how a finished chart is laid out.</summary>
    public static FrozenChartSheet Take(WallChartSubject subject, ChartDraft draft, ChartStance stance, (double X, double Y) at, bool showsAll, IEnumerable<FrozenPanel> panels)
    {
        var (branches, cards) = draft.Taken();
        return new()
        {
            Circuits = [.. subject.Plan.Wires.Select(w => w.Circuit).Distinct(StringComparer.Ordinal)],
            NameMm = draft.Problem.Style.NameMm,
            ColumnMm = draft.Rule.HighestMm,
            OneSideMm = draft.Rule.OneSideMm,
            StacksAtEnds = draft.Rule.AtEnds,
            TableShare = stance.TableShare,
            CornerWidthMm = stance.CornerWidthMm,
            CornerHeightMm = stance.CornerHeightMm,
            StretchX = stance.StretchX,
            StretchY = stance.StretchY,
            X = at.X,
            Y = at.Y,
            ShowsAll = showsAll,
            Branches = [.. branches.Select(b => new FrozenBranch(subject.NodePlaces[b.Node], subject.NodePlaces[subject.NodeParents[b.Node]], b.Turn, b.StemMm, b.HoldMm))],
            Cards = [.. cards.Select(c => c.Was with { Card = subject.Cards[c.Card].Key, On = c.Host < 0 ? null : subject.NodePlaces[c.Host] })],
            Panels = [.. panels],
        };
    }
}
