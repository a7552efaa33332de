using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads the operating states; those of the description replace the usual ones of the same name and follow them otherwise.</summary>
internal static class StateReader
{
    /// <summary>
    /// States that every harness has. A circuit that any state names is on only in the states that name it, all others follow the key: so
    /// the usual states name the lamps alone, and the last one has everything on.
    /// </summary>
    public static ImmutableArray<OperatingState> Usual(ImmutableArray<string> lamps) =>
    [
        new("off", KeyPosition.Off, EngineState.Stopped, [], null),
        new("ignition on", KeyPosition.Run, EngineState.Stopped, [], null),
        new("cranking", KeyPosition.Start, EngineState.Cranking, [], null),
        new("running", KeyPosition.Run, EngineState.Running, [], null),
        new("night and rain", KeyPosition.Run, EngineState.Running, lamps, null),
    ];

    /// <summary>All states; <paramref name="lamps"/> names the circuits that feed lamps for longer than a moment.</summary>
    public static ImmutableArray<OperatingState> Read(Draft draft, ImmutableArray<string> lamps)
    {
        NameRules.ReportCaseOnly(draft.Root.Map("states"), "state", draft.Bag);
        var states = Usual(lamps).ToBuilder();
        foreach (var (name, map) in draft.Blocks("states"))
        {
            var on = map.TextNodes("on").Where(draft.IsCircuit).Select(c => c.Value).Distinct();
            var state = new OperatingState(name.Value, ChoiceWords.Key(map.Text("key")), ChoiceWords.Engine(map.Text("engine")), [.. on], name.At);
            var known = states.FindIndex(s => s.Id == state.Id);
            if (known < 0)
            {
                states.Add(state);
            }
            else
            {
                states[known] = state;
            }
        }

        return states.ToImmutable();
    }

    private static int FindIndex(this ImmutableArray<OperatingState>.Builder states, Func<OperatingState, bool> wanted)
    {
        for (var i = 0; i < states.Count; i++)
        {
            if (wanted(states[i]))
            {
                return i;
            }
        }

        return -1;
    }
}
