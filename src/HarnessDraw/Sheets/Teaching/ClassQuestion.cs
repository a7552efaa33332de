using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Electrical;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.BenchTests;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.Teaching;

/// <summary>A question whose answer the plan holds; handout and key number them alike.</summary>
public sealed record ClassQuestion(string Group, string Ask, string Answer)
{
    private const int PerGroup = 8;

    // a longer list is no question
    private const int MostDead = 8;

    // less is lost than a school meter can tell
    private const double LeastDropV = 0.02;

    /// <summary>Questions on what the chart shows, what a meter reads, what copper loses and what a fuse feeds: some of each, spread evenly over the plan.</summary>
    public static ImmutableArray<ClassQuestion> Of(Plan plan) => [.. Chart(plan), .. Meter(plan), .. Copper(plan), .. Fuses(plan)];

    private static IEnumerable<ClassQuestion> Chart(Plan plan) =>
        Spread(plan.Wires).Select(w => new ClassQuestion("1 READ THE CHART", $"Wire {w.Id} begins at {EndText.Words(w.From)}. Colour, size, other end?", $"{w.Colour}, {Size(w)}, {EndText.Words(w.To)}"));

    private static IEnumerable<ClassQuestion> Meter(Plan plan)
    {
        var volts = new ExpectedVolts(plan);
        var rows = Spread([.. PoweredRow.Of(plan).Where(r => r.Volts is not null && volts.Off(r.Point) is not null)]);
        for (var i = 0; i < rows.Length; i++)
        {
            // every other one with the key off: nought is an answer too
            var (state, answer) = i % 2 == 0 ? (rows[i].State, rows[i].Volts) : ("key off", volts.Off(rows[i].Point));
            yield return new("2 WHAT SHOULD THE METER SAY?", $"{EndText.OfNode(rows[i].Point)} ({rows[i].Circuit.Id}), {state}: volts to the grounded pole?", $"{Shown.Fixed(answer, 1)} V");
        }
    }

    private static IEnumerable<ClassQuestion> Copper(Plan plan)
    {
        var sized = plan.Wires.Where(w => w is { Worst: not null, CutLengthMm: not null })
            .Select(w => (Wire: w, Size: plan.Harness.Catalogue.WireTypes.FirstOrDefault(t => t.Id == w.WireType)?.Sizes.FirstOrDefault(s => s.Label == w.SizeLabel)))
            .Where(w => w.Size is not null)
            .Select(w => (w.Wire, Ohm: w.Size!.MilliohmPerM, Drop: Math.Abs(w.Wire.Worst!.CurrentA) * w.Size.MilliohmPerM * w.Wire.CutLengthMm!.Value * 1e-6));
        foreach (var (wire, ohm, drop) in Spread([.. sized.Where(w => w.Drop >= LeastDropV)]))
        {
            yield return new("3 WHAT DOES THE COPPER LOSE?", $"{wire.Id}: {Metres(wire)} m of {Size(wire)}, {Shown.Number(ohm, 2)} mΩ a metre at 20 °C, {Shown.Fixed(Math.Abs(wire.Worst!.CurrentA), 1)} A. Volts lost?", $"{Shown.Fixed(drop, 2)} V");
        }
    }

    // what a class sees is what the loads do, in any state; of fuses with the same symptoms none is the answer
    private static IEnumerable<ClassQuestion> Fuses(Plan plan)
    {
        var rows = FaultFinder.Opens(plan).Where(o => o.What.StartsWith(FaultFinder.FuseWord, StringComparison.Ordinal)).GroupBy(o => o.What[FaultFinder.FuseWord.Length..], StringComparer.Ordinal)
            .Where(g => g.All(o => o.Dim.IsEmpty && o.Sneaks.IsEmpty))
            .Select(g => (Fuse: plan.Fuses.First(f => f.Id == g.Key), Dead: string.Join(", ", g.SelectMany(o => o.Dead).Select(d => d.Load).Distinct().Take(MostDead + 1)), Count: g.SelectMany(o => o.Dead).Select(d => d.Load).Distinct().Count()))
            .Where(r => r.Count is > 0 and <= MostDead).GroupBy(r => r.Dead, StringComparer.Ordinal).Where(g => g.Count() == 1).Select(g => g.First()).OrderBy(r => r.Fuse.Id, CavityOrder.Instance);
        return Spread([.. rows]).Select(f => new ClassQuestion("4 WHICH FUSE DO YOU LOOK AT FIRST?", $"Dead: {f.Dead}. Everything else works.", $"{f.Fuse.Id}, {Shown.Number(f.Fuse.RatingA, 1)} A"));
    }

    private static string Size(Wire wire) => wire.Awg is null ? $"{wire.SizeLabel} mm²" : wire.SizeLabel;

    private static string Metres(Wire wire) => (wire.CutLengthMm!.Value / 1000).ToString("0.00", CultureInfo.InvariantCulture);

    // the first and then every n-th
    private static ImmutableArray<T> Spread<T>(ImmutableArray<T> all)
    {
        var count = Math.Min(PerGroup, all.Length);
        return [.. Enumerable.Range(0, count).Select(i => all[i * all.Length / count])];
    }
}
