using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Layout;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The blocks beside the chart that speak of its lanes and letters: connector views, lane lists, power, legend.</summary>
internal sealed class WallChartPanels(WallChartProblem problem, ChartOutline chart, bool blackInk)
{
    private const double Cap = WallChartStyle.TextMm;
    private const double RowMm = 5.4;

    /// <summary>All panels of the chart, those of words among them, in the order in which they look for room.</summary>
    /// <param name="words">The panels of words.</param>
    /// <param name="part">Which of several charts this is; what concerns the whole harness stands on the first.</param>
    public List<ChartPanel> All(WallChartWordPanels words, ChartPart? part = null)
    {
        var isFirst = part is null or { Number: 1 };
        List<ChartPanel> panels = [words.Title, words.Cautions];
        if (isFirst && Views() is { } views)
        {
            panels.Add(views with { Name = "views" });
        }

        if (!chart.Cuts.IsEmpty)
        {
            panels.AddRange(chart.Cuts.Select((c, i) => LaneList(c, i, 32).Or(LaneList(c, i, 20), LaneList(c, i, 12), LaneList(c, i, 16), LaneList(c, i, 48)) with { Name = $"cut {i + 1}" }));
        }

        if (isFirst && WallChartPower.Panel(problem) is { } power)
        {
            panels.Add(power with { Name = "power" });
        }

        var colours = Colours();
        panels.Add(Legends(colours) with { Name = "legend" });
        if (Letters() is { Count: > 0 } letters)
        {
            var head = problem.Subject.GroundsAtLoads.Count == 0 ? "OPTIONS" : problem.Style.Options.Any() ? "OPTIONS AND GROUNDS" : "GROUNDS";
            // as wide as the longest mark of a ground point
            var markMm = problem.Subject.GroundsAtLoads.Keys.Select(m => WallChartStyle.Width(m, Cap, FaceWeight.Bold) + 1.5).Append(10).Max();
            panels.Add(LetterList(head, letters, markMm, 1).Or(LetterList(head, letters, markMm, 2)) with { Name = "letters" });
        }

        panels.AddRange(words.Others);
        return panels;
    }

