using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.PowerSheets;

namespace HarnessDraw.Sheets;

/// <summary>
/// The power network as a small drawing with its leads: from each battery over studs, bars and heavy fuses to what they feed, every lead with its number, colour and size;
/// the power sheet shows the same with lengths, torque and currents.
/// </summary>
internal sealed class WallChartLeads
{
    private const double Cap = WallChartStyle.TextMm;
    private const double HighMm = 11;
    private const double RowMm = 13;
    private const double WidestIdMm = 40;
    private const double WidestMm = 60;
    private const double BoltedMm = 7;
    private const double TurnMm = 4;
    private const double RatingMm = 5;
    private readonly Plan plan;
    private readonly ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees;
    private readonly List<double> columns = [0];
    private readonly List<double> widths = [];

    private WallChartLeads(Plan plan, ImmutableArray<(Source Source, PowerNode Live, PowerNode Ground)> trees)
    {
        (this.plan, this.trees) = (plan, trees);
        for (var level = trees.SelectMany(t => new[] { t.Live, t.Ground }).ToList(); level.Count > 0;)
        {
            var next = level.SelectMany(n => n.Children).ToList();
            widths.Add(level.Max(WidthOf));
            var leads = next.Where(n => n.Wire is not null).Select(n => WallChartStyle.Width(LeadText(n.Wire!), Cap, FaceWeight.Bold) + TurnMm + 4).ToList();
            columns.Add(columns[^1] + widths[^1] + (next.Count == 0 ? 0 : leads.Count == 0 ? BoltedMm : leads.Max()));
            level = next;
        }
    }

    /// <summary>Null where no battery has a lead in the harness.</summary>
    public static ChartPanel? Panel(Plan plan)
    {
        var trees = PowerTree.Of(plan).RemoveAll(t => t.Live.Children.IsEmpty && t.Ground.Children.IsEmpty);
        if (trees.IsEmpty)
        {
            return null;
        }

        var leads = new WallChartLeads(plan, trees);
        return ChartPanel.Of(leads.columns[^1] + 1, 12 + (trees.Sum(Rows) * RowMm), 0, 1, (pen, box) => leads.Paint(pen, box));
    }

    private static int Rows((Source Source, PowerNode Live, PowerNode Ground) tree) => tree.Live.Leaves + (tree.Ground.Children.IsEmpty ? 0 : tree.Ground.Leaves);

    private static string LeadText(Wire wire) => WallChartProblem.LaneLabel(wire);

    private static string NameOf(PowerNode node) => node.Thing.Label.ToUpperInvariant() + (node.Thing.SideMark is { } side ? $" {side}" : "");

    private string RatingOf(PowerNode node) => plan.Fuses.FirstOrDefault(f => f.Id == node.Thing.Id)?.RatingA is { } amps ? $"{amps:0.#} A" : "? A";

    private static string IdOf(PowerNode node) => TextFit.Ellipsis(node.Thing.Id, WidestIdMm, Cap, FaceWeight.Bold);

    private double WidthOf(PowerNode node) => node.Thing.Kind == ThingKind.Fuse ? 5 + WallChartStyle.Width(IdOf(node), Cap, FaceWeight.Bold) + WallChartStyle.Width(RatingOf(node), RatingMm, FaceWeight.Bold)
        : Math.Min(WidestMm, 6 + Math.Max(WallChartStyle.Width(NameOf(node), Cap, FaceWeight.Bold), WallChartStyle.Width(FactOf(node))));

