using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Reading;

/// <summary>Reads the operating states; those of the description replace the usual ones of the same name and follow them otherwise.</summary>
internal static class StateReader
{
    /// <summary>States that every harness has; in the last one everything that may run at night in the rain is on.</summary>
    public static ImmutableArray<OperatingState> Usual(ImmutableArray<string> circuits) =>
    [
        new("off", KeyPosition.Off, EngineState.Stopped, [], null),
        new("ignition on", KeyPosition.Run, EngineState.Stopped, [], null),
        new("cranking", KeyPosition.Start, EngineState.Cranking, [], null),
        new("running", KeyPosition.Run, EngineState.Running, [], null),
        new("night and rain", KeyPosition.Run, EngineState.Running, circuits, null),
    ];

    /// <summary>All states; <paramref name="steady"/> names the circuits that work for longer than a moment.</summary>
    public static ImmutableArray<OperatingState> Read(Draft draft, ImmutableArray<string> steady)
    {
        NameRules.ReportCaseOnly(draft.Root.Map("states"), "state", draft.Bag);
        var states = Usual(steady).ToBuilder();
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
