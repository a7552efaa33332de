using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

// panels that nearly stand under or beside one another
internal sealed partial class ChartFit
{
    private const double MostShiftMm = 12;

    // single words and lines belong to the vehicle, not to a column of panels
    private const double LeastBlockMm = 14;

    /// <summary>Brings the edges of panels into line with those that were placed before them, where the room is free.</summary>
    private void Align()
    {
        var inner = Frame.Inner.Grow(-0.5);
        ImmutableArray<Box> solid = [Frame.TitleBox.Grow(2), .. Chart.Occupied.Select(b => b.Move(MoveX, MoveY).Grow(1))];
        var places = PanelPlaces.ToArray();
        for (var i = 1; i < places.Length; i++)
        {
            if (places[i].Box.Height < LeastBlockMm)
            {
                continue;
            }

            var before = places[..i].Where((p, k) => k == 0 || p.Box.Height >= LeastBlockMm).ToArray();
            foreach (var x in Near([.. before.Select(p => p.Box.X)], places[i].Box.X))
            {
                Move(i, places[i].Box with { X = x });
            }

            foreach (var y in Near([.. before.Select(p => p.Box.Y)], places[i].Box.Y))
            {
                Move(i, places[i].Box with { Y = y });
            }
        }

        PanelPlaces = places;

        void Move(int i, Box to)
        {
            if (inner.Contains(to) && !solid.Any(to.Overlaps) && !places.Where((_, k) => k != i).Any(p => p.Box.Grow(2).Overlaps(to)))
            {
                places[i].Box = to;
            }
        }

        // the nearest edge last, so that it stays where several are free
        static IEnumerable<double> Near(ImmutableArray<double> edges, double own) =>
            edges.Where(e => Math.Abs(e - own) < MostShiftMm).OrderByDescending(e => Math.Abs(e - own));
    }
}