    private string FactOf(PowerNode node) => plan.Harness.Power.Sources.FirstOrDefault(s => s.Id == node.Thing.Id) is { } source
        ? $"{source.NominalV:0.#} V{(source.OutputA is { } amps ? $", {amps:0.#} A" : "")}"
        : node.Pin is { } pin ? node.Thing.Pins.Any(p => p.Name == pin && p.Style == PinStyle.Stud) ? $"stud {pin}" : $"pin {pin}" : "";

    private void Paint(ChartPen pen, Box box)
    {
        var y = ChartPanel.Head(pen, box, "POWER AND BOLT-IN FUSES") + 2;
        foreach (var tree in trees)
        {
            var hasGround = !tree.Ground.Children.IsEmpty;
            var live = Branches(pen, tree.Live, 0, box.X, y, isLive: true);
            y += tree.Live.Leaves * RowMm;
            var ground = hasGround ? Branches(pen, tree.Ground, 0, box.X, y, isLive: false) : live;
            y += hasGround ? tree.Ground.Leaves * RowMm : 0;
            Part(pen, tree.Live, Box.FromEdges(box.X, live - (HighMm / 2), box.X + widths[0], ground + (HighMm / 2)));
            var positive = plan.Harness.Power.Ground == GroundPolarity.Negative;
            pen.Text(positive ? "+" : "−", box.X + widths[0] - 1.4, live + 3.6, Cap, FaceWeight.Bold, TextAnchor.End);
            if (hasGround)
            {
                pen.Text(positive ? "−" : "+", box.X + widths[0] - 1.4, ground + 3.6, Cap, FaceWeight.Bold, TextAnchor.End);
            }
        }
    }

    // gives the middle of the node's own box
    private double Branches(ChartPen pen, PowerNode node, int depth, double left, double top, bool isLive)
    {
        var middle = top + (node.Leaves * RowMm / 2);
        var x = left + columns[depth];
        var box = new Box(x, middle - (HighMm / 2), depth == 0 ? widths[0] : WidthOf(node), HighMm);
        var y = top;
        var middles = new List<double>();
        foreach (var child in node.Children)
        {
            middles.Add(Branches(pen, child, depth + 1, left, y, isLive));
            y += child.Leaves * RowMm;
        }

        for (var i = 0; i < node.Children.Length; i++)
        {
            Lead(pen, node.Children[i], box, x + widths[depth], left + columns[depth + 1], middles[i], i);
        }

        if (depth > 0)
        {
            Part(pen, node, box);
        }

        return middle;
    }

    // leads of one part turn at one place beside it, like a comb
    private static void Lead(ChartPen pen, PowerNode child, Box from, double columnEnd, double toX, double toY, int index)
    {
        var turn = columnEnd + (child.Wire is null ? BoltedMm / 2 : TurnMm / 2);
        Point[] way = Math.Abs(toY - from.Centre.Y) < 0.01 ? [new(from.Right, toY), new(toX, toY)] : [new(from.Right, from.Centre.Y), new(turn, from.Centre.Y), new(turn, toY), new(toX, toY)];
        if (child.Wire is not { } wire)
        {
            pen.Add(new PathItem(Outline.Polyline(way)) { Stroke = new(Ink.Black, 1.4) });
            return;
        }

        var style = new LaneStyle(WireColour.Parse(wire.Colour)) { WidthMm = wire.AreaMm2 >= 16 ? 2 : wire.AreaMm2 >= 4 ? 1.4 : 1, BlackInk = pen.BlackInk, Index = index };
        foreach (var item in LanePainter.Paint(Outline.Polyline(way), style))
        {
            // a picture of the lead: its lane is on the chart
            pen.Add(item.Role == ItemRole.Lane ? item with { Role = ItemRole.Edge } : item);
        }

        pen.Text(LeadText(wire), turn + 1.6, toY - 1.9, Cap, FaceWeight.Bold, tag: new Tag { For = wire.Id });
    }

    private void Part(ChartPen pen, PowerNode node, Box box)
    {
        var tag = node.Thing.Kind == ThingKind.Fuse ? new Tag { Fuse = node.Thing.Id } : null;
        pen.Box(box, 0.7, node.Thing.Kind == ThingKind.Alternator ? 4 : 1, Ink.Paper, tag: tag);
        if (node.Thing.Kind == ThingKind.Fuse)
        {
            pen.Text(IdOf(node), box.X + 1.6, box.Centre.Y + 1.25, Cap, FaceWeight.Bold, tag: tag);
            pen.Text(RatingOf(node), box.Right - 1.6, box.Centre.Y + 2.5, RatingMm, FaceWeight.Bold, TextAnchor.End, tag: tag);
            return;
        }

        var fact = FactOf(node);
        pen.Text(TextFit.Ellipsis(NameOf(node), box.Width - 4, Cap, FaceWeight.Bold), box.X + 2, box.Y + (fact.Length > 0 ? 4.4 : 6.75), Cap, FaceWeight.Bold);
        pen.Text(TextFit.Ellipsis(fact, box.Width - 4, Cap), box.X + 2, box.Y + 8.6, Cap);
    }
}
