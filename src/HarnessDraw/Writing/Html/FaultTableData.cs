using System.Collections.Immutable;
using System.Text.Json;
using HarnessDraw.Planning;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// What every single fault of one build does, for the page. A row is what a vehicle shows in one state, by points whose volts lie equally many steps of a meter
/// off those without a fault, and by loads that do the same wrong; what is as it should be is left out. Most rows and most sets of points are alike and each stands
/// once; a case names its row for every state. Faults that are one to the network share a case.
/// </summary>
internal sealed class FaultTableData
{
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
        foreach (var solved in faults.SelectMany(f => f.Predictions).Select(p => p.Solved).Where(s => !caseOf.ContainsKey(s)))
        {
            caseOf[solved] = cases.Of([.. Enumerable.Range(0, bench.States.Length).Select(s => rows.Of(Row(solved, s)))]);
        }
    }

    /// <summary>The step of a meter in which volts lie: nothing that it tells is lost.</summary>
    internal static int Step(double volts) => (int)Math.Round(Trust.Steps(volts));

    /// <summary>Names, weights and rules, as the member 'faultTable'.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject("faultTable");
        json.Strings("points", [.. points.Select(p => bench.Points[p].Name)]);
        json.Strings("loads", [.. bench.Loads.Select(l => l.Name)]);
        Numbers(json, "should", bench.ShouldWork.SelectMany(s => s.Select(on => on ? 1 : 0)));
        Numbers(json, "sound", bench.WithoutFault.Volts.SelectMany(s => points.Select(p => Step(s[p]))));
        Numbers(json, "live", bench.WithoutFault.LiveV.Select(v => Step(v)));
        json.WriteStartObject("trust");
        json.WriteNumber("wrong", Trust.Wrong);
        json.WriteNumber("leastElsewhere", Trust.LeastElsewhere);
        json.WriteNumber("ohmSpread", Trust.OhmSpread);
        json.WriteNumber("partSpread", Trust.PartSpread);
        json.WriteNumber("meterShare", Trust.MeterShare);
        json.WriteEndObject();
        json.Array("faults", faults, WriteFault);
        // within a set each number is told by how far it lies behind the one before
        Lists(json, "sets", sets.All.Select(s => s.Select((n, i) => i == 0 ? n : n - s[i - 1])));
        Lists(json, "rows", rows.All);
        Lists(json, "cases", cases.All);
        json.WriteEndObject();
    }

    /// <summary>Step and set of points, in turns; loads are numbered behind the points, and their step is their class.</summary>
    private int[] Row(SolvedFault solved, int state)
    {
        var (volts, sound) = (solved.Volts[state], bench.WithoutFault.Volts[state]);
        var off = Enumerable.Range(0, points.Length).Where(i => SuspectGroup.Parts(volts[points[i]], sound[points[i]])).Select(i => (Value: Step(volts[points[i]]) - Step(sound[points[i]]), Number: i));
        var wrong = Enumerable.Range(0, bench.Loads.Length).Select(l => (Seen: LoadClasses.Of(solved.Shares[state][l], bench.ShouldWork[state][l]), Number: points.Length + l))
            .Where(l => l.Seen is not (LoadClass.Works or LoadClass.Off)).Select(l => (Value: (int)l.Seen, l.Number));
        return [.. off.GroupBy(o => o.Value).Concat(wrong.GroupBy(w => w.Value)).SelectMany(g => new[] { g.Key, sets.Of([.. g.Select(o => o.Number)]) })];
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
        from value in new[] { variant, s, points.IndexOf(end), Step(prediction.Volts(s, end)) }
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
