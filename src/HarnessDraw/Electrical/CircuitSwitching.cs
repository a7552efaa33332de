using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Electrical;

/// <summary>
/// Says which circuits are live in a state. A circuit that any state names, or that passes kept hand switches, needs to be switched on;
/// the others follow the key alone.
/// </summary>
internal sealed class CircuitSwitching
{
    private readonly HashSet<string> switched = new(StringComparer.Ordinal);
    private readonly Dictionary<OperatingState, HashSet<string>> on = new(ReferenceEqualityComparer.Instance);
    private readonly HarnessIndex index;

    public CircuitSwitching(HarnessIndex index)
    {
        this.index = index;
        foreach (var state in index.Harness.States)
        {
            on.Add(state, state.On.ToHashSet(StringComparer.Ordinal));
            switched.UnionWith(state.On);
        }

        foreach (var circuit in index.Harness.Circuits)
        {
            if (KeptPinOf(circuit) is { Through.Length: > 0 } kept && kept.Through.Any(t => !IsKeySwitch(t)))
            {
                switched.Add(circuit.Id);
            }
        }
    }

    public bool IsLive(string circuitId, OperatingState state)
    {
        var circuit = index.Circuit(circuitId);
        var key = circuit.LiveWith switch
        {
            KeyPosition.Off => true,
            KeyPosition.Start => state.Key == KeyPosition.Start,
            var from => state.Key >= from,
        };
        return key && (!switched.Contains(circuitId) || (on.TryGetValue(state, out var names) ? names.Contains(circuitId) : state.On.Contains(circuitId)));
    }

    /// <summary>
    /// Whether a current that is given for a whole circuit is drawn in a state. What is given for the feed of a fuse panel is the most that all behind it draws: with the
    /// key off it counts only in the states that name the circuit (common practice, no source).
    /// </summary>
    public bool DrawsGiven(string circuitId, OperatingState state) =>
        state.Key != KeyPosition.Off || state.On.Contains(circuitId) || !index.Circuit(circuitId).Feeds.Any(f => index.Thing(f.Thing)?.Kind == ThingKind.FusePanel);

    /// <summary>The kept pin that comes from where the circuit comes from (or goes to), if one is described.</summary>
    public KeptPin? KeptPinOf(Circuit circuit)
    {
        if (circuit.EntersBy is null)
        {
            return null;
        }

        return index.Harness.Kept.FirstOrDefault(k => k.Connector == circuit.EntersBy && k.ComesFrom is { } source
            && (Names(circuit.From, source) || circuit.Feeds.Any(f => index.Thing(f.Thing)?.Side == Side.Cabin && Names(f, source))));
    }

    /// <summary>True when <paramref name="text"/> names the pin, or its whole thing.</summary>
    public static bool Names(PinRef? pin, string text) => pin is not null && (pin.ToString() == text || pin.Thing == text);

    private static bool IsKeySwitch(string text) => text.Contains("ignition", StringComparison.Ordinal) || text.Contains("key", StringComparison.Ordinal);
}
