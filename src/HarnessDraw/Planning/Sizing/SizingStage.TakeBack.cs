namespace HarnessDraw.Planning.Sizing;

/// <summary>What whole sizes gave too much is taken back once the states are solved.</summary>
internal sealed partial class SizingStage
{
    private const int RoundsOfThinning = 4;

    // share of a limit
    private const double HardlyOver = 0.004;

    // share of a limit: by what one wire alone may bring its loops over, to be tried (our own figure: beyond it trials cost time and bear nothing)
    private const double LittleOver = 0.008;

    // share of a limit: nearer to it a loop is solved again before anything is said of it
    private const double MayBeOver = 0.02;

    // volts to which the states are solved: conductors settle to a twentieth of a kelvin
    private const double SolvedToV = 1e-5;

    /// <summary>
    /// What swung between two sizes has kept the larger one, and a load that gets less draws less, which whole sizes by constant currents overlook: what a loop is hardly over with
    /// is tried with the states solved again, all at once, and where they do not bear that wire by wire; in the end each wire that brings its loops a little over by itself.
    /// A trial solves the cases of loops that may be over; at the end all are.
    /// </summary>
    private void TakeBack()
    {
        foreach (var row in rows)
        {
            row.Floor = 0;
        }

        // sizes that were tried by themselves and not borne
        var refused = new HashSet<(int Row, int Size)>();
        Resolve();
        for (var round = 0; round < RoundsOfThinning && Thin(); round++)
        {
            // loads that get less draw less: what a thinner wire took leaves room for another
        }

        ThinOneByOne();
        WireSizer.SayWhatDecided(rows);

        // what constant currents see a little over its limit the solved states may bear, wire by wire
        void ThinOneByOne()
        {
            var over = Over();
            var before = rows.Select(r => r.Size).ToArray();
            foreach (var row in rows.Where(r => r.First == r).OrderByDescending(r => r.SizeNow.AreaMm2 * r.AlikeMm))
            {
                while (sizer.MayBear(row, loops, LittleOver))
                {
                    var (toldLoops, toldSolved) = (loops, (LoopBudget?[])solved.Clone());
                    row.Size--;
                    if (!Bear(over))
                    {
                        // what was told before holds again; its cases are solved anew with the next
                        row.Size++;
                        (loops, solved) = (toldLoops, toldSolved);
                        break;
                    }
                }
            }

            Resolve();
            if (!Over().IsSubsetOf(over))
            {
                for (var w = 0; w < before.Length; w++)
                {
                    rows[w].Size = before[w];
                }

                Resolve();
            }
        }

        // true where something went a size down and stayed there
        bool Thin()
        {
            var over = Over();
            var before = rows.Select(r => r.Size).ToArray();
            sizer.Thin(loops, HardlyOver);
            for (var w = 0; w < before.Length; w++)
            {
                while (refused.Contains((w, rows[w].Size)))
                {
                    rows[w].Size++;
                }
            }

            var thinned = Enumerable.Range(0, rows.Length).Where(w => rows[w].First == rows[w] && rows[w].Size < before[w]).Select(w => (Row: w, rows[w].Size)).ToList();
            if (thinned.Count == 0)
            {
                return false;
            }

            if (!Bear(over))
            {
                PutBack(thinned, before);
                foreach (var (w, size) in thinned.OrderByDescending(t => rows[t.Row].SizeNow.AreaMm2 * rows[t.Row].AlikeMm))
                {
                    rows[w].Size = size;
                    while (rows[w].Size < before[w] && !Bear(over))
                    {
                        refused.Add((w, rows[w].Size));
                        rows[w].Size++;
                    }
                }
            }

            Resolve();
            if (!Over().IsSubsetOf(over))
            {
                PutBack(thinned, before);
                Resolve();
            }

            return thinned.Exists(t => rows[t.Row].Size < before[t.Row]);
        }

        HashSet<(string Load, int Case)> Over() => [.. loops.Where(IsOver).Select(l => (l.Path.Load, l.Path.Case))];

        bool IsOver(LoopBudget loop) => loop.WiresV > sizer.AllowedV(loop) + SolvedToV;

        // true where no other loop is over; the case that is likeliest to refuse is asked first
        bool Bear(HashSet<(string Load, int Case)> over)
        {
            var due = new HashSet<int>();
            var (worst, most) = (-1, -MayBeOver);
            foreach (var loop in loops)
            {
                var share = (loop.WiresV - sizer.AllowedV(loop)) / loop.Path.LimitV;
                if (share > -MayBeOver)
                {
                    due.Add(loop.Path.Case);
                }

                if (share > most && !over.Contains((loop.Path.Load, loop.Path.Case)))
                {
                    (worst, most) = (loop.Path.Case, share);
                }
            }

            Resolve([worst]);
            if (loops.Any(l => l.Path.Case == worst && IsOver(l) && !over.Contains((l.Path.Load, l.Path.Case))))
            {
                return false;
            }

            Resolve(due);
            return Over().IsSubsetOf(over);
        }

        void PutBack(List<(int Row, int Size)> thinned, int[] before)
        {
            foreach (var (w, _) in thinned)
            {
                rows[w].Size = before[w];
            }
        }
    }
}
