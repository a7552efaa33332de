using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>Tells a solved state in the words of the plan.</summary>
internal static class OperatingPointMaker
{
    public static OperatingPoint Make(PlanNetwork plan, StateCircuit circuit, OperatingState state, ImmutableSortedDictionary<string, string> build)
    {
        var branches = plan.Network.Branches;
        var (given, taken) = (0.0, 0.0);
        var fuses = ImmutableArray.CreateBuilder<FusePoint>();
        var loads = ImmutableArray.CreateBuilder<LoadPoint>();
        var contacts = ImmutableArray.CreateBuilder<ContactPoint>();
        var sources = ImmutableArray.CreateBuilder<SourcePoint>();
        var parts = ImmutableArray.CreateBuilder<NetworkPart>(branches.Count);
        for (var i = 0; i < branches.Count; i++)
        {
            var b = branches[i];
            var across = Across(plan, circuit, b);
            var amperes = circuit.Solution.Amperes[i];
            var watts = across * amperes;
            (given, taken) = watts < 0 ? (given - watts, taken) : (given, taken + watts);
            switch (b.Kind)
            {
                case BranchKind.Fuse:
                    fuses.Add(new(b.Thing!.Id, amperes, across, watts));
                    break;
                case BranchKind.Load or BranchKind.ConverterInput when !circuit.Laws[i].IsOpen:
                    loads.Add(new(b.Thing?.Id ?? "given for the circuit", b.Element?.Id, b.Circuit, across, amperes, b.Kind == BranchKind.Load ? b.NominalA : circuit.Laws[i].RatedA));
                    break;
                case BranchKind.Contact or BranchKind.Diode:
                    contacts.Add(new($"{b.Thing!.Id} {b.Element!.Id}", null, amperes, watts));
                    break;
                case BranchKind.Source:
                    sources.Add(new(b.Thing!.Id, across, -amperes, b.Source?.OutputA));
                    break;
            }

            if (b.A != b.B)
            {
                parts.Add(new(NameOf(plan, b, i), plan.Solver.RowOf(b.A), plan.Solver.RowOf(b.B), circuit.Laws[i]));
            }
        }

        return new()
        {
            State = state.Id,
            Build = build,
            Volts = plan.Shown.ToImmutableSortedDictionary(p => p.Key, p => circuit.VoltsOf(p.Value), StringComparer.Ordinal),
            Wires = Wires(plan, circuit, build, contacts),
            Fuses = fuses.ToImmutable(),
            Loads = loads.ToImmutable(),
            Contacts = contacts.ToImmutable(),
            Sources = sources.ToImmutable(),
            Parts = parts.ToImmutable(),
            GivenW = given,
            TakenW = taken,
            Settled = circuit.Solution.Settled && circuit.Restless.IsEmpty,
            Restless = circuit.Restless,
        };
    }

    private static ImmutableArray<WirePoint> Wires(PlanNetwork plan, StateCircuit circuit, ImmutableSortedDictionary<string, string> build, ImmutableArray<ContactPoint>.Builder contacts)
    {
        var points = ImmutableArray.CreateBuilder<WirePoint>(plan.Plan.Wires.Length);
        for (var w = 0; w < plan.Plan.Wires.Length; w++)
        {
            var wire = plan.Plan.Wires[w];
            var amperes = circuit.Solution.Amperes[plan.BranchOf(w)];
            points.Add(new(wire.Id, amperes, amperes * plan.Heat.Ohm(w, circuit.WireC[w]), circuit.WireC[w], wire.Builds.Holds(build)));
            foreach (var end in new[] { wire.From, wire.To }.Where(e => e.Pin is not null))
            {
                contacts.Add(new(end.ToString(), wire.Id, amperes, amperes * amperes * plan.Network.Joints.Of(end)));
            }
        }

        return points.ToImmutable();
    }

    private static double Across(PlanNetwork plan, StateCircuit circuit, Branch b) =>
        plan.Solver.RowOf(b.A) == plan.Solver.RowOf(b.B) ? 0 : circuit.Solution.Volts[b.A] - circuit.Solution.Volts[b.B];

    private static string NameOf(PlanNetwork plan, Branch b, int number) =>
        b.Wire >= 0 ? plan.Plan.Wires[b.Wire].Id : b.Thing is { } thing ? $"{thing.Id} {b.Element?.Id}".TrimEnd() : $"joint {number}";
}
