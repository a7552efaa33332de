using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;

namespace HarnessDraw.Sheets;

/// <summary>Puts the parts of a fitted wall chart on its sheet, from the body's outline at the back to the lettering.</summary>
internal static class WallChartPainter
{
    public static ImmutableArray<Item> Paint(ChartFit fit, bool blackInk)
    {
        var (dx, dy) = (fit.MoveX, fit.MoveY);
        var items = ImmutableArray.CreateBuilder<Item>();
        items.Add(Body(fit, blackInk));
        items.AddRange(fit.Frame.Items);
        items.Add(WallChartLanes.Bands(fit.Problem, fit.Chart, dx, dy, blackInk));
        items.Add(WallChartLanes.Lanes(fit.Problem, fit.Chart, dx, dy, blackInk));
        var pen = new ChartPen(blackInk);
        var cards = new WallChartCards(fit.Problem, pen);
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
        var marks = new WallChartMarks(fit.Problem, fit.Chart, pen, dx, dy);
        marks.Lengths();
        marks.Splices();
        marks.Cuts();
        marks.Flags();
        items.Add(pen.Group("marks"));
        pen = new ChartPen(blackInk);
        for (var i = 0; i < fit.Panels.Count; i++)
        {
            fit.Panels[i].Draw(pen, fit.PanelBoxes[i]);
        }

        items.Add(pen.Group("panels"));
        return items.ToImmutable();
    }

    private static GroupItem Body(ChartFit fit, bool blackInk)
    {
        var pen = new ChartPen(blackInk);
        var lines = fit.Problem.Subject.Plan.Harness.Layout.Outline;
        if (!lines.IsEmpty)
        {
            var (mapX, mapY) = Warps(fit);
            foreach (var line in lines)
            {
                var points = new List<Point>();
                foreach (var p in line.Points)
                {
                    points.Add(new(mapX.Map(-p.Xmm), mapY.Map(-p.Ymm)));
                }

                var stroke = blackInk ? new Stroke(Ink.Black, 0.35) { DashMm = [0.35, 1.6] } : new Stroke(Ink.Hairline, 0.7);
                var outline = Outline.Polyline(points, line.Closed);
                pen.Add(new PathItem(outline) { Role = ItemRole.Backdrop, Stroke = stroke, Fill = line.Closed && !blackInk && line.What == "body" ? Ink.BodyFill : null });
            }
        }

        return new GroupItem([new GroupItem(pen.Group("x").Items) { Clip = fit.Frame.Border.Frame.Grow(-0.5) }]) { Name = "body", Role = ItemRole.Backdrop };
    }

    private static (BodyWarp X, BodyWarp Y) Warps(ChartFit fit)
    {
        var xs = new List<(double, double)>();
        var ys = new List<(double, double)>();
        foreach (var card in fit.Chart.Cards)
        {
            var place = fit.Problem.Subject.PlaceAt(fit.Problem.Subject.Cards[card.Card].Node);
            xs.Add((-place.Xmm, card.Box.Centre.X + fit.MoveX));
            ys.Add((-place.Ymm, card.Box.Centre.Y + fit.MoveY));
        }

        return (BodyWarp.Fit(xs), BodyWarp.Fit(ys));
    }
}
