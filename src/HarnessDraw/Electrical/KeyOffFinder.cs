using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// Turns the key off in every state in which the engine runs. What hung behind the key still hangs together, relays are as they were, and the alternator goes on turning: its
/// exciter terminal then feeds the ignition back. Solved with and without it: what only the first has on is kept on by it; what hangs behind the key and is on in both is kept on by
/// another feed. Relays let go below their drop-out volts. A motor that coasts is a load without volts of its own
/// here: what it would hold for the seconds until it stands is not sought.
/// </summary>
public static class KeyOffFinder
{
    public static ImmutableArray<RunOnLoad> Find(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var running = plan.Harness.States.Where(s => s.Engine == EngineState.Running && s.Key != KeyPosition.Off).ToList();
        var network = new PlanNetwork(plan, options ?? PlanningOptions.Usual, keyTies: true);
        if (running.Count == 0)
        {
            return [];
        }

        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        return [.. running.SelectMany(state => InState(network, state, chosen))];
    }

    /// <summary>True for a load whose circuit the key switches off.</summary>
    private static bool IsBehindKey(PlanNetwork network, Branch load) => load.Circuit is { } circuit && network.Index.Circuit(circuit).LiveWith != KeyPosition.Off;

    private static ImmutableArray<HeldRelay> Held(PlanNetwork network, StateCircuit circuit)
    {
        var held = ImmutableArray.CreateBuilder<HeldRelay>();
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (circuit.Pulled[i] && network.Network.Branches[network.Network.CoilOver(i)] is var coil && held.All(h => h.Relay != coil.Thing!.Id))
            {
                held.Add(new(coil.Thing!.Id, Math.Abs(circuit.Solution.Volts[coil.A] - circuit.Solution.Volts[coil.B]), StateCircuit.DropsOutAt * coil.NominalV));
            }
        }

        return held.ToImmutable();
    }

    private static IEnumerable<RunOnLoad> InState(PlanNetwork network, OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var before = new StateCircuit(network, state, build);
        var fed = new StateCircuit(network, state, build, null, before, keyOff: new(Excites: true));
        var dead = new StateCircuit(network, state, build, null, before, keyOff: new(Excites: false));
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            // a load of no circuit is a cabin lamp in series with its wire: the charge lamp itself
            if (network.Network.Branches[i] is { Kind: BranchKind.Load, Element: not null, Circuit: not null, Thing.Kind: not ThingKind.Alternator } load)
            {
                double Share(StateCircuit circuit) => Math.Abs(circuit.Solution.Amperes[i]) / load.NominalA;
                var byExciter = Share(dead) <= FaultFinder.DeadShare;
                if (Share(fed) > FaultFinder.DeadShare && Share(before) > FaultFinder.DeadShare && (byExciter || IsBehindKey(network, load)))
                {
                    yield return new(state.Id, LoadName.Of(load.Thing!, load.Element), load.Circuit, Share(fed), Math.Abs(fed.Solution.Volts[load.A] - fed.Solution.Volts[load.B]), byExciter, Held(network, fed));
                }
            }
        }
    }
}
