using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Planning;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// What every single fault of one build does, for the page. A row is what a vehicle shows in one state, by points whose volts lie equally many steps of a meter
/// off those without a fault, and by loads that do the same wrong; what is as it should be is left out. Most rows and most sets of points are alike and each stands
/// once; a case names its row for every state, then the fuses that it opens. Faults that are one to the network share a case.
/// </summary>
internal sealed class FaultTableData
{
    // hundredths of what a load should do: from here on nobody sees a difference, below nobody sees that it does anything
    private const int AsGood = 97;
    private const int AsNothing = 20;
    // parts of a meter's step that are told apart: what the page reckons with them is what the program reckons without
    private const int Fine = 16;

    // volts
    private const double LiveStepV = 0.002;

    // beyond all steps of any battery
    private const int Far = 1000 * Fine;
    private readonly FaultBench bench;
    private readonly ImmutableArray<Suspect> faults;
    private readonly ImmutableArray<int> points;
    private readonly Numbered sets = new();
    private readonly Numbered rows = new();
    private readonly Numbered cases = new();
    private readonly Dictionary<SolvedFault, int> caseOf = new(ReferenceEqualityComparer.Instance);

    public FaultTableData(Plan plan, ImmutableSortedDictionary<string, string>? build)
    {
        bench = new(plan, build);
        faults = new FaultRanking(bench, bench.Faults(FaultWeights.InService)).Faults;
        points = [.. Enumerable.Range(0, bench.Points.Length).Where(p => !bench.Points[p].UnderWrap)];
        var fuses = plan.Fuses.Select((f, i) => (f.Id, i)).GroupBy(f => f.Id, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().i, StringComparer.Ordinal);
        foreach (var solved in faults.SelectMany(f => f.Predictions).Select(p => p.Solved).Where(s => !caseOf.ContainsKey(s)))
        {
            caseOf[solved] = cases.Of([.. Enumerable.Range(0, bench.States.Length).Select(s => rows.Of(Row(solved, s))), .. solved.Blown.Select(f => fuses[f])]);
        }
    }

    /// <summary>
    /// The <see cref="Fine"/> part of a meter's step in which volts lie, counted from the nearer pole of the battery: nothing that it tells is lost, neither against ground nor against
    /// the live post. Steps from the live post are taken from <see cref="Far"/>.
    /// </summary>
    private static int Code(double volts, double live)
    {
        var (size, above) = (Math.Abs(live), live < 0 ? -volts : volts);
        return above > size / 2 ? Far - (int)Math.Round(Fine * Trust.Steps(size - above)) : (int)Math.Round(Fine * Trust.Steps(above));
    }

    /// <summary>Names, weights and rules, as the member 'faultTable'.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject("faultTable");
        json.Strings("points", [.. points.Select(p => bench.Points[p].Name)]);
        json.Strings("places", [.. points.Select(p => bench.Points[p].Where)]);
        json.WriteStartArray("minutes");
        foreach (var p in points)
        {
            json.WriteNumberValue(bench.Points[p].Minutes);
        }

        json.WriteEndArray();
        json.Strings("loads", [.. bench.Loads.Select(l => l.Name)]);
        Numbers(json, "should", bench.ShouldWork.SelectMany(s => s.Select(on => on ? 1 : 0)));
        Numbers(json, "sound", bench.WithoutFault.Volts.SelectMany((s, i) => points.Select(p => Code(s[p], bench.WithoutFault.LiveV[i]))));
        Numbers(json, "live", bench.WithoutFault.LiveV.Select(v => (int)Math.Round(v / LiveStepV)));
        json.WriteStartObject("rules");
        foreach (var (name, value) in Rules)
        {
            json.WriteNumber(name, value);
        }

