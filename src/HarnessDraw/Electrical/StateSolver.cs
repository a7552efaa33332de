using System.Collections.Immutable;
using HarnessDraw.Model;

namespace HarnessDraw.Electrical;

/// <summary>
/// Solves the network in one state of one build. Relay contacts follow the volts over their coils and are settled by repetition;
/// loads that do not follow Ohm are brought to their curve by repeated secants.
/// </summary>
internal sealed partial class ElectricalNetwork
{
    private const double OpenSiemens = 1e-10;
    private List<int>[]? touching;

    /// <summary>
    /// Currents for sizing: one source at nominal volts, no engine, resistances of wires left out, so every load draws its nominal current.
    /// </summary>
    public NetworkSolution SolveNominal(OperatingState state, ImmutableSortedDictionary<string, string> build) => Settle(state, build, real: false);

    /// <summary>Volts to be expected at the vehicle: battery at rest or alternator charging, wires and contacts as planned.</summary>
    public NetworkSolution SolveReal(OperatingState state, ImmutableSortedDictionary<string, string> build) => Settle(state, build, real: true);

    /// <summary>The alternator's rated output flowing into the battery with every load off.</summary>
    public NetworkSolution SolveCharging(Branch alternator, double outputA, ImmutableSortedDictionary<string, string> build)
    {
        var siemens = new double[branches.Count];
        for (var i = 0; i < siemens.Length; i++)
        {
            var b = branches[i];
            var on = b.When.Holds(build) && b.Kind is BranchKind.Conductor or BranchKind.Fuse;
            siemens[i] = b.Kind == BranchKind.Source && b.Source?.Kind == SourceKind.Battery ? 1000 : on ? 1 / BranchOhm(b) : OpenSiemens;
        }

        var injected = new double[names.Count];
        injected[alternator.A] += outputA;
        injected[alternator.B] -= outputA;
        return Result(siemens, injected, new double[branches.Count]);
    }

    /// <summary>Finds the order of elimination and what touches what, so that states can be solved side by side afterwards.</summary>
    public void Prepare()
    {
        matrix ??= new SparseNetwork(names.Count, [.. branches.Select(b => (b.A, b.B))]);
        if (names.Count > 0)
        {
            BranchesAt(0);
        }
    }

    private NetworkSolution Settle(OperatingState state, ImmutableSortedDictionary<string, string> build, bool real)
    {
        var siemens = new double[branches.Count];
        var emf = new double[branches.Count];
        for (var i = 0; i < branches.Count; i++)
        {
            siemens[i] = StartSiemens(branches[i], state, build, real, out emf[i]);
        }

        NetworkSolution solution;
        var round = 0;
        do
        {
            var injected = new double[names.Count];
            for (var i = 0; i < branches.Count; i++)
            {
                injected[branches[i].A] += emf[i] * siemens[i];
                injected[branches[i].B] -= emf[i] * siemens[i];
            }

            solution = Result(siemens, injected, emf);
        }
        while (Adjust(siemens, solution, build, state, real) && ++round < 8);
        return solution;
    }

    private double StartSiemens(Branch b, OperatingState state, ImmutableSortedDictionary<string, string> build, bool real, out double emfV)
    {
        emfV = 0;
        if (!b.When.Holds(build) || (b.Gate is { } gate && !switching.IsLive(gate, state)))
        {
            return OpenSiemens;
        }

        switch (b.Kind)
        {
            case BranchKind.Source:
                var nominal = b.Source?.NominalV ?? Index.NominalV;
                var turning = b.Source?.Kind != SourceKind.Alternator || (real && state.Engine == EngineState.Running);
                emfV = !real ? nominal : b.Source?.Kind == SourceKind.Alternator ? nominal * 1.175 : b.Source?.Kind == SourceKind.Battery ? nominal * 1.05 : nominal;
                return turning ? 1 / (real ? b.Source?.InternalOhm ?? 0.008 * nominal / 12 : 1e-4) : OpenSiemens;
            case BranchKind.Load when b.Thing?.Kind == ThingKind.Starter && b.Element?.Kind == ElementKind.Motor && state.Engine != EngineState.Cranking:
                return OpenSiemens;
            case BranchKind.Contact when CoilOf(b) is not null:
                return IsBreakContact(b) ? ClosedSiemens(b, real) : OpenSiemens;
            case BranchKind.Load:
                return 1 / b.Ohm;
            default:
                return ClosedSiemens(b, real);
        }
    }

