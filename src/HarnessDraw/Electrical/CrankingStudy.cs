using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// What the starter leaves of the volts, in a cranking state: <paramref name="Stalled"/> tells the first moment, in which it stands still and takes its highest current, from the
/// turning one. Volts at the battery's posts and across the starter, its amperes, and the loads that are on with the share of their volts they get, the least first.
/// </summary>
public sealed record CrankingPoint(string State, string Starter, bool Stalled, double StarterA, double BatteryV, double StarterV, ImmutableArray<CrankedLoad> Loads);

/// <summary>A load in a cranking state: volts across it and what share of its nominal volts they are; whether it works a contact, and for one that does whether that has pulled in.</summary>
public sealed record CrankedLoad(string Load, string Thing, string? Circuit, ElementKind Kind, double VoltageV, double Share, bool WorksContact, bool Pulled);

/// <summary>Solves the states in which the starter turns, and each once more with the starter standing still where its highest current is known.</summary>
public static class CrankingFinder
{
    public static ImmutableArray<CrankingPoint> Find(Plan plan, ImmutableSortedDictionary<string, string>? build = null, PlanningOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var states = plan.Harness.States.Where(s => s.Engine == EngineState.Cranking).ToList();
        if (states.Count == 0 || plan.Harness.Things.All(t => t.Kind != ThingKind.Starter) || plan.Harness.Power.Sources.All(s => s.Kind != SourceKind.Battery))
        {
            return [];
        }

        var network = new PlanNetwork(plan, options ?? PlanningOptions.Usual);
        if (!network.Network.Branches.Any(IsBattery))
        {
            return [];
        }

        var chosen = build ?? plan.Builds.FirstOrDefault() ?? ImmutableSortedDictionary<string, string>.Empty;
        return [.. states.SelectMany(s => InState(network, s, chosen))];
    }

    private static bool IsBattery(Branch b) => b is { Kind: BranchKind.Source, Source.Kind: SourceKind.Battery };

    private static IEnumerable<CrankingPoint> InState(PlanNetwork network, OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var turning = new StateCircuit(network, state, build);
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i] is not { Kind: BranchKind.Load, Thing.Kind: ThingKind.Starter, Element.Kind: ElementKind.Motor } starter || turning.Laws[i].IsOpen)
            {
                continue;
            }

            yield return Point(network, state, turning, i, stalled: false);
            if (starter.Element!.PeakA is { } peak && peak > starter.NominalA)
            {
                // relays are as they were before the starter took its current: what is pulled in holds down to its drop-out
                yield return Point(network, state, new(network, state, build, new() { Stalled = [i] }, turning), i, stalled: true);
            }
        }
    }

    private static CrankingPoint Point(PlanNetwork network, OperatingState state, StateCircuit circuit, int starter, bool stalled)
    {
        var branches = network.Network.Branches;
        double Across(Branch b) => Math.Abs(circuit.Solution.Volts[b.A] - circuit.Solution.Volts[b.B]);
        var loads = ImmutableArray.CreateBuilder<CrankedLoad>();
        for (var i = 0; i < branches.Count; i++)
        {
            if (i != starter && branches[i] is { Kind: BranchKind.Load, Element: { } element, Circuit: not null, Thing.Kind: not ThingKind.Alternator } load && Math.Abs(circuit.Solution.Amperes[i]) > FaultFinder.DeadShare * load.NominalA)
            {
                var contact = Enumerable.Range(0, branches.Count).FirstOrDefault(c => branches[c].Kind == BranchKind.Contact && network.Network.CoilOver(c) == i, -1);
                loads.Add(new(LoadName.Of(load.Thing!, element), load.Thing!.Id, load.Circuit, element.Kind, Across(load), Across(load) / load.NominalV, contact >= 0, contact >= 0 && circuit.Pulled[contact]));
            }
        }

        var battery = branches.First(IsBattery);
        return new(state.Id, branches[starter].Thing!.Id, stalled, Math.Abs(circuit.Solution.Amperes[starter]), Across(battery), Across(branches[starter]), [.. loads.OrderBy(l => l.Share).ThenBy(l => l.Load, StringComparer.Ordinal)]);
    }
}
