using System.Collections.Immutable;
using HarnessDraw.Drawing;

namespace HarnessDraw.Sheets;

/// <summary>Puts the parts of a fitted wall chart on its sheet, from the body's outline at the back to the lettering.</summary>
internal static class WallChartPainter
{
    public static ImmutableArray<Item> Paint(ChartFit fit, bool blackInk)
    {
        var (dx, dy) = (fit.MoveX, fit.MoveY);
        var items = ImmutableArray.CreateBuilder<Item>();
        items.Add(WallChartBody.Paint(fit, blackInk));
        items.AddRange(fit.Frame.Items);
        items.Add(WallChartLanes.Bands(fit.Problem, fit.Chart, dx, dy, blackInk));
        items.Add(WallChartLanes.Lanes(fit.Problem, fit.Chart, dx, dy, blackInk));
        var pen = new ChartPen(blackInk);
        var cards = new WallChartCards(fit.Problem, pen, fit.Scale is not null);
        foreach (var card in fit.Chart.Cards)
        {
            cards.Card(card, dx, dy);
        }

        if (fit.Chart.Table is { } table)
        {
            cards.Table(table, dx, dy);
        }

        items.Add(pen.Group("cards"));
        pen = new ChartPen(blackInk);
        var marks = new WallChartMarks(fit.Problem, fit.Chart, pen, dx, dy, fit.Scale is not null);
        marks.Lengths();
        marks.Splices();
        marks.Cuts();
        marks.Flags();
        items.Add(pen.Group("marks"));
        pen = new ChartPen(blackInk);
        for (var i = 0; i < fit.Panels.Count; i++)
        {
            var (box, shape) = fit.PanelPlaces[i];
            fit.Panels[i].Shapes[shape].Draw(pen, box);
        }

        items.Add(pen.Group("panels"));
        return items.ToImmutable();
    }
}
