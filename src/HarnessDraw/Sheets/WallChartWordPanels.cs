using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The blocks beside a wall chart that are words of the plan alone, made once for all tries: name, cautions, waivers, how the vehicle lies.</summary>
internal sealed class WallChartWordPanels
{
    private const double Cap = WallChartStyle.TextMm;
    private readonly Plan plan;

    public WallChartWordPanels(Plan plan, ChartPart? part, ChangeMarks? changes)
    {
        this.plan = plan;
        Title = TitleOf(10, 1).Or(TitleOf(10, 2), TitleOf(10, 3), TitleOf(7, 1), TitleOf(7, 2)) with { Name = "title" };
        var (boxed, further) = (WallChartTexts.Boxed(plan), WallChartTexts.Further(plan));
        Cautions = CautionsOf(118).Or(CautionsOf(150), CautionsOf(190), CautionsOf(95)) with { Name = "cautions" };
        ChartPanel CautionsOf(double leastMm) => WallChartWordPanels.CautionsOf(boxed, further, leastMm);
        ImmutableArray<ChartPanel> waivers = plan.Harness.Waivers.IsEmpty || part is { Number: > 1 } ? [] : [WaiversOf() with { Name = "waivers" }];
        ImmutableArray<ChartPanel> charts = part is null ? [] : [ChartsOf(part, 1).Or(ChartsOf(part, 2), ChartsOf(part, 3), ChartsOf(part, 5)) with { Name = "charts" }];
        // a chart on which nothing has changed is the one on the wall: the sheet of changes says so
        ImmutableArray<ChartPanel> changed = changes is null or { Lines.IsEmpty: true } ? [] : [ChangesOf(changes) with { Name = "changes" }];
        Others = [.. charts, .. changed, .. waivers, Words("RIGHT SIDE", 0.6, 0) with { Name = "right" }, Words("LEFT SIDE", 0.6, 1) with { Name = "left" }, Front() with { Name = "front" }];
    }

    /// <summary>The vehicle's name; so many of its shapes, the first ones, are in the largest letters.</summary>
    public ChartPanel Title { get; }
    public const int LargeTitles = 3;
    public ChartPanel Cautions { get; }
    public ImmutableArray<ChartPanel> Others { get; }

    // the name in as many lines as asked; more than one, and what is drawn of the vehicle is wrapped below it too
    private ChartPanel TitleOf(double capMm, int lines)
    {
        const double UnderCap = 5;
        var (vehicle, drawn) = (plan.Harness.Vehicle.ToUpperInvariant(), plan.Harness.Title);
        var under = lines == 1 ? WallChartStyle.Width(drawn, UnderCap) : TextFit.NarrowestMm(drawn, 2, UnderCap, FaceWeight.Medium);
        var widest = Math.Max(TextFit.NarrowestMm(vehicle, lines, capMm, FaceWeight.Bold), under);
        var width = Math.Clamp(widest + 1, 60, 330);
        var names = Lines(vehicle, lines, width, capMm, FaceWeight.Bold);
        var unders = Lines(drawn, Math.Min(lines, 2), width, UnderCap, FaceWeight.Medium);
        var (step, underStep) = (capMm * 1.35, UnderCap * 1.45);
        var last = (capMm * 1.05) + ((names.Length - 1) * step);
        return ChartPanel.Of(width, last + 10 + ((unders.Length - 1) * underStep), 0, 0, (pen, box) =>
        {
            for (var i = 0; i < names.Length; i++)
            {
                pen.Text(names[i], box.X, box.Y + (capMm * 1.05) + (i * step), capMm, FaceWeight.Bold);
            }

            for (var i = 0; i < unders.Length; i++)
            {
                pen.Text(unders[i], box.X, box.Y + last + 8.4 + (i * underStep), UnderCap);
            }
        });
    }

    private static ImmutableArray<string> Lines(string text, int most, double width, double capMm, FaceWeight weight)
    {
        var lines = TextFit.Wrap(text, width, capMm, weight);
        return lines.Length <= most ? lines : [.. lines.Take(most - 1), TextFit.Ellipsis(string.Join(' ', lines.Skip(most - 1)), width, capMm, weight)];
    }

    // seen from above: the words that say how the vehicle lies
    private static ChartPanel Words(string words, double x, double y) =>
        ChartPanel.Of(WallChartStyle.Width(words, 3.5, FaceWeight.Bold) + 2, 7, x, y, (pen, box) => pen.Text(words, box.X + 1, box.Y + 5.2, 3.5, FaceWeight.Bold, colour: Ink.Secondary));

    private static ChartPanel Front() => ChartPanel.Of(WallChartStyle.Width("FRONT", 7, FaceWeight.Bold) + 17, 14, 0, 0.5, (pen, box) =>
    {
        var y = box.Centre.Y;
        pen.Polygon(Ink.Black, 0, ItemRole.Edge, new(box.X, y), new(box.X + 7, y - 6), new(box.X + 7, y - 2.6), new(box.X + 13, y - 2.6), new(box.X + 13, y + 2.6), new(box.X + 7, y + 2.6), new(box.X + 7, y + 6));
        pen.Text("FRONT", box.X + 15.5, y + 3.5, 7, FaceWeight.Bold);
    });