    private ChartPanel? Views()
    {
        if (problem.Part is not { } part || problem.Subject.Mate is not { } mate)
        {
            return null;
        }

        var wires = problem.Subject.Whole.Pins.GroupBy(p => p.Pin, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Wire, StringComparer.Ordinal);
        var letters = part.Cavities.ToDictionary(c => c.Name, c => new CavityLetters(c.Name, null), StringComparer.Ordinal);
        var faces = new ConnectorFaceFitter(part, letters);
        var face = faces.Fit(56, 92, withWires: false) ?? faces.Fit(110, 150, withWires: false);
        if (face is null)
        {
            return null;
        }

        var head = $"{mate.Label}, BOTH VIEWS OF THE BAY HALF".ToUpperInvariant();
        var width = Math.Max(112, (2 * face.WidthMm) + 8);
        var rowsMm = ChartPanel.HeadRowsMm(head, width);
        return ChartPanel.Of(width, face.HeightMm + 24 + rowsMm, 1, 0, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, head) + 2;
            var gap = (width - (2 * face.WidthMm)) / 3;
            View(pen, face, wires, box.X + gap, y, mating: false, "WIRE-ENTRY SIDE", "as you insert terminals");
            View(pen, face, wires, box.X + (2 * gap) + face.WidthMm, y, mating: true, "MATING SIDE", "as you probe");
        }) with
        { Elsewhere = $"Both views of {mate.Label.ToUpperInvariant()} are on the connector sheets." };
    }

    private void View(ChartPen pen, ConnectorFace face, Dictionary<string, Wire> wires, double x, double y, bool mating, string words, string use)
    {
        pen.Box(new Box(x + (face.WidthMm / 2) - 6, y - 1.8, 12, 1.8), 0.5, 0, Ink.QuietFill);
        pen.Box(new Box(x, y, face.WidthMm, face.HeightMm), 0.7, 2, Ink.Paper);
        var inner = new Pen(pen.BlackInk);
        foreach (var cavity in face.Cavities)
        {
            var wire = wires.GetValueOrDefault(cavity.Part.Name);
            var tag = new Tag { Cavity = $"{problem.Subject.Mate!.Id}:{cavity.Part.Name}", For = wire?.Id };
            CavityPainter.Paint(inner, new(x + face.X(cavity, mating), y + cavity.Centre.Y), cavity, new(cavity.Part.Name, null), wire?.Colour, tag, showWire: false);
        }

        pen.AddRange(inner.Items);
        pen.Text(words, x + (face.WidthMm / 2), y + face.HeightMm + 6, 3.5, FaceWeight.Bold, TextAnchor.Middle);
        pen.Text(use, x + (face.WidthMm / 2), y + face.HeightMm + 10.6, Cap, anchor: TextAnchor.Middle);
    }

    private ChartPanel LaneList(PlacedCut cut, int number, int mostRows)
    {
        var codeMm = problem.Style.IdMm + 1.6 + 5.6 + 1.4 + problem.Style.CodeMm + 4;
        var lanes = cut.Lanes.Length;
        var most = Math.Clamp(lanes, 1, lanes > 60 ? mostRows * 3 / 2 : mostRows);
        var letter = ((char)('a' + number)).ToString();
        var head = "LANE ORDER AT CUT " + letter;
        var width = Math.Max(Math.Max(WallChartStyle.Width(head, 3.5, FaceWeight.Bold) + 0.5, (lanes + most - 1) / most * codeMm), WallChartStyle.Width(HeadOf(cut)) + 9);
        // as near to its cut as there is room
        var (wantX, wantY) = (Share(cut.To.X - chart.Room.Bounds.X, chart.Room.Bounds.Width), Share(cut.To.Y - chart.Room.Bounds.Y, chart.Room.Bounds.Height));
        return ChartPanel.Of(width, 16 + (most * 4), wantX, wantY, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, head);
            pen.Circle(new(box.X + 2.6, y + 2.2), 2.4, 0.4, Ink.Paper);
            pen.Text(letter, box.X + 2.6, y + 3.15, Cap, FaceWeight.Bold, TextAnchor.Middle);
            pen.Text(HeadOf(cut), box.X + 6.2, y + 3.45, Cap);
            for (var k = 0; k < lanes; k++)
            {
                var wire = problem.Subject.Lanes[cut.Lanes[k]].Wire;
                var (cx, cy) = (box.X + (k / most * codeMm), y + 9.5 + (k % most * 4));
                pen.Text(wire.Id, cx, cy, Cap, FaceWeight.Bold);
                pen.AddRange(Swatch.Paint(WireColour.Parse(wire.Colour), new Box(cx + problem.Style.IdMm + 1.6, cy - 2.5, 5.6, 2.5), blackInk));
                pen.Text(wire.Colour, cx + problem.Style.IdMm + 8.6, cy, Cap);
            }
        });
    }

    private static double Share(double part, double all) => all > 0 ? Math.Clamp(part / all, 0, 1) : 0.5;

    // in a band the lanes are not counted by eye
    private string HeadOf(PlacedCut cut) => (problem.Style.Metrics.IsBand(cut.Lanes.Length) ? $"{cut.Lanes.Length} " : "") + (cut.IsHorizontalBundle ? "from the top" : "from the left");

    private string DistanceWords() => !problem.Subject.Whole.TrueToScale ? "Order and branching are true, distances are not to scale."
        : "Order and branching are true. Where the title block names a scale, lengths between places are drawn to it but for those whose dimension line is broken. Places are drawn wider than they are.";

    // base and tracer colours that are drawn, in the order of the codes
    private List<ColourCode> Colours()
    {
        var drawn = new HashSet<string>(StringComparer.Ordinal);
        foreach (var lane in problem.Subject.Lanes)
        {
            drawn.Add(lane.Wire.Colour);
        }

        foreach (var card in problem.Subject.Cards)
        {
            foreach (var stub in card.Stubs)
            {
                drawn.Add(stub.Wire.Colour);
            }
        }

        return [.. drawn.SelectMany(c => c.Split('/')).Distinct(StringComparer.Ordinal)
            .Select(c => ColourCodes.Find(c.Trim())).OfType<ColourCode>().OrderBy(c => ColourCodes.All.IndexOf(c)).ThenBy(c => c.Code, StringComparer.Ordinal)];
    }

    // what a crossing is, is said where all else has found its place
    private ChartPanel Legends(List<ColourCode> colours, string more = "", bool crossing = false) =>
        Legend(196, colours, more, crossing).Or(Legend(138, colours, more, crossing), Legend(258, colours, more, crossing), Legend(104, colours, more, crossing)) with
        {
            Saying = words => Legends(colours, $" {words}", crossing),
            Fuller = chart.HasCrossings && !crossing ? Legends(colours, more, crossing: true) : null,
        };

    private ChartPanel Legend(double width, List<ColourCode> colours, string more, bool crossing)
    {
        const double ColourMm = 40;
        const double SymbolMm = 58;
        var two = problem.Subject.Lanes.Find(l => l.Wire.Colour.Contains('/', StringComparison.Ordinal)).Wire?.Colour;
        var symbols = Symbols();
        symbols.AddRange(crossing ? [("crossing, no join", Crossing)] : []);
        var sentences = TextFit.Wrap($"{DistanceWords()} Each wire keeps its lane. Stations count from the root of the harness. Lengths in cards are cut lengths, mm. Areas in mm². Wires of 4 mm² and more have a wide lane.{more}", width, Cap);
        var colourColumns = width < 150 ? 1 : 2;
        var symbolColumns = Math.Max(1, (int)((width - (colourColumns * ColourMm) - 4) / SymbolMm));
        // the sample of a tracer is wider than one column: below the colours, or below everything
        var twoRow = colourColumns > 1 ? Rows(colours.Count, colourColumns) : Math.Max(Rows(colours.Count, colourColumns), Rows(symbols.Count, symbolColumns));
        var rows = Math.Max(twoRow + (two is null ? 0 : 1), Rows(symbols.Count, symbolColumns));
        var height = 12 + (rows * RowMm) + 24 + (sentences.Length * 4.2);
        return ChartPanel.Of(width, height, 0.5, 1, (pen, box) =>
        {
            var top = ChartPanel.Head(pen, box, "LEGEND") + 3;
            for (var i = 0; i < colours.Count; i++)
            {
                var (cx, cy) = (box.X + (i % colourColumns * ColourMm), top + (i / colourColumns * RowMm));
                pen.AddRange(Swatch.Paint(new WireColour(colours[i]), new Box(cx, cy - 2.5, 8, 2.5), blackInk));
                pen.Text(colours[i].Code, cx + 10, cy, Cap, FaceWeight.Bold);
                pen.Text(TextFit.Ellipsis(colours[i].Word, ColourMm - 18, Cap), cx + 10 + Math.Max(6, WallChartStyle.Width(colours[i].Code, Cap, FaceWeight.Bold) + 1.6), cy, Cap);
            }

            if (two is not null)
            {
                var y = top + (twoRow * RowMm);
                pen.AddRange(Swatch.Paint(WireColour.Parse(two), new Box(box.X, y - 2.5, 8, 2.5), blackInk));
                pen.Text(two, box.X + 10, y, Cap, FaceWeight.Bold);
                pen.Text(WireColour.Parse(two).Words, box.X + 11.6 + WallChartStyle.Width(two, Cap, FaceWeight.Bold), y, Cap);
            }

            for (var i = 0; i < symbols.Count; i++)
            {
                var (cx, cy) = (box.X + (colourColumns * ColourMm) + 4 + (i % symbolColumns * SymbolMm), top + (i / symbolColumns * RowMm));
                symbols[i].Draw(pen, cx, cy);
                pen.Text(symbols[i].Text, cx + 10, cy, Cap);
            }

            top += rows * RowMm;
            SampleCard(pen, box.X, top);
            top += 22;
            foreach (var s in sentences)
            {
                pen.Text(s, box.X, top, Cap);
                top += 4.2;
            }
        });
    }

    private static int Rows(int count, int columns) => (count + columns - 1) / columns;

    private static ChartPanel LetterList(string head, List<(string Text, Action<ChartPen, double, double> Draw)> letters, double markMm, int columns)
    {
        var columnMm = letters.Max(l => WallChartStyle.Width(l.Text)) + markMm + 4;
        var rows = Rows(letters.Count, columns);
        var width = Math.Max(columns * columnMm, WallChartStyle.Width(head, 3.5, FaceWeight.Bold) + 0.5);
        return ChartPanel.Of(width, 9 + (rows * RowMm), 0.3, 1, (pen, box) =>
        {
            var top = ChartPanel.Head(pen, box, head) + 3;
            for (var i = 0; i < letters.Count; i++)
            {
                var (x, y) = (box.X + (i / rows * columnMm), top + (i % rows * RowMm));
                letters[i].Draw(pen, x, y);
                pen.Text(letters[i].Text, x + markMm, y, Cap);
            }
        });
    }

    // letters of options and marks of ground points, and what they stand for
    private List<(string Text, Action<ChartPen, double, double> Draw)> Letters()
    {
        var list = new List<(string, Action<ChartPen, double, double>)>();
        foreach (var (words, letter) in problem.Style.Options)
        {
            list.Add((words, (pen, x, y) => pen.Lozenge(letter, new(x + 4, y - 1.2), 2.3, 2.5)));
        }

        foreach (var (mark, ground) in problem.Subject.GroundsAtLoads)
        {
            var side = ground.SideMark is { } s ? $" {s}" : "";
            var on = ground.Surface is { } surface ? $", on {surface}" : "";
            list.Add(($"{ground.Label}{side}{on}", (pen, x, y) => pen.Text(mark, x, y, Cap, FaceWeight.Bold)));
        }

        return list;
    }

    private void SampleCard(ChartPen pen, double x, double y)
    {
        var lane = problem.Subject.Lanes.Count > 0 ? problem.Subject.Lanes[0].Wire : null;
        if (lane is null)
        {
            return;
        }

        var columns = CardColumns.Of([new(lane, "1")], 58);
        var width = columns.CardMm;
        pen.Box(new Box(x, y, width, 12.6), 0.35, 1, Ink.Paper);
        pen.Text("LOAD", x + 2, y + 5.6, 4, FaceWeight.Bold);
        pen.Line(x, y + 7, x + width, y + 7, 0.35);
        var right = x + width - columns.PinMm;
        pen.Line(right, y + 7, right, y + 12.6, 0.25);
        var (rowY, capY) = (y + 11, y + 16.6);
        pen.Text("1", right + (columns.PinMm / 2), rowY, Cap, FaceWeight.Bold, TextAnchor.Middle);
        pen.Text(lane.Id, x + 1.6, rowY, Cap, FaceWeight.Bold);
        pen.AddRange(Swatch.Paint(WireColour.Parse(lane.Colour), new Box(x + 3.4 + columns.IdMm, rowY - 2.5, 5.6, 2.5), blackInk));
        pen.Text(lane.Colour, x + 10.6 + columns.IdMm, rowY, Cap);
        var cut = right - 1.6 - columns.OptionMm;
        pen.Text(WallChartStyle.CutText(lane), cut, rowY, Cap, anchor: TextAnchor.End);
        pen.Text(lane.SizeLabel, cut - columns.CutMm - 2.4, rowY, Cap, anchor: TextAnchor.End);
        pen.Text("wire", x + 1.6, capY, Cap, colour: Ink.Secondary);
        pen.Text("colour", x + 3.4 + columns.IdMm, capY, Cap, colour: Ink.Secondary);
        pen.Text("mm²", cut - columns.CutMm - 1.4, capY, Cap, anchor: TextAnchor.End, colour: Ink.Secondary);
        pen.Text("cut", cut, capY, Cap, anchor: TextAnchor.End, colour: Ink.Secondary);
        pen.Text("pin", right + (columns.PinMm / 2), capY, Cap, anchor: TextAnchor.Middle, colour: Ink.Secondary);
    }

    private List<(string Text, Action<ChartPen, double, double> Draw)> Symbols()
    {
        var list = new List<(string, Action<ChartPen, double, double>)>();
        if (problem.FlagNumbers.Count > 0)
        {
            list.Add(("branch, where it leaves", (pen, x, y) => pen.Disc("1", new(x + 4, y - 1.25), 2.4)));
        }

        if (problem.Subject.Splices.Count > 0)
        {
            list.Add(("splice, mm from the root", (pen, x, y) => pen.Circle(new(x + 4, y - 1.25), 1.25, 0, Ink.Black)));
        }

        if (problem.Subject.Cards.Exists(c => c.Stubs.Exists(s => s.IsGround)))
        {
            list.Add(("ground point at the load", (pen, x, y) => pen.Ground(x + 3, y - 1.25, 1)));
        }

        if (chart.HasLengths)
        {
            list.Add(("bundle length, E estimated", (pen, x, y) =>
            {
                pen.Line(x, y - 1.25, x + 8, y - 1.25, 0.25);
                pen.Arrow(x, y - 1.25, -1, 0);
                pen.Arrow(x + 8, y - 1.25, 1, 0);
            }
            ));
        }

        if (!chart.Cuts.IsEmpty)
        {
            list.Add(("cut, see LANE ORDER", (pen, x, y) =>
            {
                pen.Circle(new(x + 4, y - 1.25), 2.3, 0.4, Ink.Paper);
                pen.Text("a", x + 4, y - 0.35, Cap, FaceWeight.Bold, TextAnchor.Middle);
            }
            ));
        }

        if (chart.HasBands)
        {
            list.Add(("band of wires, listed by cut", (pen, x, y) => pen.Box(new Box(x, y - 2.5, 8, 2.5), 0, 0, blackInk ? Ink.Black : Ink.Secondary)));
        }

        if (problem.Subject.Cards.Exists(c => c.SideMark is not null))
        {
            list.Add(("left, right of the vehicle", (pen, x, y) =>
            {
                pen.Box(new Box(x + 0.5, y - 3.1, 3.6, 3.7), 0, 0.5, Ink.Black, role: ItemRole.Plate);
                pen.Text("L", x + 2.3, y, Cap, FaceWeight.Bold, TextAnchor.Middle, Ink.Paper);
                pen.Box(new Box(x + 4.9, y - 3.1, 3.6, 3.7), 0, 0.5, Ink.Black, role: ItemRole.Plate);
                pen.Text("R", x + 6.7, y, Cap, FaceWeight.Bold, TextAnchor.Middle, Ink.Paper);
            }
            ));
        }

        if (problem.Problem.Table is not null)
        {
            foreach (var (size, radius) in Sizes())
            {
                list.Add(($"cavity {size} mm", (pen, x, y) => pen.Circle(new(x + 4, y - 1.25), radius, 0, Ink.Black)));
            }
        }

        return list;
    }

    // the lane drawn later stands clear of the one it crosses
    private void Crossing(ChartPen pen, double x, double y)
    {
        var ink = blackInk ? Ink.Black : Ink.Secondary;
        pen.Line(x, y - 1.25, x + 8, y - 1.25, 1, ink);
        pen.Line(x + 4, y - 3.2, x + 4, y + 0.7, 2, Ink.Paper);
        pen.Line(x + 4, y - 3.2, x + 4, y + 0.7, 1, ink);
    }

    private IEnumerable<(string Size, double Radius)> Sizes() => (problem.Part?.Cavities ?? [])
        .Select(c => c.Size).Distinct(StringComparer.Ordinal).OrderBy(ContactSize.Mm)
        .Select(s => (s, ContactSize.Mm(s) is var mm && mm <= 2 ? 0.8 : mm <= 3.5 ? 1.1 : mm <= 7 ? 1.5 : 1.8));
}