        json.WriteEndObject();
        json.Array("faults", faults, WriteFault);
        // within a set each number is told by how far it lies behind the one before
        Lists(json, "sets", sets.All.Select(s => s.Select((n, i) => i == 0 ? n : n - s[i - 1])));
        Lists(json, "rows", rows.All);
        Lists(json, "cases", cases.All);
        json.WriteEndObject();
    }

    /// <summary>The figures by which the program itself ranks and chooses, so that the page does the same.</summary>
    private static ImmutableArray<(string Name, double Value)> Rules =>
    [
        ("wrong", Trust.Wrong), ("leastElsewhere", Trust.LeastElsewhere), ("ohmSpread", Trust.OhmSpread), ("partSpread", Trust.PartSpread), ("meterShare", Trust.MeterShare),
        ("sourceSpread", SourceVolts.Spread), ("sourceStep", SourceVolts.Step), ("sourceHalf", SourceVolts.Half),
        ("shareBlur", Trust.ShareBlur), ("ohmBlur", Trust.OhmBlur), ("deadBelow", LoadClasses.DeadBelow), ("dimBelow", LoadClasses.DimBelow),
        ("hedge", TestChooser.Hedge), ("setUpMinutes", TestChooser.SetUpMinutes), ("fuseMinutes", TestChooser.FuseMinutes), ("lookMinutes", TestChooser.LookMinutes),
        ("leastBits", TestChooser.LeastBits), ("asGood", TestChooser.AsGood), ("leastProbability", TestChooser.LeastProbability), ("mostSuspects", TestChooser.MostSuspects), ("reach", ReadingBits.Reach), ("mostBins", ReadingBits.MostBins),
        ("far", Far), ("fine", Fine), ("liveStepV", LiveStepV), ("sure", Troubleshooter.Sure), ("mostStates", Troubleshooter.MostStates),
    ];

    /// <summary>
    /// Difference and set of points, in turns: of a point steps off what it shows without a fault, of a load (numbered behind the points) hundredths off what it
    /// should do, of the live post (behind the loads) steps of <see cref="LiveStepV"/>. What is the same is left out.
    /// </summary>
    private int[] Row(SolvedFault solved, int state)
    {
        var (volts, sound) = (solved.Volts[state], bench.WithoutFault.Volts[state]);
        var (live, soundLive) = (solved.LiveV[state], bench.WithoutFault.LiveV[state]);
        var off = Enumerable.Range(0, points.Length).Select(i => (Value: Code(volts[points[i]], live) - Code(sound[points[i]], soundLive), Number: i)).Where(o => o.Value != 0);
        var post = (Value: (int)Math.Round(live / LiveStepV) - (int)Math.Round(soundLive / LiveStepV), Number: points.Length + bench.Loads.Length);
        var loads = Enumerable.Range(0, bench.Loads.Length).Select(l => (Value: Off(solved.Shares[state][l], bench.ShouldWork[state][l]), Number: points.Length + l)).Append(post).Where(l => l.Value != 0);
        return [.. off.GroupBy(o => o.Value).Concat(loads.GroupBy(w => w.Value)).SelectMany(g => new[] { g.Key, sets.Of([.. g.Select(o => o.Number)]) })];
    }

    /// <summary>Whole hundredths below what a load should do, or above nothing; rounded down, so that no class changes.</summary>
    private static int Off(float share, bool shouldWork)
    {
        var hundredths = (int)Math.Floor(share * 100.0);
        return shouldWork ? (hundredths >= AsGood ? 0 : hundredths < AsNothing ? -100 : hundredths - 100) : hundredths < AsNothing ? 0 : Math.Min(hundredths, 100);
    }

    private void WriteFault(Utf8JsonWriter json, Suspect suspect)
    {
        json.WriteString("words", suspect.Fault.Words);
        json.WriteString("where", suspect.Fault.Where);
        json.Number("weight", suspect.Fault.Weight, 3);
        if (!suspect.Fault.Wires.IsEmpty)
        {
            json.WriteString("wire", suspect.Fault.Wires[0]);
        }

        if (suspect.UnknownOhm)
        {
            json.WriteBoolean("unknownOhm", true);
        }

        Numbers(json, "cases", suspect.Predictions.Select(p => caseOf[p.Solved]));
        var own = suspect.Predictions.SelectMany(OwnEnds).ToArray();
        if (own.Length > 0)
        {
            Numbers(json, "own", own);
        }
    }

    /// <summary>Variant, state, point, step at the end of the faulty wire where a meter beyond its joint sees other volts than the case says.</summary>
    private IEnumerable<int> OwnEnds(Prediction prediction, int variant) =>
        from end in new[] { prediction.Spot == WireSpot.From ? prediction.FromPoint : -1, prediction.Spot == WireSpot.To ? prediction.ToPoint : -1 }
        where end >= 0 && points.Contains(end)
        from s in Enumerable.Range(0, bench.States.Length)
        where SuspectGroup.Parts(prediction.Volts(s, end), prediction.Solved.Volts[s][end])
        from value in new[] { variant, s, points.IndexOf(end), Code(prediction.Volts(s, end), prediction.Solved.LiveV[s]) }
        select value;

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<int> values)
    {
        json.WritePropertyName(name);
        List(json, values);
    }

    private static void Lists(Utf8JsonWriter json, string name, IEnumerable<IEnumerable<int>> lists)
    {
        json.WriteStartArray(name);
        foreach (var list in lists)
        {
            List(json, list);
        }

        json.WriteEndArray();
    }

    private static void List(Utf8JsonWriter json, IEnumerable<int> values)
    {
        json.WriteStartArray();
        foreach (var value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }

    /// <summary>Lists of numbers, each once, by their place in the order in which they came.</summary>
    private sealed class Numbered
    {
        private readonly Dictionary<string, int> known = new(StringComparer.Ordinal);

        public List<int[]> All { get; } = [];

        public int Of(int[] list)
        {
            if (known.TryAdd(string.Join(',', list), All.Count))
            {
                All.Add(list);
            }

            return known[string.Join(',', list)];
        }
    }
}
