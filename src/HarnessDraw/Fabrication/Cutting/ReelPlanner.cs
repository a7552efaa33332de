using System.Collections.Immutable;
using System.Globalization;

namespace HarnessDraw.Fabrication.Cutting;

/// <summary>Lays the wires of an order on reels and offcuts, one type, size and colour at a time: offcuts first, the shortest first, then the fewest new reels.</summary>
public static class ReelPlanner
{
    // lengths in tenths of a millimetre are whole numbers
    private const double UnitsPerMm = 10;

    public static ReelPlan Plan(FabricationOrder order, ReelStock stock, PackingEffort? effort = null)
    {
        ArgumentNullException.ThrowIfNull(order);
        ArgumentNullException.ThrowIfNull(stock);
        var uses = ImmutableArray.CreateBuilder<ReelUse>();
        var needs = ImmutableArray.CreateBuilder<ReelNeed>();
        var problems = ImmutableArray.CreateBuilder<CutProblem>();
        var onHand = stock.OnHand.ToDictionary(p => p, p => p.Pieces);
        foreach (var reel in CutRows.ByReel(order.Shown).GroupBy(r => r.Reel))
        {
            if (reel.Where(r => r.Wire.CutLengthMm is null).Select(r => r.Wire.Id).ToImmutableArray() is { Length: > 0 } unknown)
            {
                problems.Add(new(unknown, $"{Named(unknown)}: no length yet, so on no reel"));
            }

            CutPiece[] pieces =
            [
                .. reel.Where(r => r.Wire.CutLengthMm > 0)
                    .SelectMany(r => Enumerable.Range(1, order.QuantityOf(r.Wire.Builds)).Select(copy => new CutPiece(r.Wire.Id, copy, r.Wire.CutLengthMm!.Value))),
            ];
            new OneReel(reel.Key, stock, effort ?? PackingEffort.Quick, uses, problems).Cut(pieces, onHand, needs);
        }

        return new(uses.ToImmutable(), needs.ToImmutable(), problems.ToImmutable());
    }

    private static string Named(ImmutableArray<string> wires) => $"{(wires.Length == 1 ? "wire" : "wires")} {string.Join(", ", wires)}";

    private static long Units(double mm) => (long)Math.Round(mm * UnitsPerMm);

    private sealed class OneReel(Reel reel, ReelStock stock, PackingEffort effort, ImmutableArray<ReelUse>.Builder uses, ImmutableArray<CutProblem>.Builder problems)
    {
        private long Capacity(double lengthMm) => Units(lengthMm - stock.EndTrimMm + stock.KerfMm);

        private long Wanted(CutPiece piece) => Units(piece.LengthMm + stock.KerfMm);

        // what is too long for any reel is told in one line
        private List<CutPiece> TakeOut(List<CutPiece> left, long capacity, string why)
        {
            var tooLong = left.FindAll(p => Wanted(p) > capacity);
            left.RemoveAll(p => Wanted(p) > capacity);
            if (tooLong.Select(p => p.Wire).Distinct().ToImmutableArray() is { Length: > 0 } wires)
            {
                var (least, most) = (Metres(tooLong[^1].LengthMm), Metres(tooLong[0].LengthMm));
                problems.Add(new(wires, $"{Named(wires)}: {(least == most ? most : $"{least} to {most}")} {why}"));
            }

            return tooLong;
        }

        private static string Metres(double mm) => string.Create(CultureInfo.InvariantCulture, $"{mm / 1000:0.##} m");

