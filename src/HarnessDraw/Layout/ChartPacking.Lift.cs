using System.Runtime.InteropServices;

namespace HarnessDraw.Layout;

// longer stems, so that the cards of neighbouring ribs interlock
internal sealed partial class ChartPacking
{
    private const double LiftStepMm = 10;
    private const double LeastGainMm = 4;

    /// <summary>Room across the root spine that longer stems may fill: from and to (u), and the most between them.</summary>
    private (double From, double To, double MostMm)? lift;

    /// <summary>
    /// Packs everything and lengthens the stems of the trunk's ribs where that lets cards of neighbouring ribs interlock: each rib in turn takes the lift with
    /// which it leaves the trunk first, as long as the chart stays no higher than given. A chart that becomes narrow enough is lowered again where it can be.
    /// </summary>
    public void PackLifted(List<Spine> spines, double mostHeightMm, double enoughMm)
    {
        foreach (var spine in spines)
        {
            spine.LiftMm = 0;
            foreach (var station in spine.Stations)
            {
                station.HoldMm = 0;
            }
        }

        if (mostHeightMm <= 0)
        {
            return;
        }

        PackAll(spines);
        var (low, high) = (spines[0].Packed.Min(b => b.U0), Math.Max(corner.U1, spines[0].Packed.Max(b => b.U1)));
        lift = (low, high, mostHeightMm);
        Pack(spines[0]);
        lift = null;
        Improve(spines, mostHeightMm, enoughMm);
        if (Extent(spines[0]).LengthMm <= enoughMm + LeastGainMm)
        {
            Lower(spines, mostHeightMm, enoughMm);
        }
    }

    /// <summary>Packs everything and changes stems, one after the other, only until the chart is narrow enough.</summary>
    public void Narrow(List<Spine> spines, double mostHeightMm, double enoughMm)
    {
        PackAll(spines);
        Improve(spines, mostHeightMm, enoughMm);
    }

    // no stem is longer than it must be: each rib in turn comes as near to its true place as the width allows
    private void Lower(List<Spine> spines, double mostHeightMm, double enoughMm)
    {
        var root = spines[0];
        var most = Math.Max(enoughMm, Extent(root).LengthMm);
        foreach (var rib in spines)
        {
            for (var (kept, liftMm) = (rib.LiftMm, 0.0); rib.Parent == root && liftMm < kept; liftMm += 2 * LiftStepMm)
            {
                Relift(root, rib, liftMm);
                var (lengthMm, heightMm) = Extent(root);
                if (lengthMm <= most && heightMm <= mostHeightMm)
                {
                    break;
                }

                if (liftMm + (2 * LiftStepMm) >= kept)
                {
                    Relift(root, rib, kept);
                }
            }
        }
    }

    // each rib in turn takes the lift with which the whole chart is narrowest, until it is narrow enough or nothing helps
    private void Improve(List<Spine> spines, double mostHeightMm, double enoughMm)
    {
        var root = spines[0];
        var ribs = spines.FindAll(s => s.Parent == root);
        var best = Extent(root).LengthMm;
        for (var again = 0; again < 3; again++)
        {
            var before = best;
            foreach (var rib in ribs)
            {
                if (best <= enoughMm)
                {
                    return;
                }

                var kept = rib.LiftMm;
                for (var liftMm = 0.0; liftMm < mostHeightMm / 2; liftMm += 2 * LiftStepMm)
                {
                    Relift(root, rib, liftMm);
                    var (lengthMm, heightMm) = Extent(root);
                    if (heightMm > mostHeightMm)
                    {
                        // how far a rib reaches across the trunk grows with its stem
                        break;
                    }

                    if (lengthMm < best - 1)
                    {
                        (best, kept) = (lengthMm, liftMm);
                    }
                }

                Relift(root, rib, kept);
            }

            if (best > before - LeastGainMm)
            {
                return;
            }
        }
    }

    private void Relift(Spine root, Spine rib, double liftMm)
    {
        if (rib.LiftMm != liftMm)
        {
            rib.LiftMm = liftMm;
            rib.IsPacked = false;
            Pack(root, rib.ParentStation);
        }
    }

    private (double LengthMm, double HeightMm) Extent(Spine root)
    {
        var (t0, t1, u0, u1) = (0.0, 0.0, 0.0, corner.U1);
        foreach (ref readonly var box in CollectionsMarshal.AsSpan(root.Packed))
        {
            t0 = box.T0 < t0 ? box.T0 : t0;
            t1 = box.T1 > t1 ? box.T1 : t1;
            u0 = box.U0 < u0 ? box.U0 : u0;
            u1 = box.U1 > u1 ? box.U1 : u1;
        }

        return (t1 - t0, u1 - u0);
    }

    private void Lift(Spine child, FrameBoxes placed, bool isLeft, double edge, double width, double least, (double From, double To, double MostMm) limit)
    {
        child.TurnedEdge = double.NaN;
        Turn(child, isLeft, edge, width, 0);
        var best = (T: Settle(placed, CollectionsMarshal.AsSpan(child.Turned), least), LiftMm: 0.0);
        for (var liftMm = LiftStepMm; liftMm < limit.MostMm; liftMm += LiftStepMm)
        {
            Turn(child, isLeft, edge, width, liftMm);
            if (Math.Max(limit.To, child.Turned.Max(b => b.U1)) - Math.Min(limit.From, child.Turned.Min(b => b.U0)) > limit.MostMm)
            {
                break;
            }

            var t = Settle(placed, CollectionsMarshal.AsSpan(child.Turned), least);
            if (t < best.T - LeastGainMm)
            {
                best = (t, liftMm);
            }
        }

        if (best.LiftMm > 0)
        {
            child.LiftMm = best.LiftMm;
            Inner.Pack(child);
            lift = (Math.Min(limit.From, isLeft ? edge - child.Packed.Max(b => b.T1) : limit.From), Math.Max(limit.To, isLeft ? limit.To : edge + child.Packed.Max(b => b.T1)), limit.MostMm);
        }
    }
}
