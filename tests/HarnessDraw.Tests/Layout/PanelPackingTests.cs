using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Tests.Layout;

public class PanelPackingTests
{
    private const int CellMm = 5;
    private const int Columns = 70;
    private const int Rows = 45;

    /// <summary>Every place of the grid is tried: none that is free lies nearer (in cells across and down) to where the panel would rather stand.</summary>
    [Fact]
    public void A_panel_stands_at_the_free_place_nearest_to_where_it_would_rather_stand()
    {
        var random = new Random(11);
        var found = 0;
        for (var round = 0; round < 300; round++)
        {
            var packing = new PanelPacking(new Box(10, 20, Columns * CellMm, Rows * CellMm));
            var taken = new bool[Columns, Rows];
            for (var k = random.Next(12); k > 0; k--)
            {
                var (c, r, w, h) = (random.Next(Columns), random.Next(Rows), random.Next(1, 16), random.Next(1, 12));
                packing.Take(new Box(10 + (c * CellMm) + 1, 20 + (r * CellMm) + 1, (w * CellMm) - 2, (h * CellMm) - 2));
                for (var x = c; x < Math.Min(Columns, c + w); x++)
                {
                    for (var y = r; y < Math.Min(Rows, r + h); y++)
                    {
                        taken[x, y] = true;
                    }
                }
            }

            var (wide, high) = (random.Next(1, 30), random.Next(1, 20));
            var panel = new Panel(wide * CellMm, high * CellMm, random.NextDouble(), random.NextDouble());
            var best = (from c in Enumerable.Range(0, Columns - wide + 1) from r in Enumerable.Range(0, Rows - high + 1) where IsFree(taken, c, r, wide, high) select Off(panel, c, r)).DefaultIfEmpty(double.NaN).Min();
            var place = packing.Place([[panel]]);
            Assert.Equal(double.IsNaN(best), place is null);
            if (place is [var (box, _)])
            {
                var (c, r) = ((int)Math.Round((box.X - 10) / CellMm), (int)Math.Round((box.Y - 20) / CellMm));
                Assert.True(IsFree(taken, c, r, wide, high), $"round {round}: something stands at {c}, {r}");
                Assert.Equal(best, Off(panel, c, r), 9);
                found++;
            }
        }

        Assert.InRange(found, 150, 299);
    }

    /// <summary>The same obstacles with some more and some less, as on the next chart tried: with the places of the last one known nothing comes out elsewhere.</summary>
    [Fact]
    public void Known_places_change_no_place()
    {
        var random = new Random(12);
        var (stayed, moved) = (0, 0);
        for (var round = 0; round < 300; round++)
        {
            var boxes = Enumerable.Range(0, random.Next(4, 14)).Select(_ => new Box(10 + random.Next(300), 20 + random.Next(200), random.Next(5, 90), random.Next(5, 70))).ToList();
            IReadOnlyList<IReadOnlyList<Panel>> panels = [.. Enumerable.Range(0, random.Next(1, 6)).Select(_ => Shapes())];
            var before = Packing(boxes).Place(panels);
            boxes.RemoveAt(random.Next(boxes.Count));
            boxes.Add(new Box(10 + random.Next(300), 20 + random.Next(200), random.Next(5, 40), random.Next(5, 40)));
            var afresh = Packing(boxes).Place(panels);
            Assert.Equal(afresh, Packing(boxes).Place(panels, last: before ?? []));
            for (var i = 0; i < panels.Count && before is not null && afresh is not null; i++)
            {
                (stayed, moved) = before[i] == afresh[i] ? (stayed + 1, moved) : (stayed, moved + 1);
            }
        }

        // both what stays and what goes elsewhere was met
        Assert.True(stayed > 100 && moved > 100, $"{stayed} stayed, {moved} moved");

        IReadOnlyList<Panel> Shapes()
        {
            var (x, y) = (random.NextDouble(), random.NextDouble());
            return [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => new Panel(random.Next(20, 90), random.Next(15, 70), x, y))];
        }

        static PanelPacking Packing(List<Box> boxes)
        {
            var packing = new PanelPacking(new Box(10, 20, Columns * CellMm, Rows * CellMm));
            boxes.ForEach(packing.Take);
            return packing;
        }
    }

    private static double Off(Panel panel, int c, int r) =>
        Math.Abs(c - (panel.WantX * (Columns - (panel.WidthMm / CellMm)))) + Math.Abs(r - (panel.WantY * (Rows - (panel.HeightMm / CellMm))));

    private static bool IsFree(bool[,] taken, int column, int row, int wide, int high)
    {
        for (var c = column; c < column + wide; c++)
        {
            for (var r = row; r < row + high; r++)
            {
                if (taken[c, r])
                {
                    return false;
                }
            }
        }

        return true;
    }
}