    private bool Adjust(double[] siemens, NetworkSolution solution, ImmutableSortedDictionary<string, string> build, OperatingState state, bool real)
    {
        var changed = false;
        for (var i = 0; i < branches.Count; i++)
        {
            var b = branches[i];
            if (b.Kind == BranchKind.Contact && CoilOf(b) is { } coil)
            {
                var pulled = Math.Abs(solution.Volts[coil.A] - solution.Volts[coil.B]) > 0.5 * coil.NominalV;
                var wanted = pulled != IsBreakContact(b) && b.When.Holds(build) ? ClosedSiemens(b, real) : OpenSiemens;
                changed |= wanted != siemens[i];
                siemens[i] = wanted;
            }
            else if (real && b.Kind == BranchKind.Load && siemens[i] > OpenSiemens && b.Element is { } element)
            {
                var volts = Math.Abs(solution.Volts[b.A] - solution.Volts[b.B]);
                var power = ElementCurrent.Exponent(element.Kind);
                var wanted = volts < 0.4 * b.NominalV || power == 1 ? b.NominalA / b.NominalV : b.NominalA * Math.Pow(volts / b.NominalV, power) / volts;
                changed |= Math.Abs(wanted - siemens[i]) > 1e-4 * siemens[i];
                siemens[i] = wanted;
            }
        }

        return changed;
    }

    /// <summary>For nominal currents nothing but loads resists.</summary>
    private double ClosedSiemens(Branch b, bool real) => real ? 1 / BranchOhm(b) : 1e4;

    private double BranchOhm(Branch b) => b.Kind == BranchKind.Fuse ? FuseOhm(b.Thing!.Id) : Math.Max(b.Ohm, 1e-6);

    /// <summary>Numbers of the branches that touch a node, in branch order.</summary>
    public List<int> BranchesAt(int node)
    {
        if (touching is null || touching.Length != names.Count)
        {
            touching = new List<int>[names.Count];
            for (var i = 0; i < touching.Length; i++)
            {
                touching[i] = [];
            }

            for (var i = 0; i < branches.Count; i++)
            {
                touching[branches[i].A].Add(i);
                touching[branches[i].B].Add(i);
            }
        }

        return touching[node];
    }

    private Branch? CoilOf(Branch contact)
    {
        if (contact.Thing is not { Kind: ThingKind.Relay } && contact.Element?.WorkedBy is null)
        {
            return null;
        }

        var id = contact.Element!.WorkedBy ?? contact.Thing!.Elements.FirstOrDefault(e => e.Kind == ElementKind.Coil)?.Id;
        return branches.FirstOrDefault(b => b.Kind == BranchKind.Load && b.Thing?.Id == contact.Thing!.Id && b.Element?.Id == id);
    }

    /// <summary>DIN 72552: 87a is the contact that opens when the relay pulls in.</summary>
    private static bool IsBreakContact(Branch b) => b.Element?.PinB == "87a" || b.Element?.PinA == "87a";

    private NetworkSolution Result(double[] siemens, double[] injected, double[] emf)
    {
        Prepare();
        var volts = matrix!.Solve(siemens, injected);
        var amperes = new double[branches.Count];
        for (var i = 0; i < branches.Count; i++)
        {
            amperes[i] = siemens[i] <= OpenSiemens ? 0 : (volts[branches[i].A] - volts[branches[i].B] - emf[i]) * siemens[i];
        }

        return new(volts, Reached(siemens), amperes);
    }

    private bool[] Reached(double[] siemens)
    {
        var reached = new bool[names.Count];
        var waiting = new Stack<int>();
        reached[0] = true;
        waiting.Push(0);
        while (waiting.TryPop(out var node))
        {
            foreach (var i in BranchesAt(node))
            {
                var other = branches[i].A == node ? branches[i].B : branches[i].A;
                if (siemens[i] > OpenSiemens && !reached[other])
                {
                    reached[other] = true;
                    waiting.Push(other);
                }
            }
        }

        return reached;
    }
}