        public void Cut(CutPiece[] pieces, Dictionary<StockPiece, int> onHand, ImmutableArray<ReelNeed>.Builder needs)
        {
            var left = pieces.OrderByDescending(p => p.LengthMm).ThenBy(p => p.Wire, NaturalOrder.Instance).ThenBy(p => p.Copy).ToList();
            var longestMm = onHand.Where(p => p.Value > 0 && p.Key.Fits(reel)).Select(p => p.Key.LengthMm).Append(stock.NewReelMm).Max();
            TakeOut(left, Capacity(longestMm), $"of {reel}; the longest reel is {Metres(longestMm)}, of which {stock.EndTrimMm.ToString("0", CultureInfo.InvariantCulture)} mm are trimmed");
            var usedMm = left.Sum(p => p.LengthMm);
            var count = left.Count;
            FromStock(left, onHand);
            foreach (var piece in TakeOut(left, Capacity(stock.NewReelMm), $"of {reel}: more than a new reel, and what is on hand is used up"))
            {
                (usedMm, count) = (usedMm - piece.LengthMm, count - 1);
            }

            if (left.Count == 0)
            {
                if (count > 0)
                {
                    needs.Add(new(reel, count, usedMm, stock.NewReelMm, 0, 0, true, "cut from what is on hand"));
                }

                return;
            }

            var packing = BarPacker.Pack(PackingTask.Of(Capacity(stock.NewReelMm), left.Select(Wanted)), effort);
            NewReels(packing, left);
            var least = LeastNew(pieces, packing, usedMm);
            needs.Add(new(reel, count, usedMm, stock.NewReelMm, packing.Bars, least, packing.Bars == least, CutReasons.Of(packing, stock.NewReelMm, least)));
        }

        // the least number of new reels whatever is cut from stock: exact without stock, by length with it
        private int LeastNew(CutPiece[] pieces, Packing packing, double usedMm)
        {
            var stockMm = stock.OnHand.Where(p => p.Fits(reel)).Sum(p => p.LengthMm * p.Pieces);
            if (stockMm <= 0)
            {
                return packing.LowerBound;
            }

            var kerfMm = pieces.Length * stock.KerfMm;
            return (int)Math.Max(0, Math.Ceiling(((usedMm + kerfMm - stockMm) / (stock.NewReelMm - stock.EndTrimMm + stock.KerfMm)) - 1e-9));
        }

        private void FromStock(List<CutPiece> left, Dictionary<StockPiece, int> onHand)
        {
            foreach (var piece in stock.OnHand.Where(p => p.Fits(reel)).OrderBy(p => p.LengthMm).ThenBy(p => p.Id, NaturalOrder.Instance))
            {
                for (var n = onHand[piece]; n > 0 && left.Count > 0; n--)
                {
                    var room = Capacity(piece.LengthMm);
                    var task = PackingTask.Of(Math.Max(1, room), left.Select(Wanted)).Reduced(out var unit);
                    var bar = SubsetSum.Fullest(task, [.. task.Pieces.Select(p => p.Count)], room / unit);
                    if (room <= 0 || bar.All(c => c == 0))
                    {
                        break;
                    }

                    onHand[piece]--;
                    var name = piece.Pieces > 1 ? $"{piece.Id} ({piece.Pieces - n + 1})" : piece.Id;
                    Use(name, false, piece.LengthMm, Taken(left, bar, task, unit));
                }
            }
        }

        private void NewReels(Packing packing, List<CutPiece> left)
        {
            var number = 0;
            foreach (var pattern in packing.Patterns)
            {
                for (var t = 0; t < pattern.Times; t++)
                {
                    Use($"new {++number}", true, stock.NewReelMm, Taken(left, [.. pattern.Counts], packing.Task, 1));
                }
            }
        }

        private List<CutPiece> Taken(List<CutPiece> left, int[] bar, PackingTask task, long unit)
        {
            var taken = new List<CutPiece>();
            for (var c = 0; c < bar.Length; c++)
            {
                for (var n = 0; n < bar[c]; n++)
                {
                    var at = left.FindIndex(p => Wanted(p) == task.Pieces[c].Length * unit);
                    taken.Add(left[at]);
                    left.RemoveAt(at);
                }
            }

            return taken;
        }

        private void Use(string from, bool isNew, double lengthMm, List<CutPiece> pieces)
        {
            var restMm = Math.Round(lengthMm - stock.EndTrimMm - pieces.Sum(p => p.LengthMm + stock.KerfMm) + stock.KerfMm, 3);
            uses.Add(new(reel, from, isNew, lengthMm, [.. pieces], Math.Max(0, restMm), restMm >= stock.KeepFromMm));
        }
    }
}
