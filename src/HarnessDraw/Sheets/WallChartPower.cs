using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The panel of sources and heavy fuses: battery, alternator, and each bar with its fuses and what they feed.</summary>
internal static class WallChartPower
{
    private const double Cap = WallChartStyle.TextMm;
    private const double FuseMm = 25;

    /// <summary>Parts and fuses, wide or in two columns, and with all leads where a corner has the room; null when there is neither source nor heavy fuse.</summary>
    public static ChartPanel? Panel(WallChartProblem problem)
    {
        if (Panel(problem, 6) is not { } wide)
        {
            return null;
        }

        return wide.Or(Panel(problem, 2)!) with { Fuller = WallChartLeads.Panel(problem.Subject.Whole.Plan) };
    }

    private static ChartPanel? Panel(WallChartProblem problem, int mostAcross)
    {
        var plan = problem.Subject.Whole.Plan;
        var fuses = plan.Fuses.Where(f => f.Kind is ProtectionKind.BoltIn or ProtectionKind.FusibleLink).OrderBy(f => f.Id, CavityOrder.Instance).ToList();
        var sources = plan.Harness.Power.Sources;
        if (fuses.Count == 0 && sources.IsEmpty)
        {
            return null;
        }

        var across = Math.Max(1, Math.Min(mostAcross, fuses.Count));
        var rows = (fuses.Count + across - 1) / across;
        var left = sources.IsEmpty ? 0 : 58;
        var width = Math.Max(110, left + (across * FuseMm));
        var height = 12 + Math.Max(sources.Length * 21, rows * 38);
        return ChartPanel.Of(width, height, 0, 1, (pen, box) =>
        {
            var y = ChartPanel.Head(pen, box, "POWER AND BOLT-IN FUSES") + 2;
            for (var i = 0; i < sources.Length; i++)
            {
                Source(pen, plan, sources[i], box.X, y + (i * 21));
            }

            for (var i = 0; i < fuses.Count; i++)
            {
                Fuse(pen, plan, fuses[i], box.X + left + (i % across * FuseMm), y + (i / across * 38));
            }
        });
    }

    private static void Source(ChartPen pen, Plan plan, Source source, double x, double y)
    {
        var label = (plan.Harness.Things.FirstOrDefault(t => t.Id == source.Id)?.Label ?? source.Id).ToUpperInvariant();
        var box = new Box(x, y, 50, 18);
        if (source.Kind == SourceKind.Battery)
        {
            pen.Box(new Box(x + 6, y, 5, 2), 0.5, 0, Ink.Paper);
            pen.Box(new Box(x + 39, y, 5, 2), 0.5, 0, Ink.Paper);
            box = new Box(x, y + 2, 50, 16);
        }

        pen.Box(box, 0.7, source.Kind == SourceKind.Battery ? 1 : 8, Ink.Paper);
        var cap = WallChartStyle.Width(label, 3.5, FaceWeight.Bold) <= 44 ? 3.5 : Cap;
        pen.Text(TextFit.Ellipsis(label, 46, cap, FaceWeight.Bold), box.Centre.X, box.Y + 6.6, cap, FaceWeight.Bold, TextAnchor.Middle);
        var text = $"{source.NominalV:0.#} V" + (source.OutputA is { } amps ? $", {amps:0.#} A" : "");
        var leads = string.Join(' ', plan.Wires.Where(w => w.From.At == source.Id || w.To.At == source.Id).Select(w => w.Id));
        pen.Text(TextFit.Ellipsis(leads.Length > 0 ? $"{text}: {leads}" : text, 44, Cap), box.Centre.X, box.Y + 12.4, Cap, anchor: TextAnchor.Middle);
    }

    private static void Fuse(ChartPen pen, Plan plan, FuseChoice fuse, double x, double y)
    {
        var on = plan.Harness.Protections.FirstOrDefault(p => p.Id == fuse.Id)?.On;
        var bar = on is null ? "" : (plan.Harness.Things.FirstOrDefault(t => t.Id == on)?.Label ?? on).ToUpperInvariant();
        var tag = new Tag { Fuse = fuse.Id };
        var middle = x + (FuseMm / 2) - 1;
        if (bar.Length > 0)
        {
            pen.Text(TextFit.Ellipsis(bar, FuseMm - 2, Cap), middle, y + 2.6, Cap, anchor: TextAnchor.Middle);
            pen.Box(new Box(x, y + 4, FuseMm, 3), 0.4, 0, Ink.Hairline);
        }

        pen.Line(middle, y + 7, middle, y + 10, 1.4);
        pen.Box(new Box(x + 1, y + 10, FuseMm - 4, 13.5), 0.7, 1, Ink.Paper, tag: tag);
        pen.Text(fuse.Id, middle, y + 14.4, Cap, FaceWeight.Bold, TextAnchor.Middle, tag: tag);
        pen.Text(fuse.RatingA is { } amps ? $"{amps:0.#} A" : "? A", middle, y + 21.4, 5, FaceWeight.Bold, TextAnchor.Middle, tag: tag);
        pen.Line(middle, y + 23.5, middle, y + 26.5, 1.4);
        var feeds = string.Join(' ', fuse.Wires.Take(fuse.Wires.Length > 3 ? 2 : 3)) + (fuse.Wires.Length > 3 ? $" and {fuse.Wires.Length - 2} more" : "");
        var lines = TextFit.Wrap(feeds, FuseMm - 2, Cap);
        for (var i = 0; i < Math.Min(2, lines.Length); i++)
        {
            pen.Text(lines[i], middle, y + 30 + (i * 4), Cap, anchor: TextAnchor.Middle);
        }
    }
}
