using System.Collections.Immutable;

namespace HarnessDraw.Electrical;

/// <summary>What is wrong with a network: branches that are open, closed for good, bridged or of more ohms, a node that touches something, wires in each other's cavity.</summary>
internal sealed record NetworkFault
{
    public static readonly NetworkFault None = new();

    /// <summary>Branches through which nothing passes.</summary>
    public ImmutableArray<int> Opened { get; init; } = [];

    /// <summary>Contacts that conduct whatever works them.</summary>
    public ImmutableArray<int> Closed { get; init; } = [];

    /// <summary>Parts that are a dead short from end to end.</summary>
    public ImmutableArray<int> Bridged { get; init; } = [];

    /// <summary>Motors that stand still: they follow Ohm with the resistance that their highest current tells.</summary>
    public ImmutableArray<int> Stalled { get; init; } = [];

    /// <summary>Branches with ohms beyond their own.</summary>
    public ImmutableArray<(int Branch, double Ohm)> Added { get; init; } = [];

    /// <summary>Sources that give this share of their rest volts through five times their ohms: a battery that is run down.</summary>
    public ImmutableArray<(int Branch, double Share)> Weak { get; init; } = [];

    /// <summary>Node that touches something at <see cref="TiedV"/> volts over the body; -1: none.</summary>
    public int TiedNode { get; init; } = -1;
    public double TiedV { get; init; }
    public double TiedOhm { get; init; } = FaultFinder.ShortOhm;

    /// <summary>The solver of a network whose wires end elsewhere; null: as planned.</summary>
    public NodalSolver? Rewired { get; init; }

    /// <summary>True where a meter's digits are enough.</summary>
    public bool Rough { get; init; }

    public static NetworkFault Open(IEnumerable<int> branches) => new() { Opened = [.. branches] };

    /// <summary>Every branch that is not as it should be.</summary>
    public IEnumerable<int> Branches => Opened.Concat(Closed).Concat(Bridged).Concat(Stalled).Concat(Added.Select(a => a.Branch)).Concat(Weak.Select(w => w.Branch));

    /// <summary>Both at once. Where both touch a node or rewire, the first one does.</summary>
    public NetworkFault With(NetworkFault other) => this with
    {
        Opened = Opened.AddRange(other.Opened),
        Closed = Closed.AddRange(other.Closed),
        Bridged = Bridged.AddRange(other.Bridged),
        Stalled = Stalled.AddRange(other.Stalled),
        Added = Added.AddRange(other.Added),
        Weak = Weak.AddRange(other.Weak),
        TiedNode = TiedNode >= 0 ? TiedNode : other.TiedNode,
        TiedV = TiedNode >= 0 ? TiedV : other.TiedV,
        TiedOhm = TiedNode >= 0 ? TiedOhm : other.TiedOhm,
        Rewired = Rewired ?? other.Rewired,
    };

    /// <summary>True when neither coil nor volts change what the branch does.</summary>
    public bool Holds(int branch) => Opened.Contains(branch) || Closed.Contains(branch);

    public double AddedOhm(int branch)
    {
        var ohm = 0.0;
        foreach (var (at, more) in Added)
        {
            ohm += at == branch ? more : 0;
        }

        return ohm;
    }

    /// <summary>What becomes of a branch whose law is <paramref name="sound"/> without the fault; <paramref name="built"/>: the build has it.</summary>
    public PartLaw Law(int branch, Branch b, PartLaw sound, bool built)
    {
        if (!built || Opened.Contains(branch))
        {
            return PartLaw.Nothing;
        }

        if (Bridged.Contains(branch))
        {
            return PartLaw.Resistor(FaultFinder.ShortOhm);
        }

        if (Stalled.Contains(branch) && b.Element?.PeakA is > 0 and var peak)
        {
            return PartLaw.Resistor(b.NominalV / peak);
        }

        if (Weak.FirstOrDefault(w => w.Branch == branch) is { Share: > 0 } weak && sound.Kind == PartBehaviour.Battery)
        {
            const double OhmsOfRunDown = 5;
            return PartLaw.Battery(sound.RatedV * weak.Share, sound.Ohm * OhmsOfRunDown);
        }

        var law = Closed.Contains(branch) ? PartLaw.Resistor(Math.Max(b.Ohm, 1e-6)) : sound;
        return law.Kind == PartBehaviour.Ohmic ? PartLaw.Resistor(law.Ohm + AddedOhm(branch)) : law;
    }
}
