using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// Turns the key off in every state in which the engine runs. What hung behind the key still hangs together, relays are as they were, and the alternator goes on turning: its
/// exciter terminal then feeds the ignition back. Solved with and without it: what only the first has on is kept on by it.
/// </summary>
public static class KeyOffFinder
{
    public static ImmutableArray<RunOnLoad> Find(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var running = plan.Harness.States.Where(s => s.Engine == EngineState.Running && s.Key != KeyPosition.Off).ToList();
        var network = new PlanNetwork(plan, options ?? PlanningOptions.Usual, keyTies: true);
        if (running.Count == 0 || !network.Network.Branches.Any(b => b.Kind == BranchKind.Exciter))
        {
            return [];
        }

        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        return [.. running.SelectMany(state => InState(network, state, chosen))];
    }

    private static IEnumerable<RunOnLoad> InState(PlanNetwork network, OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var before = new StateCircuit(network, state, build);
        var fed = new StateCircuit(network, state, build, null, before, keyOff: new(Excites: true));
        var dead = new StateCircuit(network, state, build, null, before, keyOff: new(Excites: false));
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i] is { Kind: BranchKind.Load, Element: not null, Thing.Kind: not ThingKind.Alternator } load)
            {
                var share = Math.Abs(fed.Solution.Amperes[i]) / load.NominalA;
                if (share > FaultFinder.DeadShare && Math.Abs(dead.Solution.Amperes[i]) / load.NominalA <= FaultFinder.DeadShare)
                {
                    yield return new(state.Id, LoadName.Of(load.Thing!, load.Element), load.Circuit, share, Math.Abs(fed.Solution.Volts[load.A] - fed.Solution.Volts[load.B]));
                }
            }
        }
    }
}
