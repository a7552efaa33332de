using HarnessDraw.Model;

namespace HarnessDraw.Planning;

/// <summary>
/// What joints and closed contacts resist, in ohms: the one truth for the solved network, the rules and the bench test. A large terminal or ring has no more than
/// loses 0.1 V at its rating and a heavy contact no more than loses 0.2 V, the most that the usual drop tests allow (common practice, no source).
/// </summary>
internal sealed class JointOhms
{
    /// <summary>A joint that is no contact: a crimped splice, a ring on its stud. Common practice, no source.</summary>
    public const double TightOhm = 0.0002;

    private const double TerminalV = 0.1;
    private const double SwitchedV = 0.2;
    private readonly HarnessIndex index;
    private readonly Assumptions assumed;
    private readonly Dictionary<string, double> ratings = new(StringComparer.Ordinal);

    public JointOhms(HarnessIndex index)
    {
        this.index = index;
        assumed = index.Harness.Assumed;
        foreach (var terminal in index.Harness.Catalogue.Terminals.Where(t => t.CurrentA > 0))
        {
            ratings.TryAdd(terminal.Id, terminal.CurrentA);
        }
    }

    /// <summary>The joint of a wire's end on a pin, whatever its terminal.</summary>
    public double At(PinRef pin) =>
        index.Thing(pin.Thing)?.Kind == ThingKind.GroundPoint ? assumed.GroundJointOhm : index.IsStud(pin) ? TightOhm : assumed.ContactOhm;

    /// <summary>The joint of a wire's end, with the terminal that is crimped on it.</summary>
    public double Of(WireEnd end)
    {
        if (end.Pin is null)
        {
            return TightOhm;
        }

        var ohm = At(new(end.At, end.Pin));
        return end.Terminal is { } id && ratings.TryGetValue(id, out var rated) ? Math.Min(ohm, Math.Max(TightOhm, TerminalV / rated)) : ohm;
    }

    /// <summary>Both joints of a wire.</summary>
    public double Of(Wire wire) => Of(wire.From) + Of(wire.To);

    /// <summary>A closed contact of a relay or switch.</summary>
    public double Closed(Thing thing, Element contact)
    {
        var usual = thing.Kind == ThingKind.Relay ? assumed.RelayContactOhm : assumed.SwitchOhm;
        return contact.RatedA is > 0 and var rated ? Math.Min(usual, SwitchedV / rated) : usual;
    }

    /// <summary>The kept cabin side from what feeds it up to the mate: as given, else a contact and its switches.</summary>
    public double Kept(KeptPin? kept, int switches) => kept?.AddsOhm ?? (assumed.ContactOhm + ((kept?.Through.Length ?? switches) * assumed.SwitchOhm));
}
