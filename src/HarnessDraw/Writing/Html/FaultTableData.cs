using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using HarnessDraw.Planning;
using HarnessDraw.Troubleshooting;
using HarnessDraw.Writing.PlanFile;

namespace HarnessDraw.Writing.Html;

/// <summary>
/// What every single fault of one build does, for the page: by case (faults that are one to the network share it) the loads that are not as they should be
/// and the points whose volts change, as flat lists of numbers. What does not change is left out.
/// </summary>
internal static class FaultTableData
{
    // volts: changes below it are not told, and no test rests on them
    private const double LeastChangeV = 0.15;

    public static void Write(Utf8JsonWriter json, Plan plan, ImmutableSortedDictionary<string, string>? build)
    {
        var bench = new FaultBench(plan, build);
        var ranking = new FaultRanking(bench, bench.Faults(FaultWeights.InService));
        var points = bench.Points.Select((p, i) => (p, i)).Where(p => !p.p.UnderWrap).Select(p => p.i).ToImmutableArray();
        json.WriteStartObject("faultTable");
        json.Strings("points", [.. points.Select(p => bench.Points[p].Name)]);
        json.Strings("loads", [.. bench.Loads.Select(l => l.Name)]);
        Numbers(json, "should", bench.ShouldWork.SelectMany(s => s.Select(on => on ? 1.0 : 0)));
        Numbers(json, "sound", bench.WithoutFault.Volts.SelectMany(s => points.Select(p => Rounded(s[p]))));
        Numbers(json, "live", bench.WithoutFault.LiveV.Select(v => Rounded(v)));
        var cases = new Dictionary<SolvedFault, int>(ReferenceEqualityComparer.Instance);
        json.WriteStartArray("faults");
        foreach (var suspect in ranking.Faults)
        {
            WriteFault(json, bench, suspect, points, cases);
        }

        json.WriteEndArray();
        json.WriteStartArray("cases");
        foreach (var solved in cases.OrderBy(c => c.Value).Select(c => c.Key))
        {
            json.WriteStartObject();
            Numbers(json, "seen", Seen(bench, solved));
            Numbers(json, "volts", Changes(bench, points, (s, p) => solved.Volts[s][p]));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteFault(Utf8JsonWriter json, FaultBench bench, Suspect suspect, ImmutableArray<int> points, Dictionary<SolvedFault, int> cases)
    {
        json.WriteStartObject();
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

        json.WriteStartArray("variants");
        foreach (var prediction in suspect.Predictions)
        {
            if (!cases.TryGetValue(prediction.Solved, out var number))
            {
                cases.Add(prediction.Solved, number = cases.Count);
            }

            // the ends of the faulty wire, where its place makes a difference
            var own = prediction.Spot is WireSpot.From or WireSpot.To
                ? points.Where(p => p == prediction.FromPoint || p == prediction.ToPoint).SelectMany(p => Enumerable.Range(0, bench.States.Length)
                    .Where(s => Math.Abs(prediction.Volts(s, p) - prediction.Solved.Volts[s][p]) > LeastChangeV)
                    .SelectMany(s => new double[] { s, points.IndexOf(p), Rounded(prediction.Volts(s, p)) })).ToArray()
                : [];
            json.WriteStartArray();
            json.WriteNumberValue(number);
            foreach (var value in own)
            {
                json.WriteNumberValue(value);
            }

            json.WriteEndArray();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>State, load, class of every load that is not as it should be.</summary>
    private static IEnumerable<double> Seen(FaultBench bench, SolvedFault solved)
    {
        for (var s = 0; s < bench.States.Length; s++)
        {
            for (var l = 0; l < bench.Loads.Length; l++)
            {
                var seen = LoadClasses.Of(solved.Shares[s][l], bench.ShouldWork[s][l]);
                if (seen is not (LoadClass.Works or LoadClass.Off))
                {
                    yield return s;
                    yield return l;
                    yield return (int)seen;
                }
            }
        }
    }

    /// <summary>State, point, volts wherever they change.</summary>
    private static IEnumerable<double> Changes(FaultBench bench, ImmutableArray<int> points, Func<int, int, float> volts)
    {
        for (var s = 0; s < bench.States.Length; s++)
        {
            for (var p = 0; p < points.Length; p++)
            {
                if (Math.Abs(volts(s, points[p]) - bench.WithoutFault.Volts[s][points[p]]) > LeastChangeV)
                {
                    yield return s;
                    yield return p;
                    yield return Rounded(volts(s, points[p]));
                }
            }
        }
    }

    private static double Rounded(float volts) => Math.Round(volts, 1, MidpointRounding.AwayFromZero) + 0.0;

    private static void Numbers(Utf8JsonWriter json, string name, IEnumerable<double> values)
    {
        json.WriteStartArray(name);
        foreach (var value in values)
        {
            json.WriteRawValue(value.ToString("0.##", CultureInfo.InvariantCulture));
        }

        json.WriteEndArray();
    }
}
