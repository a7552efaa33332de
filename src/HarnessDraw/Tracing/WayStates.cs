using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Tracing;

/// <summary>The states that a way's volts are shown in: key off, the circuit at work, cranking, the engine running. Null where the harness has none.</summary>
internal sealed record WayStates(string? Off, string? On, string? Crank, string? Run)
{
    public static WayStates Of(Plan plan, string circuit)
    {
        var states = plan.Harness.States;
        var worst = plan.Wires.Where(w => w.Circuit == circuit && w.Worst is not null).OrderByDescending(w => w.Worst!.CurrentA).ThenBy(w => w.Id, StringComparer.Ordinal).FirstOrDefault()?.Worst?.State;
        var on = states.FirstOrDefault(s => s.Id == worst && s.On.Contains(circuit))
            ?? states.FirstOrDefault(s => s.On.Contains(circuit))
            ?? states.FirstOrDefault(s => s.Id == worst)
            ?? states.FirstOrDefault(s => s.Key == KeyPosition.Run);
        return new(
            states.FirstOrDefault(s => s.Key == KeyPosition.Off && s.On.IsEmpty)?.Id ?? states.FirstOrDefault(s => s.Key == KeyPosition.Off)?.Id,
            on?.Id,
            states.FirstOrDefault(s => s.Engine == EngineState.Cranking)?.Id,
            (states.FirstOrDefault(s => s.Engine == EngineState.Running && s.On.Contains(circuit)) ?? states.FirstOrDefault(s => s.Engine == EngineState.Running))?.Id);
    }
}
