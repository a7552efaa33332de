using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>A load that is not as it should be: how it looks, and in which states (empty: in all in which it matters).</summary>
public sealed record Symptom(SeenLoad Load, LoadClass Seen, ImmutableArray<string> States);

/// <summary>What the driver sees, the fuses that open, and every single fault that looks so.</summary>
public sealed record SymptomRow(ImmutableArray<Symptom> Sees, ImmutableArray<string> Blown, ImmutableArray<Fault> Faults);

/// <summary>
/// For every single fault of one build what the driver sees, worked out from the network. Faults that look alike stand in one row. A bad joint is
/// told for <see cref="BadOhm"/> ohm.
/// </summary>
public sealed record SymptomTable(ImmutableArray<SymptomRow> Rows, ImmutableArray<Fault> Unseen)
{
    public const double BadOhm = 0.5;

    public required ImmutableSortedDictionary<string, string> Build { get; init; }

    public static SymptomTable Of(Plan plan, ImmutableSortedDictionary<string, string>? build = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var bench = new FaultBench(plan, build);
        var cases = bench.Faults(FaultWeights.InService).Select(f => (Fault: f, Variant: f.Variants[f.Kind == FaultKind.HighResistance ? FaultLister.BadOhms.IndexOf(BadOhm) : 0])).ToArray();
        var distinct = cases.Select(c => c.Variant).DistinctBy(v => v.Key).ToArray();
        SideBySide.For(distinct.Length, i => bench.Predict(distinct[i], withVolts: false));
        var rows = new List<(string Key, SymptomRow Row, List<Fault> Faults)>();
        var byKey = new Dictionary<string, List<Fault>>(StringComparer.Ordinal);
        foreach (var (fault, variant) in cases)
        {
            var solved = bench.Predict(variant, withVolts: false).Solved;
            var sees = Sees(bench, solved);
            var key = string.Join('|', sees.Select(s => $"{s.Load.Name}:{s.Seen}:{string.Join(',', s.States)}").Concat(solved.Blown));
            if (!byKey.TryGetValue(key, out var alike))
            {
                byKey.Add(key, alike = []);
                rows.Add((key, new(sees, solved.Blown, []), alike));
            }

            alike.Add(fault);
        }

        ImmutableArray<SymptomRow> told = [.. rows.Where(r => !r.Row.Sees.IsEmpty || !r.Row.Blown.IsEmpty).Select(r => r.Row with { Faults = [.. r.Faults.OrderByDescending(f => f.Weight)] })];
        ImmutableArray<Fault> unseen = [.. rows.Where(r => r.Row.Sees.IsEmpty && r.Row.Blown.IsEmpty).SelectMany(r => r.Faults)];
        return new([.. told.OrderBy(r => r.Sees.Length).ThenBy(r => FirstLoad(bench, r))], unseen) { Build = bench.Build };
    }

    private static int FirstLoad(FaultBench bench, SymptomRow row) => row.Sees.IsEmpty ? int.MaxValue : bench.Loads.IndexOf(row.Sees[0].Load);

    private static ImmutableArray<Symptom> Sees(FaultBench bench, SolvedFault solved)
    {
        var sees = ImmutableArray.CreateBuilder<Symptom>();
        for (var l = 0; l < bench.Loads.Length; l++)
        {
            var states = Enumerable.Range(0, bench.States.Length).Select(s => (State: s, Seen: LoadClasses.Of(solved.Shares[s][l], bench.ShouldWork[s][l]))).ToArray();
            foreach (var seen in new[] { LoadClass.Dead, LoadClass.Dim, LoadClass.OnWrongly })
            {
                var here = states.Where(s => s.Seen == seen).Select(s => bench.States[s.State].Id).ToImmutableArray();
                var might = states.Count(s => bench.ShouldWork[s.State][l] == (seen != LoadClass.OnWrongly));
                if (!here.IsEmpty)
                {
                    sees.Add(new(bench.Loads[l], seen, here.Length == might ? [] : here));
                }
            }
        }

        return sees.ToImmutable();
    }
}
