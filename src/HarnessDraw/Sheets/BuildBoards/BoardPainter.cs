using System.Collections.Immutable;
using HarnessDraw.Drawing;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.BuildBoards;

/// <summary>Paints runs, pegs, forks, splices and their words on the board.</summary>
internal sealed class BoardPainter(Plan plan, ImmutableArray<BoardRun> runs, BoardLabels labels, UnitsShown units)
{
    private const double PegMm = 6;
    private const double LabelClearMm = 12;

    // the first that is clear of splices
    private static readonly ImmutableArray<double> LabelsFromEndMm = [50, 65, 30, 75];

    /// <summary>The run at its true width: two edges and a centre line that is as long as the segment.</summary>
    public static void Run(Pen pen, BoardRun run)
    {
        var width = Math.Max(2, run.Segment.DiameterMm);
        var line = run.Line();
        pen.Add(new PathItem(line) { Stroke = new(Ink.Black, width) });
        pen.Add(new PathItem(line) { Role = ItemRole.LaneDress, Stroke = new(Ink.Paper, Math.Max(0.6, width - 0.8)) });
        pen.Add(new PathItem(line) { Stroke = new(Ink.Black, 0.25) { DashMm = [6, 2] }, Tag = new() { Segment = run.Segment.Id, Title = $"{run.Segment.From} to {run.Segment.To}" } });
    }

    /// <summary>Pegs and forks, before any words: none may come to lie on one.</summary>
    public void PegsAndForks(Pen pen)
    {
        var root = plan.Tree.Root;
        foreach (var (place, at) in runs.Select(r => (r.Segment.To, r.End)).Prepend((root, runs.First(r => r.Segment.From == root).Start)))
        {
            var ends = runs.Where(r => r.Segment.From == place || r.Segment.To == place).ToList();
            Pegs(pen, ends, place, at, ends.Max(r => r.Segment.DiameterMm) / 2);
        }
    }

    /// <summary>The names of the places and what ends there.</summary>
    public bool Places(Pen pen)
    {
        var root = plan.Tree.Root;
        var ok = Place(pen, root, runs.First(r => r.Segment.From == root).Start, "DATUM 0");
        foreach (var run in runs)
        {
            ok &= Place(pen, run.Segment.To, run.End, null);
        }

        return ok;
    }

    /// <summary>Splice stations from the datum, each with its distance from the last peg.</summary>
    public bool Splices(Pen pen)
    {
        var ok = true;
        foreach (var splice in plan.Splices.OrderBy(s => s.Id, CavityOrder.Instance))
        {
            if (runs.FirstOrDefault(r => r.Segment.Id == splice.Segment) is { } run)
            {
                var (at, _) = run.Along(splice.AtMm);
                pen.Add(new PathItem(Outline.Circle(at, 3)) { Fill = Ink.Black, Tag = new() { Title = $"splice {splice.Id}" } });
                var station = splice.StationMm is { } mm ? $", {LengthWords.Of(mm, units)} from datum" : "";
                ok &= labels.Put(pen, at, (run.Segment.DiameterMm / 2) + 6, (splice.Id, TextStyle.Bold.At(5)), ($"{LengthWords.Of(splice.AtMm, units)} from peg{station}", TextStyle.Plain.At(3.5)));
            }
        }

        return ok;
    }

    /// <summary>A white box across each leg where the label of its wires' ends goes: within 75 mm of the end, in the middle of a short leg.</summary>
    public void LabelPlaces(Pen pen)
    {
        foreach (var run in runs.Where(r => runs.All(o => o.Segment.From != r.Segment.To)))
        {
            var length = run.Segment.LengthMm!.Value;
            var splices = plan.Splices.Where(s => s.Segment == run.Segment.Id).Select(s => s.AtMm).ToList();
            var place = LabelsFromEndMm.Select(mm => length - Math.Min(mm, length / 2)).FirstOrDefault(mm => splices.TrueForAll(s => Math.Abs(s - mm) > LabelClearMm), length - Math.Min(LabelsFromEndMm[0], length / 2));
            var (at, d) = run.Along(place);
            var (along, across) = (new Point(d.X * 6, d.Y * 6), new Point(-d.Y * ((run.Segment.DiameterMm / 2) + 2), d.X * ((run.Segment.DiameterMm / 2) + 2)));
            Point[] corners = [at + along + across, at + along - across, at - along - across, at - along + across];
            pen.Add(new PathItem(Outline.Polyline(corners, closed: true)) { Role = ItemRole.Backdrop, Fill = Ink.Paper, Stroke = new(Ink.Black, 0.5), Tag = new() { Title = $"label place, {run.Segment.To}" } });
        }
    }

