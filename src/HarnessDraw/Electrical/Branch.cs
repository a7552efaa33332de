using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>What a branch of the network is.</summary>
internal enum BranchKind
{
    Conductor,
    Fuse,
    Contact,
    Load,
    Source,
    Diode,

    /// <summary>What a converter draws from the source that feeds it.</summary>
    ConverterInput,

    /// <summary>What joins circuits behind the key while it is off.</summary>
    KeyTie,

    /// <summary>An alternator's exciter terminal, which its field diodes feed while it turns.</summary>
    Exciter,
}

/// <summary>Two nodes joined by something: a wire with its contacts, a kept cabin run, a fuse, a contact, a load or a source.</summary>
internal sealed record Branch(int A, int B, BranchKind Kind, double Ohm)
{
    public BuildCondition When { get; init; } = BuildCondition.Always;

    /// <summary>Circuit that must be live for it to conduct.</summary>
    public string? Gate { get; init; }
    public Thing? Thing { get; init; }
    public Element? Element { get; init; }
    public Source? Source { get; init; }

    /// <summary>Volts and amperes at which a load's figures hold.</summary>
    public double NominalV { get; init; }
    public double NominalA { get; init; }
    public int Net { get; init; } = -1;
    public int Member { get; init; } = -1;
    public int Wire { get; init; } = -1;

    /// <summary>Circuit whose given current, beyond that of its described loads, it stands for.</summary>
    public string? GivenFor { get; init; }

    /// <summary>Circuit that a load belongs to, for its drop limit.</summary>
    public string? Circuit { get; init; }
}

/// <summary>Nominal volts of the nodes and amperes from A to B of the branches in one state of one build.</summary>
internal sealed record NetworkSolution(double[] Volts, double[] Amperes);
