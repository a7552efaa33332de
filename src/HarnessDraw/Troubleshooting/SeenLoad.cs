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

    /// <summary>A filament: what people see of it is its light.</summary>
    internal bool Glows { get; init; }

    private LoadSort Sort { get; init; }

    /// <summary>False for what only somebody with the bonnet open notices: an alternator's field, a relay's coil.</summary>
    public bool SeenFromSeat => Sort is not (LoadSort.Field or LoadSort.RelayCoil);

    /// <summary>What is seen of it, in the words that fit it.</summary>
    public string Says(LoadClass seen) => Sort switch
    {
        LoadSort.Lamp => seen switch { LoadClass.Dim => "dim", LoadClass.OnWrongly => "lit though it should be off", _ => seen.Words() },
        LoadSort.Motor => seen switch { LoadClass.Dim => "slow", LoadClass.OnWrongly => "runs though it should be off", _ => seen.Words() },
        LoadSort.Sender => seen switch { LoadClass.Dim => "reads wrong on its gauge or lamp", LoadClass.Dead => "shows nothing on its gauge or lamp", LoadClass.OnWrongly => "shows on its gauge or lamp though it should not", _ => seen.Words() },
        LoadSort.RelayCoil => seen switch { LoadClass.Dim => "weak", LoadClass.Dead => "does not pull in", LoadClass.OnWrongly => "pulled in though it should be off", _ => seen.Words() },
        LoadSort.Field => seen switch { LoadClass.Dim => "weakly excited", LoadClass.Dead => "not excited", LoadClass.OnWrongly => "excited though it should not be", _ => seen.Words() },
        _ => seen == LoadClass.Dim ? "weak" : seen.Words(),
    };

    private enum LoadSort
    {
        Other,
        Lamp,
        Motor,
        Sender,
        RelayCoil,
        Field,
    }

    private static LoadSort SortOf(Thing thing, Element element) => (thing.Kind, element.Kind) switch
    {
        (ThingKind.Alternator, _) => LoadSort.Field,
        (ThingKind.Relay, ElementKind.Coil) => LoadSort.RelayCoil,
        (_, ElementKind.Lamp) => LoadSort.Lamp,
        (_, ElementKind.Motor) => LoadSort.Motor,
        (_, ElementKind.Sender) => LoadSort.Sender,
        _ => LoadSort.Other,
    };

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
                    Glows = element.Kind == ElementKind.Lamp,
                    Sort = SortOf(thing, element),
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
            return Shown(Math.Abs(circuit.Solution.Amperes[Branch]) / (did ? Math.Abs(sound.Solution.Amperes[Branch]) : b.NominalA));
        }

        double Across(StateCircuit c) => Math.Abs(c.Solution.Volts[b.A] - c.Solution.Volts[b.B]);
        var share = Across(circuit) / (did ? Across(sound) : b.NominalV);
        return Electronic && share < PartLaw.ElectronicShare ? Math.Min(share, LoadClasses.DeadBelow / 2) : share;
    }

    // a filament's current as its light, on the scale of the classes
    private double Shown(double current) => Glows ? Math.Pow(current, LoadClasses.OfLight * PartLaw.LightPower / PartLaw.FilamentPower) : current;

    /// <summary>A lamp that glows unseen, as a charge lamp does beside a charging alternator, is off.</summary>
    internal bool ShouldWork(PlanNetwork network, StateCircuit sound) =>
        Math.Abs(sound.Solution.Amperes[Branch]) / network.Network.Branches[Branch].NominalA is var share && (Glows ? Shown(share) >= LoadClasses.DeadBelow : share > FaultFinder.DeadShare);
}
