using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>Finds the operating point of a plan in its states, or of any network of two-ended parts.</summary>
public static class NetworkSolver
{
    /// <summary>Every state of one build, in the order of the description. The first build of the plan when none is given.</summary>
    public static ImmutableArray<OperatingPoint> Solve(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var network = new PlanNetwork(plan, options ?? PlanningOptions.Usual);
        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        return [.. Circuits(network, chosen).Select((circuit, s) => OperatingPointMaker.Make(network, circuit, plan.Harness.States[s], chosen))];
    }

    /// <summary>The plan with the volts of one build; of the usual one it has them.</summary>
    public static Plan InBuild(Plan plan, ImmutableSortedDictionary<string, string> build)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(build);
        var isUsual = plan.Builds.FirstOrDefault() is { } usual && usual.All(o => build.GetValueOrDefault(o.Key) == o.Value);
        return isUsual ? plan : plan with { Nodes = Volts(plan, [build], PlanningOptions.Usual)[0].Nodes };
    }

    /// <summary>Volts of every pin, cavity and splice in every state of some builds.</summary>
    public static ImmutableArray<BuildVolts> Volts(Plan plan, ImmutableArray<ImmutableSortedDictionary<string, string>> builds, PlanningOptions options)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Volts(new(plan, options), builds, (_, _) => null);
    }

    /// <param name="network">The network of the plan.</param>
    /// <param name="builds">Builds, the usual one first.</param>
    /// <param name="near">The same case of the same network solved before with wires hardly different, where there is one.</param>
    internal static ImmutableArray<BuildVolts> Volts(PlanNetwork network, ImmutableArray<ImmutableSortedDictionary<string, string>> builds, Func<OperatingState, ImmutableSortedDictionary<string, string>, StateCircuit?> near)
    {
        var states = network.Plan.Harness.States;
        var told = new BuildVolts[builds.Length];
        var circuits = new StateCircuit[builds.Length * states.Length];
        var first = FirstAlike(network.Network, states, builds);

        // of states of one name the first counts
        int[] shown = [.. Enumerable.Range(0, states.Length).DistinctBy(s => states[s].Id, StringComparer.Ordinal).OrderBy(s => states[s].Id, StringComparer.Ordinal)];
        ImmutableArray<string> names = [.. shown.Select(s => states[s].Id)];
        // a build differs little from the first one: its states begin with the volts and the warmth of that one's, and those in which the same parts carry current differ in what hangs dead alone
        SideBySide.For(Math.Min(states.Length, circuits.Length), s => circuits[s] = Solved(s, null));
        SideBySide.For(Math.Max(0, circuits.Length - states.Length), i => Begin(states.Length + i, isAlike: false));
        SideBySide.For(Math.Max(0, circuits.Length - states.Length), i => Begin(states.Length + i, isAlike: true));
        SideBySide.For(builds.Length, b =>
        {
            var nodes = ImmutableArray.CreateBuilder<NodeVolts>(network.Shown.Count);
            foreach (var (name, node) in network.Shown)
            {
                nodes.Add(new(name, VoltsIn(circuits.AsSpan(b * states.Length, states.Length), node)));
            }

            told[b] = new(builds[b], nodes.MoveToImmutable());
        });
        return [.. told];

        void Begin(int i, bool isAlike)
        {
            if ((first[i] != i) == isAlike)
            {
                circuits[i] = Solved(i, circuits[isAlike ? first[i] : i % states.Length], isAlike);
            }
        }

        StateCircuit Solved(int i, StateCircuit? like, bool isAlike = false)
        {
            var (state, build) = (states[i % states.Length], builds[i / states.Length]);
            return new(network, state, build, null, isAlike ? like : near(state, build) ?? like, warms: true, alike: isAlike);
        }

        StateVolts VoltsIn(ReadOnlySpan<StateCircuit> solved, int node)
        {
            var volts = new double?[shown.Length];
            for (var s = 0; s < volts.Length; s++)
            {
                volts[s] = solved[shown[s]].VoltsOf(node) is { } v ? Math.Round(v, 4) + 0.0 : null;
            }

            return new(names, volts);
        }
    }

    /// <summary>By build and state: the first case in which the same parts carry current.</summary>
    private static int[] FirstAlike(ElectricalNetwork network, ImmutableArray<OperatingState> states, ImmutableArray<ImmutableSortedDictionary<string, string>> builds)
    {
        var names = network.Carrying([.. builds.SelectMany(b => states.Select(s => (s, b)))]);
        var met = new Dictionary<string, int>(StringComparer.Ordinal);
        return [.. names.Select((name, i) => met.TryAdd(name, i) ? i : met[name])];
    }

    /// <summary>A network part by part: nodes are numbered from 0, which is the reference.</summary>
    public static NetworkPoint Solve(ImmutableArray<NetworkPart> parts)
    {
        var nodes = parts.Select(p => Math.Max(p.A, p.B)).DefaultIfEmpty(0).Max() + 1;
        var solution = new NodalSolver(nodes, [.. parts.Select(p => (p.A, p.B))], [], 0).Solve([.. parts.Select(p => p.Law)]);
        return new([.. Enumerable.Range(0, nodes).Select(n => solution.Reached[n] ? solution.Volts[n] : (double?)null)], [.. solution.Amperes], solution.Settled);
    }

    /// <summary>States are solved side by side; each fills its own place, so the order of the results is that of the states.</summary>
    internal static StateCircuit[] Circuits(PlanNetwork network, ImmutableSortedDictionary<string, string> build)
    {
        var states = network.Plan.Harness.States;
        var circuits = new StateCircuit[states.Length];
        SideBySide.For(states.Length, s => circuits[s] = new(network, states[s], build));
        return circuits;
    }
}
