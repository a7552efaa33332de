using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>
/// Draws the power network as trees from left to right: boxes for parts, fat lanes for leads, a fuse with its rating at each heavy fuse. The live side stands above the
/// ground side of the same battery.
/// </summary>
internal sealed class PowerDrawing
{
    private const double BoxMm = 44;
    private const double LeadMm = 50;
    private const double BoltedMm = 12;
    private const double FuseMm = 30;
    private const double HighMm = 19;
    private const double RowMm = 22;
    private const double BetweenMm = 5;
    private readonly Plan plan;
    private readonly ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees;
    private readonly UnitsShown units;
    private readonly double[] columns;

    public PowerDrawing(Plan plan, ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees, UnitsShown units)
    {
        (this.plan, this.trees, this.units) = (plan, trees, units);
        columns = Columns();
    }

    public double WidthMm => columns[^1];

    public double HeightMm => trees.Sum(t => Rows(t) * RowMm) + ((trees.Length - 1) * BetweenMm);

    public bool Fits(Box area) => WidthMm <= area.Width && HeightMm <= area.Height;

    public void Paint(Pen pen, Box area)
    {
        var y = area.Y;
        foreach (var tree in trees)
        {
            var live = tree.Live.Leaves * RowMm;
            Branches(pen, tree.Live, 0, area.X, y, live: true);
            var from = new Point(area.X, y + (live / 2));
            if (!tree.Ground.Children.IsEmpty)
            {
                Branches(pen, tree.Ground, 0, area.X, y + live, live: false);
                var ground = y + live + (tree.Ground.Leaves * RowMm / 2);
                Battery(pen, tree.Source, Box.FromEdges(area.X, from.Y - (HighMm / 2), area.X + BoxMm, ground + (HighMm / 2)));
            }
            else
            {
                Battery(pen, tree.Source, new Box(area.X, from.Y - (HighMm / 2), BoxMm, HighMm));
            }

            y += (Rows(tree) * RowMm) + BetweenMm;
        }
    }

    private static int Rows((Source Source, PowerNode Live, PowerNode Ground) tree) => tree.Live.Leaves + (tree.Ground.Children.IsEmpty ? 0 : tree.Ground.Leaves);

    // left edges of the boxes by depth; a column after bolted parts stands close
    private double[] Columns()
    {
        var edges = new List<double> { 0 };
        var level = trees.SelectMany(t => new[] { t.Live, t.Ground }).ToList();
        while (level.Count > 0)
        {
            var next = level.SelectMany(n => n.Children).ToList();
            var widest = level.Max(n => n.Thing.Kind == ThingKind.Fuse ? FuseMm : BoxMm);
            edges.Add(edges[^1] + widest + (next.Count == 0 ? 0 : next.Max(n => n.Wire is null ? BoltedMm : LeadMm)));
            level = next;
        }

        return [.. edges];
    }

    // gives the middle of the node's box; the first column is the battery, drawn by itself
    private double Branches(Pen pen, PowerNode node, int depth, double left, double top, bool live)
    {
        var middles = new List<double>();
        var y = top;
        foreach (var child in node.Children)
        {
            middles.Add(Branches(pen, child, depth + 1, left, y, live));
            y += child.Leaves * RowMm;
        }

        var middle = top + (node.Leaves * RowMm / 2);
        var width = node.Thing.Kind == ThingKind.Fuse ? FuseMm : BoxMm;
        var box = new Box(left + columns[depth], middle - (HighMm / 2), width, HighMm);
        for (var i = 0; i < node.Children.Length; i++)
        {
            Lead(pen, node.Children[i], box, left + columns[depth + 1], middles[i], i, live);
        }

        if (depth > 0)
        {
            Part(pen, node, box, live);
        }

        return middle;
    }

    private void Lead(Pen pen, PowerNode child, Box from, double toX, double toY, int index, bool live)
    {
        // every lead turns at the same place beside the box it leaves, so that they fan like a comb
        var turn = from.Right + 4;
        Point[] points = Math.Abs(toY - from.Centre.Y) < 0.01 ? [new(from.Right, toY), new(toX, toY)] : [new(from.Right, from.Centre.Y), new(turn, from.Centre.Y), new(turn, toY), new(toX, toY)];
        if (child.Wire is not { } wire)
        {
            pen.Add(new PathItem(Outline.Polyline(points)) { Stroke = new(Ink.Black, 1.4) });
            return;
        }

        var style = new LaneStyle(WireColour.Parse(wire.Colour)) { WidthMm = wire.AreaMm2 >= 16 ? 2 : 1.4, BlackInk = pen.BlackInk, Index = index };
        pen.Add(LanePainter.Paint(Outline.Polyline(points), style, new Tag { Wire = wire.Id, Circuit = "power" }));
        var words = turn + 2;
        var tag = new Tag { For = wire.Id };
        pen.Letters($"{wire.Id}  {wire.Colour} {wire.SizeLabel}{(wire.Awg is null ? " mm²" : "")}", words, toY - 2, TextStyle.Bold, tag);
        var length = LengthWords.Cut(plan, wire, units) ?? "length ____ mm";
        pen.Letters(length, words, toY + 4.8, TextStyle.Plain, tag);
        if (live && !child.Fused)
        {
            pen.Letters("not fused", words, toY + 9, TextStyle.Bold with { Colour = Ink.Caution }, tag);
            if (child.Run is var (mm, most))
            {
                pen.Text(LengthWords.OfMost(mm, most, units), words, toY + 13.2, LeadMm - 7, TextStyle.Plain with { Colour = Ink.Caution }, tag);
            }
        }
    }