    /// <summary>Length, diameter and covering in the middle of each run.</summary>
    public bool Lengths(Pen pen)
    {
        var ok = true;
        foreach (var run in runs)
        {
            var segment = plan.Tree.Segments.First(s => s.Id == run.Segment.Id);
            var known = segment.LengthMm is > 0 and var mm ? $"{LengthWords.Of(mm, units)}{(segment.Estimated ? " E" : "")}" : "length ____ mm";
            var cover = segment.Covering is { } covering ? (plan.Harness.Catalogue.Coverings.FirstOrDefault(c => c.Id == covering)?.Title ?? covering) : "no covering given";
            ok &= labels.Put(pen, run.Along(run.Segment.LengthMm!.Value / 2).At, (run.Segment.DiameterMm / 2) + 6, (known, TextStyle.Bold.At(5)), ($"{Shown.Count(segment.Wires.Length, "wire")}, Ø {Shown.Number(segment.DiameterMm, 1)}, {cover}", TextStyle.Plain.At(3.5)));
        }

        return ok;
    }

    private bool Place(Pen pen, string place, Point at, string? first)
    {
        var ends = runs.Where(r => r.Segment.From == place || r.Segment.To == place).ToList();
        var half = ends.Max(r => r.Segment.DiameterMm) / 2;
        var things = Things(place);
        ImmutableArray<(string, TextStyle)> lines =
        [
            .. first is null ? ImmutableArray<(string, TextStyle)>.Empty : [(first, TextStyle.Bold.At(7))],
            (place.ToUpperInvariant(), TextStyle.Bold.At(5)),
            .. things.Take(9).Select(t => (t, TextStyle.Plain.At(3.5))),
            .. things.Length > 9 ? [($"and {things.Length - 9} more: lay order", TextStyle.Plain.At(3.5))] : ImmutableArray<(string, TextStyle)>.Empty,
        ];
        return labels.Put(pen, at, half + PegMm + 8, lines);
    }

    private ImmutableArray<string> Things(string place)
    {
        var used = plan.Wires.SelectMany(w => new[] { w.From.At, w.To.At }).GroupBy(a => a, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        return [.. plan.Harness.Things.Where(t => t.Place == place && t.Side == Side.Bay && used.ContainsKey(t.Id)).OrderBy(t => t.Id, StringComparer.Ordinal).Select(t => $"{t.Id}, {Shown.Count(used[t.Id], "wire")}")];
    }

    // a peg on both sides of every run that leaves a breakout, a fork across the end of a leg
    private void Pegs(Pen pen, List<BoardRun> ends, string place, Point at, double half)
    {
        if (ends.Count == 1)
        {
            var d = ends[0].Segment.To == place ? ends[0].Heading : BoardRun.Unit(ends[0].Corners[0] - ends[0].Corners[1]);
            var (nx, ny) = (-d.Y * (half + 5), d.X * (half + 5));
            labels.Take(new Box(at.X, at.Y, 0, 0).Grow(half + 14));
            pen.Add(new PathItem(Outline.Polyline([new(at.X + nx + (d.X * 8), at.Y + ny + (d.Y * 8)), new(at.X + nx, at.Y + ny), new(at.X - nx, at.Y - ny), new(at.X - nx + (d.X * 8), at.Y - ny + (d.Y * 8))])) { Stroke = new(Ink.Black, 1.4) });
            return;
        }

        foreach (var run in ends)
        {
            var d = run.Segment.From == place ? BoardRun.Unit(run.Corners[1] - run.Corners[0]) : BoardRun.Unit(run.Corners[^2] - run.Corners[^1]);
            foreach (var side in new[] { -1, 1 })
            {
                var off = (run.Segment.DiameterMm / 2) + (PegMm / 2) + 1;
                var peg = new Point(at.X + (d.X * (half + 9)) - (d.Y * off * side), at.Y + (d.Y * (half + 9)) + (d.X * off * side));
                labels.Take(new Box(peg.X, peg.Y, 0, 0).Grow((PegMm / 2) + 0.5));
                pen.Add(new PathItem(Outline.Circle(peg, PegMm / 2)) { Role = ItemRole.Backdrop, Fill = Ink.Paper, Stroke = new(Ink.Black, 0.5) });
            }
        }

        pen.Add(new PathItem(Outline.Circle(at, 1.5)) { Role = ItemRole.Backdrop, Fill = Ink.Black });
    }
}
