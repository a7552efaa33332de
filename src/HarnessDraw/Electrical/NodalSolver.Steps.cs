namespace HarnessDraw.Electrical;

/// <summary>The steps of Newton's method.</summary>
internal sealed partial class NodalSolver
{
    /// <summary>
    /// Eliminates the rows that no bending part touches, once for all steps: what is left between the others, what ties each of them to the reference, and what drives
    /// them. A part that bends where none was expected leaves nothing to eliminate before the steps.
    /// </summary>
    private void EliminateStraight(LiveNetwork live, NodalWork work)
    {
        var conducting = live.Conducting;
        work.Early = conducting.Late;
        foreach (var i in work.Bent)
        {
            work.Early = late[ends[i].A] && late[ends[i].B] ? work.Early : 0;
        }

        SparseNetwork.Begin(work.Extra, work.Figures);
        matrix.Add(work.Siemens, work.Straight, work.Figures);
        SparseNetwork.Eliminate(conducting, work.Figures, ..work.Early);
        work.Pushed.CopyTo(work.Driven, 0);
        foreach (var i in work.Straight)
        {
            var amperes = work.Emf[i] * work.Siemens[i];
            work.Driven[ends[i].A] += amperes;
            work.Driven[ends[i].B] -= amperes;
        }

        SparseNetwork.Forward(conducting, work.Figures, work.Driven, ..work.Early);
        work.KeepStraight(conducting);
    }

    /// <summary>One step of Newton's method and the most it moves a node; without new tangents where those of the last step still hold.</summary>
    private double Step(PartLaw[] laws, LiveNetwork live, NodalWork work, bool renew)
    {
        var (conducting, figures) = (live.Conducting, work.Figures);
        LeftOver(laws, live, work, renew);
        if (renew)
        {
            Renew(conducting, work);
        }

        work.Left.CopyTo(figures.Right, 0);
        SparseNetwork.Forward(conducting, figures, figures.Right, work.Early..conducting.Node.Length);
        SparseNetwork.Backward(conducting, figures, figures.Right, work.Step, work.Early..conducting.Node.Length);
        var moved = 0.0;
        foreach (var n in work.Bending(conducting))
        {
            moved = Math.Max(moved, Math.Abs(work.Step[n]));
        }

        return moved;
    }

    /// <summary>Eliminates the rows in which steps are taken with the slopes as they are; what follows Ohm is the same at every step.</summary>
    private void Renew(SparseNetwork.Conducting conducting, NodalWork work)
    {
        work.TakeStraight();
        matrix.Add(work.Siemens, work.Bent, work.Figures);
        SparseNetwork.Eliminate(conducting, work.Figures, work.Early..conducting.Node.Length);
    }

    /// <summary>True where a node is left with a current that nothing takes.</summary>
    private static bool IsUnbalanced(NodalWork work, ReadOnlySpan<int> nodes)
    {
        foreach (var n in nodes)
        {
            if (Math.Abs(work.Left[n]) > UnbalancedA)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Amperes that come into each row in which steps are taken and do not leave it; renews the slopes where asked.</summary>
    private void LeftOver(PartLaw[] laws, LiveNetwork live, NodalWork work, bool refresh)
    {
        var (volts, left, between) = (work.Volts, work.Left, work.StraightBetween);
        var (node, first, near, slot) = (live.Conducting.Node, live.Conducting.First, live.Conducting.Near, live.Conducting.Slot);
        foreach (var n in work.Bending(live.Conducting))
        {
            left[n] = work.Driven[n] - (work.Ties[n] * volts[n]);
        }

        for (var k = work.Early; k < node.Length; k++)
        {
            var n = node[k];
            for (var i = first[k]; i < first[k + 1]; i++)
            {
                var amperes = between[slot[i]] * (volts[near[i]] - volts[n]);
                left[n] -= amperes;
                left[near[i]] += amperes;
            }
        }

        foreach (var i in work.Bent)
        {
            var (amperes, slope) = laws[i].At(volts[ends[i].A] - volts[ends[i].B]);
            work.Siemens[i] = refresh ? slope : work.Siemens[i];
            left[ends[i].A] -= amperes;
            left[ends[i].B] += amperes;
        }
    }

    /// <summary>Amperes that come into each row and do not leave it, from the parts themselves; renews the slopes.</summary>
    private void LeftOverEverywhere(PartLaw[] laws, NodalWork work)
    {
        var (volts, left) = (work.Volts, work.Left);
        for (var n = 0; n < rows; n++)
        {
            left[n] = work.Pushed[n] - (work.Extra[n] * volts[n]);
        }

        foreach (var i in work.Straight)
        {
            var (a, b) = ends[i];
            var amperes = (volts[a] - volts[b] - work.Emf[i]) * work.Siemens[i];
            left[a] -= amperes;
            left[b] += amperes;
        }

        foreach (var i in work.Bent)
        {
            (var amperes, work.Siemens[i]) = laws[i].At(volts[ends[i].A] - volts[ends[i].B]);
            left[ends[i].A] -= amperes;
            left[ends[i].B] += amperes;
        }
    }

    /// <summary>
    /// How much of a step to take. The solution is the lowest point of a convex valley (what the parts take in, summed up over their volts);
    /// a whole step that would climb its far side, over the knee of a diode or a regulator, is cut back to the bottom along its line.
    /// </summary>
    private double Share(PartLaw[] laws, LiveNetwork live, NodalWork work)
    {
        const double Flat = 0.1;

        // what is left over at the nodes is how steeply the valley falls where we stand
        var first = 0.0;
        foreach (var n in work.Bending(live.Conducting))
        {
            first -= work.Left[n] * work.Step[n];
        }

        if (first >= 0)
        {
            return 1;
        }

        var straight = StraightClimb(live.Conducting, work);
        if (Climb(laws, work, straight, 1) <= -Flat * first)
        {
            return 1;
        }

        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            var climb = Climb(laws, work, straight, middle);
            if (Math.Abs(climb) <= -Flat * first)
            {
                return middle;
            }

            (low, high) = climb > 0 ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }

    /// <summary>What parts that follow Ohm, ties and what is pushed in give to the climb: at the start of the step, and how much more at its end.</summary>
    private static (double Start, double More) StraightClimb(SparseNetwork.Conducting conducting, NodalWork work)
    {
        var (volts, step, between) = (work.Volts, work.Step, work.StraightBetween);
        var (start, more) = (0.0, 0.0);
        for (var k = work.Early; k < conducting.Node.Length; k++)
        {
            var n = conducting.Node[k];
            start += ((work.Ties[n] * volts[n]) - work.Driven[n]) * step[n];
            more += work.Ties[n] * step[n] * step[n];
            for (var i = conducting.First[k]; i < conducting.First[k + 1]; i++)
            {
                var (siemens, m) = (-between[conducting.Slot[i]], conducting.Near[i]);
                start += siemens * (volts[n] - volts[m]) * (step[n] - step[m]);
                more += siemens * (step[n] - step[m]) * (step[n] - step[m]);
            }
        }

        return (start, more);
    }

    private double Climb(PartLaw[] laws, NodalWork work, (double Start, double More) straight, double share)
    {
        var (volts, step) = (work.Volts, work.Step);
        var sum = straight.Start + (share * straight.More);
        foreach (var i in work.Bent)
        {
            var across = step[ends[i].A] - step[ends[i].B];
            if (across != 0)
            {
                sum += laws[i].At(volts[ends[i].A] - volts[ends[i].B] + (share * across)).Amperes * across;
            }
        }

        return sum;
    }
}
