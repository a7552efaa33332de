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
        var free = new FreeRoom(this);
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
                free.Move(places, i, places[i].Box with { X = x });
            }

            foreach (var y in Near([.. before.Select(p => p.Box.Y)], places[i].Box.Y))
            {
                free.Move(places, i, places[i].Box with { Y = y });
            }
        }

        PanelPlaces = places;

        // the nearest edge last, so that it stays where several are free
        static IEnumerable<double> Near(ImmutableArray<double> edges, double own) =>
            edges.Where(e => Math.Abs(e - own) < MostShiftMm).OrderByDescending(e => Math.Abs(e - own));
    }

    /// <summary>What the finished chart leaves free on its paper.</summary>
    private sealed class FreeRoom(ChartFit fit)
    {
        private readonly Box inner = fit.Frame.Inner.Grow(-0.5);
        private readonly ImmutableArray<Box> solid = [fit.Frame.TitleBox.Grow(2), .. fit.Chart.Occupied.Select(b => b.Move(fit.MoveX, fit.MoveY).Grow(1))];

        /// <summary>Moves a panel where neither chart nor other panels stand.</summary>
        public void Move((Box Box, int Shape)[] places, int i, Box to)
        {
            if (inner.Contains(to) && !solid.Any(to.Overlaps) && !places.Where((_, k) => k != i).Any(p => p.Box.Grow(2).Overlaps(to)))
            {
                places[i].Box = to;
            }
        }
    }
}
