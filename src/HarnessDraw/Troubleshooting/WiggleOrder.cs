using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Troubleshooting;

/// <summary>A part to move, warm or wet while the meter is watched, and why it comes where it comes.</summary>
public sealed record WiggleStep(string Part, string Where, string Why, double Minutes)
{
    /// <summary>How likely it is this one, of all that stop the load.</summary>
    public double Probability { get; init; }
}

/// <summary>
/// An intermittent fault of a load: the point to watch with the volts to expect, and what to move in which order: parts that stop it by weight over the minutes
/// to get at them. What flexes, is hot or wet says so: move, warm with a hot-air gun at a hand's width, or spray with water accordingly.
/// </summary>
public sealed record WiggleOrder(string Load, string State, ProbePoint Watch, double ExpectedV, ImmutableArray<WiggleStep> Steps)
{
    /// <summary>Null when the load works in no state.</summary>
    public static WiggleOrder? Of(FaultBench bench, SeenLoad load)
    {
        ArgumentNullException.ThrowIfNull(bench);
        ArgumentNullException.ThrowIfNull(load);
        var l = bench.Loads.IndexOf(load);
        var s = Enumerable.Range(0, bench.States.Length).FirstOrDefault(i => bench.ShouldWork[i][l], -1);
        var branch = bench.Network.Network.Branches[load.Branch];
        var watch = bench.Points.Where(p => p.Name.StartsWith(load.Thing + ".", StringComparison.Ordinal) && (p.Node == branch.A || p.Node == branch.B))
            .OrderByDescending(p => s < 0 ? 0 : Math.Abs(bench.WithoutFault.Volts[s][bench.Points.IndexOf(p)])).FirstOrDefault();
        if (s < 0 || watch is null)
        {
            return null;
        }

        var here = bench.Only([s]);
        var evidence = new Evidence([new(l, 0, LoadClass.Dead)], [], []);
        var parts = new FaultReach(here).Of(bench.Faults(FaultWeights.InService), evidence).Where(f => f.Kind == FaultKind.Open && f.Part != load.Name && Stops(here, f, l)).ToList();
        var all = parts.Sum(f => f.Weight);
        var steps = parts.Select(f => (Fault: f, Why: Why(bench, f), Minutes: Minutes(bench, f)))
            .OrderByDescending(f => f.Fault.Weight / (f.Minutes + TestChooser.SetUpMinutes)).ThenBy(f => f.Fault.Part, StringComparer.Ordinal)
            .Select(f => new WiggleStep(f.Fault.Part, f.Fault.Where, f.Why, f.Minutes) { Probability = f.Fault.Weight / all });
        return new(load.Name, bench.States[s].Id, watch, bench.WithoutFault.Volts[s][bench.Points.IndexOf(watch)], [.. steps]);
    }

    // what the load only slows down by is not what stops it: with an alternator out the battery feeds on
    private static bool Stops(FaultBench bench, Fault fault, int load) =>
        fault.Variants.Any(v => LoadClasses.Of(bench.Predict(v, withVolts: false).Solved.Shares[0][load], bench.ShouldWork[0][load]) == LoadClass.Dead);

    private static double Minutes(FaultBench bench, Fault fault) =>
        fault.InBundle ? AccessMinutes.Bay
        : bench.Points.Where(p => fault.At.Any(a => p.Name.StartsWith(a + ".", StringComparison.Ordinal) || p.Name == a)).Select(p => p.Minutes).DefaultIfEmpty(AccessMinutes.Panel).Min();

    private static string Why(FaultBench bench, Fault fault)
    {
        var index = bench.Network.Index;
        List<string> why = [];
        var segments = fault.InBundle ? fault.Wires.SelectMany(w => bench.Plan.WireOf(w).Segments).ToHashSet(StringComparer.Ordinal) : [];
        var laid = bench.Plan.Tree.Segments.Where(s => segments.Contains(s.Id)).ToList();
        var flexing = laid.FirstOrDefault(s => bench.Plan.Harness.Layout.Paths.Any(p => p.MovesMm is > 0 && ((p.From == s.From && p.To == s.To) || (p.From == s.To && p.To == s.From))));
        var zones = laid.Select(s => s.Zone).Concat(fault.At.Select(a => index.Thing(a) is { } thing ? index.Place(thing.Place)?.Zone : null)).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        if (flexing is not null)
        {
            why.Add($"flexes between {flexing.From} and {flexing.To}: bend it there");
        }

        if (zones.Find(z => index.Zone(z)?.AmbientC >= FaultWeights.InService.HotFromC) is { } hot)
        {
            why.Add($"hot ({hot}): warm it");
        }

        if (zones.Find(z => index.IsWet(z)) is { } wet)
        {
            why.Add($"wet ({wet}): spray it");
        }

        if (!fault.InBundle)
        {
            why.Add("pull at each wire and rock the joint");
        }

        return why.Count == 0 ? "press and bend the bundle along its way" : string.Join("; ", why);
    }
}