    private void Part(Pen pen, PowerNode node, Box box, bool live)
    {
        if (node.Thing.Kind == ThingKind.Fuse)
        {
            Fuse(pen, node, box);
            return;
        }

        pen.Frame(box, 0.7, node.Thing.Kind == ThingKind.Alternator ? 4 : 1.2, fill: Ink.Paper);
        var name = LineBreaker.Lines($"{node.Thing.Label.ToUpperInvariant()}{(node.Thing.SideMark is { } mark ? $" {mark}" : "")}", box.Width - 4, TextStyle.Bold);
        var y = box.Y + 4.6;
        foreach (var line in name.Take(2))
        {
            pen.Letters(line, box.X + 2.6, y, TextStyle.Bold);
            y += 4.2;
        }

        foreach (var line in Facts(node, live).SelectMany(f => LineBreaker.Lines(f, box.Width - 4)).Take(name.Length > 1 ? 2 : 3))
        {
            pen.Letters(line, box.X + 2.6, y, TextStyle.Plain);
            y += 4.2;
        }
    }

    private IEnumerable<string> Facts(PowerNode node, bool live)
    {
        var pin = node.Thing.Pins.FirstOrDefault(p => p.Name == node.Pin);
        var torque = node.Thing.TorqueNm is { } nm ? $", {nm.ToString("0.#", CultureInfo.InvariantCulture)} N·m" : ", torque: maker";
        yield return pin is { Style: PinStyle.Stud } ? $"{node.Pin}: {pin.Size}{torque}" : node.Pin is { } name ? $"pin {name}" : "";
        if (live && node.ShortA is { } amps)
        {
            yield return $"short {Shown.Number(amps)} A";
        }

        if (plan.Harness.Power.Sources.FirstOrDefault(s => s.Id == node.Thing.Id)?.OutputA is { } output)
        {
            yield return $"gives {Shown.Number(output, 1)} A";
        }
    }

    private void Fuse(Pen pen, PowerNode node, Box box)
    {
        var fuse = plan.Fuses.FirstOrDefault(f => f.Id == node.Thing.Id);
        pen.Frame(box, 0.7, 1.2, fill: Ink.Paper);
        pen.Letters(LineBreaker.Lines(node.Thing.Id, box.Width - 4, TextStyle.Bold)[0], box.X + 2, box.Y + 4.4, TextStyle.Bold);
        var rating = fuse?.RatingA is { } amps ? $"{Shown.Number(amps, 1)} A" : "____ A";
        pen.Letters(rating, box.Centre.X, box.Y + 12, TextStyle.Bold.Middle.At(5));
        pen.Letters($"max {Shown.Number(fuse?.LargestA, 1)}", box.Centre.X, box.Bottom - 1.8, TextStyle.Plain.Middle);
    }

    private void Battery(Pen pen, Source source, Box box)
    {
        pen.Frame(box, 0.7, 1.2, fill: Ink.Paper);
        var thing = plan.Harness.ThingOf(source.Id);
        var y = box.Y + 5.2;
        foreach (var line in LineBreaker.Lines(thing.Label.ToUpperInvariant(), box.Width - 4, TextStyle.Bold.At(3.5)).Take(2))
        {
            pen.Letters(line, box.X + 2, y, TextStyle.Bold.At(3.5));
            y += 5;
        }

        pen.Letters($"{Shown.Number(source.NominalV, 1)} V{(source.StandsOn is null ? "" : $", in series {Shown.Number(plan.Harness.Power.LiveV(source), 1)} V")}, at {thing.Place}", box.X + 2, y - 0.2, TextStyle.Plain);
        var ground = plan.Harness.Power.Ground == GroundPolarity.Negative;
        pen.Letters(ground ? "+" : "−", box.Right - 2, box.Y + (HighMm / 2) + 2.4, TextStyle.Bold.Right.At(5));
        if (box.Height > HighMm + 1)
        {
            pen.Letters(ground ? "−" : "+", box.Right - 2, box.Bottom - (HighMm / 2) + 2.4, TextStyle.Bold.Right.At(5));
            pen.Letters("ground side", box.X + 2, box.Bottom - 2.4, TextStyle.Plain);
        }
    }
}
