using System.Collections.Immutable;
using HarnessDraw.Electrical;
using HarnessDraw.Model;

namespace HarnessDraw.Troubleshooting;

/// <summary>A load that a person can watch: its name, and by which names it is called.</summary>
public sealed record SeenLoad(string Name, string Thing, string? Circuit)
{
    internal int Branch { get; init; }

    /// <summary>A motor or electronics: its volts say how it works, its current hardly does.</summary>
    internal bool ByVolts { get; init; }

    internal bool Electronic { get; init; }

    internal static ImmutableArray<SeenLoad> Of(PlanNetwork network, ImmutableSortedDictionary<string, string> build)
    {
        var loads = ImmutableArray.CreateBuilder<SeenLoad>();
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i] is { Kind: BranchKind.Load, Element: { } element, Thing: { } thing } b && b.When.Holds(build))
            {
                loads.Add(new(LoadName.Of(thing, element), thing.Id, b.Circuit)
                {
                    Branch = i,
                    ByVolts = element.Kind is ElementKind.Motor or ElementKind.Electronic,
                    Electronic = element.Kind == ElementKind.Electronic,
                });
            }
        }

        return loads.ToImmutable();
    }

    /// <summary>What the load does, as a share of what it did (or, where it did nothing, of its nominal figure).</summary>
    internal double Share(PlanNetwork network, StateCircuit circuit, StateCircuit sound)
    {
        var b = network.Network.Branches[Branch];
        if (circuit.Laws[Branch].IsOpen)
        {
            return 0;
        }

        var did = ShouldWork(network, sound);
        if (!ByVolts)
        {
            return Math.Abs(circuit.Solution.Amperes[Branch]) / (did ? Math.Abs(sound.Solution.Amperes[Branch]) : b.NominalA);
        }

        double Across(StateCircuit c) => Math.Abs(c.Solution.Volts[b.A] - c.Solution.Volts[b.B]);
        var share = Across(circuit) / (did ? Across(sound) : b.NominalV);
        return Electronic && share < PartLaw.ElectronicShare ? Math.Min(share, LoadClasses.DeadBelow / 2) : share;
    }

    internal bool ShouldWork(PlanNetwork network, StateCircuit sound) =>
        Math.Abs(sound.Solution.Amperes[Branch]) > FaultFinder.DeadShare * network.Network.Branches[Branch].NominalA;
}
