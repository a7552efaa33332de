using System.Collections.Immutable;

namespace HarnessDraw.Writing.Starter;

/// <summary>What is asked before a first description is written. The words are those of the command line.</summary>
public sealed record StarterAnswers(string Name)
{
    public static ImmutableArray<string> Voltages { get; } = ["6", "12", "24"];
    public static ImmutableArray<string> Grounds { get; } = ["negative", "positive"];
    public static ImmutableArray<string> Chargings { get; } = ["exciter", "single-wire", "dynamo", "none"];
    public static ImmutableArray<string> Heatings { get; } = ["none", "blower"];
    public static ImmutableArray<string> CoolingFans { get; } = ["belt", "electric"];
    public static ImmutableArray<string> LampSets { get; } = ["two", "four", "none"];
    public static ImmutableArray<string> Firewalls { get; } = ["connector", "none"];

    /// <summary>Nominal volts of the battery.</summary>
    public string Voltage { get; init; } = "12";

    /// <summary>The pole that is joined to the body.</summary>
    public string Ground { get; init; } = "negative";
    public string Charging { get; init; } = "exciter";
    public string Heating { get; init; } = "none";
    public string CoolingFan { get; init; } = "belt";

    /// <summary>How many headlamps.</summary>
    public string Lamps { get; init; } = "two";

    /// <summary>What the wires pass to the driver's place: a connector, behind which the wiring stays as it is, or nothing (motorcycle, tractor), and all of it is built.</summary>
    public string Firewall { get; init; } = "connector";

    internal bool BuildsAll => Firewall == "none";

    /// <summary>Where stations are measured from: the way out of the driver's place.</summary>
    internal string Root => BuildsAll ? "dash" : "pass-through";
}
