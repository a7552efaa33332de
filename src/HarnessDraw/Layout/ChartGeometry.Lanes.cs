using System.Collections.Immutable;

namespace HarnessDraw.Layout;

// lanes as right-angled lines with their corners
internal sealed partial class ChartGeometry
{
    private ImmutableArray<LanePoint> PathOf(int lane)
    {
        var path = lanes.PathOf[lane];
        var points = new List<LanePoint>();
        var firstSpine = path.ToFirst.Count > 0 ? path.ToFirst[^1] : (path.Meet, path.MeetRun);
        var lastSpine = path.ToLast.Count > 0 ? path.ToLast[^1] : (path.Meet, path.MeetRun);
        Finish(points, lane, path.FirstEnd, firstSpine.Item1, firstSpine.Item2, isStart: path.ToFirst.Count == 0);
        for (var i = path.ToFirst.Count - 1; i >= 0; i--)
        {
            var (child, run) = path.ToFirst[i];
            var above = i > 0 ? path.ToFirst[i - 1].Run : path.MeetRun;
            points.Add(Corner(child, run, above));
        }

        var back = new List<LanePoint>();
        Finish(back, lane, 1 - path.FirstEnd, lastSpine.Item1, lastSpine.Item2, isStart: false);
        for (var i = path.ToLast.Count - 1; i >= 0; i--)
        {
            var (child, run) = path.ToLast[i];
            var above = i > 0 ? path.ToLast[i - 1].Run : path.MeetRun;
            back.Add(Corner(child, run, above));
        }

        back.Reverse();
        points.AddRange(back);
        if (path.FirstEnd == 1)
        {
            points.Reverse();
        }

        return [.. Clean(points)];
    }

    private static List<LanePoint> Clean(List<LanePoint> points)
    {
        var kept = new List<LanePoint>(points.Count);
        foreach (var p in points)
        {
            if (kept.Count == 0 || Math.Abs(kept[^1].At.X - p.At.X) + Math.Abs(kept[^1].At.Y - p.At.Y) > 1e-6)
            {
                kept.Add(p);
            }
            else if (kept[^1].Band == 0)
            {
                kept[^1] = kept[^1] with { Band = p.Band, OtherBand = p.OtherBand };
            }
        }

        return kept;
    }

    private LanePoint Corner(Spine child, LaneRun run, LaneRun above)
    {
        var item = child.ParentItem!;
        var parent = child.Parent!;
        var t = item.IsLeft ? item.T + child.U(run.Slot) : item.T - child.U(run.Slot);
        return On(parent, t, parent.U(above.Slot), run.CornerMm) with { Band = BandOf(child), OtherBand = BandOf(parent) };
    }

    private static int BandOf(Spine spine) => spine.IsBand ? spine.Index + 1 : 0;

    // a point at the place of a lane on its spine
    private static LanePoint Along(Spine spine, double t, double u, double radius) => On(spine, t, u, radius) with { Band = BandOf(spine) };

    // the points at one end, from the end inwards, up to and including the corner on the run
    private void Finish(List<LanePoint> points, int lane, int end, Spine spine, LaneRun run, bool isStart)
    {
        var at = lanes.EndOf(lane, end);
        var u = spine.U(run.Slot);
        if (at.Kind == ChartEndKind.Pin)
        {
            var row = packing.TableTopU + problem.Table!.RowsMm[at.Index];
            var track = packing.TableTracks[lane];
            points.Add(On(spine, -packing.ChannelMm - problem.Table.LabelMm, row, 0));
            if (track.HasTwo)
            {
                AddStep(points, spine, track.T, row, track.MidU);
                AddStep(points, spine, track.SecondT, track.MidU, u);
            }
            else
            {
                AddStep(points, spine, track.T, row, u);
            }
        }
        else if (at.Kind == ChartEndKind.Splice)
        {
            var t = spliceT[at.Index];
            points.Add(On(spine, t, Toward(at.Index, spine, run), 0));
            points.Add(Along(spine, t, u, IsOutermost(at.Index, spine, run) ? metrics.TightCornerMm : 0));
        }
        else
        {
            FinishAtCard(points, lane, end, at.Index, spine, u, isStart);
        }
    }

    private void FinishAtCard(List<LanePoint> points, int lane, int end, int card, Spine spine, double u, bool turns)
    {
        if (spine.EndTracks.TryGetValue((lane, end), out var track))
        {
            var radius = Math.Min(0.8 * metrics.PitchMm, Math.Abs(track.U - u) / 2);
            points.Add(On(spine, spine.EndCardT, track.U, 0));
            points.Add(On(spine, spine.EndT + 1 + track.T, track.U, radius));
            points.Add(Along(spine, spine.EndT + 1 + track.T, u, radius));
            return;
        }

        var item = cardItem[card].Item;
        var rows = lanes.CardRows[card];
        var k = rows.IndexOf((lane, end));
        var order = item.IsLeft ? k : rows.Count - 1 - k;
        var t = item.T + packing.FirstRow(spine, problem.Cards[card]) + (order * metrics.RowMm);
        points.Add(On(spine, t, item.EdgeU, 0));
        points.Add(Along(spine, t, u, turns || HasTurningRow(card, spine) ? metrics.TightCornerMm : Comb(spine, order)));
    }

    // a row whose lane goes away from the root: its neighbours turn tightly, so that it crosses straight pieces
    private bool HasTurningRow(int card, Spine spine)
    {
        foreach (var (lane, end) in lanes.CardRows[card])
        {
            var path = lanes.PathOf[lane];
            if (path.Meet == spine && path.ToFirst.Count == 0 && path.FirstEnd == end)
            {
                return true;
            }
        }

        return false;
    }

    private void AddStep(List<LanePoint> points, Spine spine, double t, double fromU, double toU)
    {
        var radius = Math.Min(0.8 * metrics.PitchMm, Math.Abs(fromU - toU) / 2);
        points.Add(On(spine, t, fromU, radius));
        points.Add(Along(spine, t, toU, radius));
    }
}