    private static ChartPanel CautionsOf(ImmutableArray<(string Headline, string Sentence)> cautions, ImmutableArray<string> others, double leastMm)
    {
        var width = Math.Max(leastMm, cautions.Max(c => WallChartStyle.Width(c.Headline, 5, FaceWeight.Bold)) + 19);
        var boxed = cautions.Select(c => (c.Headline, Lines: TextFit.Wrap(c.Sentence, width - 20, Cap))).ToList();
        var further = others.Select(t => TextFit.Wrap(t, width - 9, Cap)).ToList();
        var boxHeight = 4 + boxed.Sum(b => 9.5 + (b.Lines.Length * 4));
        var height = boxHeight + 3 + further.Sum(f => (f.Length * 4) + 0.8);
        return ChartPanel.Of(width, height, 1, 0.55, (pen, box) =>
        {
            pen.Box(new Box(box.X + 0.5, box.Y + 0.5, width - 1, boxHeight - 1), 1, 1.5, Ink.Paper, pen.BlackInk ? null : Ink.Caution);
            var y = box.Y + 3;
            foreach (var (headline, lines) in boxed)
            {
                Triangle(pen, box.X + 4, y + 0.6);
                pen.Text(headline, box.X + 14.5, y + 6, 5, FaceWeight.Bold, colour: pen.BlackInk ? null : Ink.Caution);
                y += 10;
                foreach (var line in lines)
                {
                    pen.Text(line, box.X + 14.5, y + 1.2, Cap);
                    y += 4;
                }

                y -= 0.5;
            }

            y = box.Y + boxHeight + 5;
            for (var i = 0; i < further.Count; i++)
            {
                pen.Text($"{i + 4}", box.X + 2, y, Cap, FaceWeight.Bold);
                foreach (var line in further[i])
                {
                    pen.Text(line, box.X + 8, y, Cap);
                    y += 4;
                }

                y += 0.8;
            }
        });
    }

    private static void Triangle(ChartPen pen, double x, double y)
    {
        var colour = pen.BlackInk ? Ink.Black : Ink.Caution;
        pen.Add(new PathItem(Outline.Polyline([new(x, y + 6.4), new(x + 3.7, y), new(x + 7.4, y + 6.4)], closed: true)) { Role = ItemRole.Edge, Stroke = new(colour, 0.5) });
        pen.Line(x + 3.7, y + 2.2, x + 3.7, y + 4.2, 0.6, colour);
        pen.Circle(new(x + 3.7, y + 5.3), 0.38, 0, colour);
    }

    // What each of several charts shows; this one is in bold, the more there are the fewer branches of each are named. Of very many only the first lists all: a list on every
    // chart that grows with their number would leave ever less room for wires, and so make ever more of them.
    private static ChartPanel ChartsOf(ChartPart part, int columns)
    {
        const double ColumnMm = 100;
        const int MostListed = 24;
        var most = part.Of <= 8 ? 40 : part.Of <= MostListed ? 3 : 2;
        var listsAll = part.Of <= MostListed || part.Number == 1;
        var lines = part.Branches.Select((branches, i) => (Branches: branches, Number: i + 1)).Where(c => listsAll || Math.Abs(c.Number - part.Number) <= 1)
            .SelectMany(c => TextFit.Wrap(Named(c.Branches, most), ColumnMm - 14, Cap).Select((line, k) => (Number: k == 0 ? $"{c.Number}" : "", Line: line, IsThis: c.Number == part.Number))).ToList();
        lines.AddRange(listsAll ? [] : [("", "All charts are listed on chart 1.", false)]);
        var rows = (lines.Count + columns - 1) / columns;
        return ChartPanel.Of(columns * ColumnMm, 14 + (rows * 4), 0, 0.3, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, $"CHART {part.Number} OF {part.Of}") + 3;
            pen.Text("Every circuit is whole on one chart.", box.X + 10, y, Cap);
            for (var i = 0; i < lines.Count; i++)
            {
                var (number, line, isThis) = lines[i];
                var (cx, cy) = (box.X + (i / rows * ColumnMm), y + 4 + (i % rows * 4));
                pen.Text(number, cx + 2, cy, Cap, FaceWeight.Bold);
                pen.Text(line, cx + 10, cy, Cap, isThis ? FaceWeight.Bold : FaceWeight.Medium);
            }
        });
    }

    private static string Named(ImmutableArray<string> branches, int most) => branches.IsEmpty ? "no branch of its own"
        : string.Join(", ", branches.Take(most)) + (branches.Length > most ? $" and {branches.Length - most} more" : "");

    private static ChartPanel ChangesOf(ChangeMarks changes)
    {
        const double Width = 100;
        const int MostGone = 6;
        var gone = changes.Lines.Where(l => l.Word == "remove").Select(l => l.Wire).ToList();
        string[] says =
        [
            "A triangle stands behind the id of a wire that has changed: ADD new, CUT cut anew, MOVE an end elsewhere.",
            .. gone.Count == 0 ? Array.Empty<string>() : [$"Taken out: {string.Join(", ", gone)}."],
        ];
        var lines = says.SelectMany(s => TextFit.Wrap(s, Width, Cap)).ToImmutableArray();
        var head = $"CHANGED SINCE {changes.From.ToUpperInvariant()}";
        return ChartPanel.Of(Width, 10 + ChartPanel.HeadRowsMm(head, Width) + (lines.Length * 4), 0, 0.3, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, head) + 3;
            foreach (var line in lines)
            {
                pen.Text(line, box.X, y, Cap);
                y += 4;
            }
        }) with
        { Elsewhere = $"{(gone.Count == 0 ? "" : gone.Count <= MostGone ? $"Taken out: {string.Join(", ", gone)}. " : $"{gone.Count} wires taken out. ")}Triangles mark changes since {changes.From}: see the sheet of changes." };
    }

    private ChartPanel WaiversOf()
    {
        const double Width = 112;
        var lines = WallChartTexts.Waivers(plan).SelectMany(w => TextFit.Wrap(w, Width, Cap)).ToImmutableArray();
        return ChartPanel.Of(Width, 10 + (lines.Length * 4), 1, 0.8, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, "WAIVERS") + 3;
            foreach (var line in lines)
            {
                pen.Text(line, box.X, y, Cap);
                y += 4;
            }
        });
    }
}
