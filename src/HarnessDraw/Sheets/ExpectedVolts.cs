using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>The volts a sheet prints for a point: key off, key in RUN with the circuit at work, cranking. Null: not known, or no such state.</summary>
internal sealed class ExpectedVolts(Plan plan)
{
    private readonly Dictionary<string, NodeVolts> nodes = plan.Nodes.GroupBy(n => n.Node, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);
    private readonly string? off = State(plan, s => s.Key == KeyPosition.Off && s.On.IsEmpty) ?? State(plan, s => s.Key == KeyPosition.Off);
    private readonly string? start = State(plan, s => s.Key == KeyPosition.Start) ?? State(plan, s => s.Engine == EngineState.Cranking);

    public double? Off(string node) => At(node, off);

    public double? Start(string node) => At(node, start);

    /// <summary>In the first state with the key in RUN that has the circuit on; the engine stopped where there is a choice.</summary>
    public double? Run(string node, string circuit) => At(node, RunState(circuit));

    public string? RunState(string circuit) =>
        State(plan, s => s.Key == KeyPosition.Run && s.Engine == EngineState.Stopped && s.On.Contains(circuit))
        ?? State(plan, s => s.Key == KeyPosition.Run && s.On.Contains(circuit))
        ?? State(plan, s => s.Key == KeyPosition.Run && s.Engine == EngineState.Stopped)
        ?? State(plan, s => s.Key == KeyPosition.Run);

    private double? At(string node, string? state) =>
        state is not null && nodes.TryGetValue(node, out var known) && known.Volts.TryGetValue(state, out var volts) ? volts : null;

    private static string? State(Plan plan, Func<OperatingState, bool> matches) => plan.Harness.States.FirstOrDefault(matches)?.Id;
}
