using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

internal sealed partial class WallChartSubject
{
    // leave out ends without wires, and places where nothing happens
    private void Prune()
    {
        var index = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < NodePlaces.Count; i++)
        {
            index[NodePlaces[i]] = i;
        }

        var keep = new bool[NodePlaces.Count];
        keep[0] = true;
        foreach (var card in Cards)
        {
            keep[index[card.Place]] = true;
        }

        // a splice needs the edge it sits on, whichever way round that is drawn now
        var nodeOf = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < NodeEdges.Count; i++)
        {
            if (NodeEdges[i].Segments is [var only])
            {
                nodeOf.TryAdd(only.Id, i);
            }
        }

        var spliceNode = new int[Plan.Splices.Length];
        for (var s = 0; s < Plan.Splices.Length; s++)
        {
            spliceNode[s] = nodeOf.TryGetValue(Plan.Splices[s].Segment, out var node) ? node : Math.Min(1, NodePlaces.Count - 1);
            keep[spliceNode[s]] = true;
        }

        var children = new int[NodePlaces.Count];
        var alive = (bool[])keep.Clone();
        for (var i = NodePlaces.Count - 1; i > 0; i--)
        {
            if (alive[i])
            {
                alive[NodeParents[i]] = true;
                children[NodeParents[i]]++;
            }
        }

        // a place stays where a card stands, a splice sits on its edge or one follows
        var busy = new bool[NodePlaces.Count];
        foreach (var card in Cards)
        {
            busy[index[card.Place]] = true;
        }

        foreach (var node in spliceNode)
        {
            busy[node] = true;
            if (node > 0)
            {
                busy[NodeParents[node]] = true;
            }
        }

        var map = new int[NodePlaces.Count];
        var (oldPlaces, oldParents, oldEdges) = (NodePlaces.ToArray(), NodeParents.ToArray(), NodeEdges.ToArray());
        NodePlaces.Clear();
        NodeParents.Clear();
        NodeEdges.Clear();
        var pending = new Dictionary<int, List<Segment>>();
        for (var i = 0; i < oldPlaces.Length; i++)
        {
            if (!alive[i])
            {
                map[i] = -1;
                continue;
            }

            // what was left out above has this one place behind it
            var segments = i > 0 && pending.TryGetValue(oldParents[i], out var above) ? above : [];
            segments.AddRange(oldEdges[i].Segments);
            if (i > 0 && children[i] == 1 && !busy[i] && (isBare || places.GetValueOrDefault(oldPlaces[i])?.Branch is null) && segments.Count > 0)
            {
                pending[i] = segments;
                map[i] = map[oldParents[i]];
                continue;
            }

            map[i] = NodePlaces.Count;
            NodePlaces.Add(oldPlaces[i]);
            NodeParents.Add(i == 0 ? -1 : map[oldParents[i]]);
            NodeEdges.Add(new([.. segments]));
        }

        foreach (var card in Cards)
        {
            card.Node = map[index[card.Place]];
        }

        for (var s = 0; s < Plan.Splices.Length; s++)
        {
            var splice = Plan.Splices[s];
            var node = spliceNode[s];
            var edge = oldEdges[node].Segments.Length > 0 ? oldEdges[node].Segments[0] : null;
            var share = edge?.LengthMm is > 0 and var length ? Math.Clamp(splice.AtMm / length, 0, 1) : 0.5;
            Splices.Add((splice, map[node], edge is not null && edge.From == oldPlaces[node] ? 1 - share : share));
        }
    }
}
