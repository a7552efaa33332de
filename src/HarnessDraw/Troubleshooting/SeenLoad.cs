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

    /// <summary>What a driver or mechanic calls it: without its terminal where the thing has no other load, else by what the terminal is for ('headlamp left (dipped beam)').</summary>
    public string Called { get; private init; } = Name;

    private LoadSort Sort { get; init; }

    /// <summary>False for what only somebody with the bonnet open notices: an alternator's field, a relay's coil.</summary>
    public bool SeenFromSeat => Sort is not (LoadSort.Field or LoadSort.RelayCoil);

    /// <summary>What is seen of it, in the words that fit it.</summary>
    public string Says(LoadClass seen) => (Sort, seen) switch
    {
        (_, LoadClass.Works or LoadClass.Off) => seen.Words(),
        (LoadSort.Lamp, LoadClass.Dead) => "stays dark",
        (LoadSort.Lamp, LoadClass.Dim) => "dim",
        (LoadSort.Lamp, _) => "lit though it should be off",
        (LoadSort.Motor, LoadClass.Dead) => "does not turn",
        (LoadSort.Motor, LoadClass.Dim) => "slow",
        (LoadSort.Motor, _) => "runs though it should be off",
        (LoadSort.Sender, LoadClass.Dead) => "shows nothing on its gauge or lamp",
        (LoadSort.Sender, LoadClass.Dim) => "reads wrong on its gauge or lamp",
        (LoadSort.Sender, _) => "shows on its gauge or lamp though it should not",
        (LoadSort.RelayCoil, LoadClass.Dead) => "does not pull in",
        (LoadSort.RelayCoil, LoadClass.Dim) => "gets too little voltage",
        (LoadSort.RelayCoil, _) => "pulled in though it should be off",
        (LoadSort.Field, LoadClass.Dead) => "gets no exciter current",
        (LoadSort.Field, LoadClass.Dim) => "gets too little exciter current",
        (LoadSort.Field, _) => "gets exciter current though it should not",
        (_, LoadClass.Dim) => "gets too little voltage",
        _ => seen.Words(),
    };

    // DIN 72552, as in the table of terminals of the examples
    private static string? Purpose(ThingKind kind, Element element) => (kind, element.Kind, element.PinA) switch
    {
        (ThingKind.Starter, ElementKind.Motor, _) => "motor",
        (ThingKind.Starter, ElementKind.Coil, _) => "solenoid",
        (_, ElementKind.Lamp, "56a") => "main beam",
        (_, ElementKind.Lamp, "56b") => "dipped beam",
        (_, ElementKind.Lamp, "58") => "parking lamp",
        (_, ElementKind.Lamp, "54") => "brake lamp",
        (_, ElementKind.Lamp, "49a") => "flasher",
        (_, ElementKind.Motor, "53") => "first speed",
        (_, ElementKind.Motor, "53b") => "second speed",
        (_, ElementKind.Motor, "53a") => "parking",
        _ => null,
    };

    private static string CalledOf(Thing thing, Element element, bool alone) =>
        alone || thing.Kind == ThingKind.Alternator ? thing.Id : Purpose(thing.Kind, element) is { } purpose ? $"{thing.Id} ({purpose})" : LoadName.Of(thing, element);

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
        var ofThing = network.Network.Branches.Where(b => b is { Kind: BranchKind.Load, Element: not null, Thing: not null } && b.When.Holds(build)).CountBy(b => b.Thing!.Id, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        for (var i = 0; i < network.Network.Branches.Count; i++)
        {
            if (network.Network.Branches[i] is { Kind: BranchKind.Load, Element: { } element, Thing: { } thing } b && b.When.Holds(build))
            {
                loads.Add(new(LoadName.Of(thing, element), thing.Id, b.Circuit)
                {
                    Branch = i,
                    Called = CalledOf(thing, element, alone: ofThing[thing.Id] == 1),
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
