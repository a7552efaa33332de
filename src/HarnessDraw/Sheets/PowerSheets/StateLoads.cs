using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;
using HarnessDraw.Planning;
using HarnessDraw.Sheets.Pages;

namespace HarnessDraw.Sheets.PowerSheets;

/// <summary>
/// What is drawn in one state of one build, as the network is solved there: amperes of all loads on the battery's own voltage, what the alternators give of their rated
/// output, and what the batteries give (positive) or take. Null: the harness has no alternator, or its output is not known.
/// </summary>
internal sealed record StateLoads(OperatingState State, double LoadsA, double GivenA, double? OutputA, double BatteryA, double? BatteryV, string Heaviest)
{
    private const int Named = 2;
    private const double LeastA = 0.05;

    /// <summary>Amperes left of the rated output while the engine runs; negative: the battery drains.</summary>
    public double? ReserveA => State.Engine == EngineState.Running && OutputA is { } output ? output - LoadsA : null;

    /// <summary>The states in the order of the description, in the build asked for or the usual one.</summary>
    public static ImmutableArray<StateLoads> Of(Plan plan, ImmutableSortedDictionary<string, string>? build)
    {
        if (plan.Harness.States.IsEmpty)
        {
            return [];
        }

        var kinds = plan.Harness.Power.Sources.ToDictionary(s => s.Id, s => s.Kind, StringComparer.Ordinal);
        var alternators = plan.Harness.Power.Sources.Where(s => s.Kind == SourceKind.Alternator).ToList();
        double? output = alternators.Count > 0 && alternators.All(a => a.OutputA is not null) ? alternators.Sum(a => a.OutputA!.Value) : null;
        return [.. NetworkSolver.Solve(plan, build).Select((point, i) => One(plan.Harness.States[i], point, kinds, output))];
    }

    private static StateLoads One(OperatingState state, OperatingPoint point, Dictionary<string, SourceKind> kinds, double? outputA)
    {
        double Sum(SourceKind kind) => point.Sources.Where(s => kinds.GetValueOrDefault(s.Source) == kind).Sum(s => s.CurrentA);
        // what neither charges nor comes from the battery is drawn: a converter draws for its own loads
        var (given, battery) = (Sum(SourceKind.Alternator), Sum(SourceKind.Battery));
        var heaviest = point.Loads.Where(l => Math.Abs(l.CurrentA) >= LeastA).GroupBy(l => l.Element is null ? "as given" : l.Thing, StringComparer.Ordinal)
            .Select(g => (Thing: g.Key, Amps: g.Sum(l => Math.Abs(l.CurrentA)))).OrderByDescending(l => l.Amps).ThenBy(l => l.Thing, StringComparer.Ordinal)
            .Take(Named).Select(l => $"{l.Thing} {Shown.Number(l.Amps, 1)}");
        return new(state, given + battery, given, outputA, battery, point.Sources.FirstOrDefault(s => kinds.GetValueOrDefault(s.Source) == SourceKind.Battery)?.VoltageV, string.Join(", ", heaviest));
    }
}
