using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Connectors;

internal sealed class NetDiffersAcrossMate : IDesignRule
{
    public RuleInfo Info { get; } = new("net-differs-across-mate", "Cabin and bay halves join different circuits", Severity.Error, Consequence.LostFunction, "common practice, no source",
        "The kept half decides what a cavity is: the wrong circuit there works the wrong thing.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        foreach (var (kept, wire) in KeptCavities.Of(context).Where(p => p.Kept.ComesFrom is not null))
        {
            if (context.Circuit(wire.Circuit) is { } circuit && !Agrees(context, kept, circuit))
            {
                var right = KeptCavities.For(context, circuit);
                yield return context.Found(Info, $"{PointWords.Of(kept.Connector, kept.Cavity)}: the cabin side comes from {kept.ComesFrom}, the bay wire {wire.Named()} expects {PointWords.OfNode($"{circuit.From}")}.",
                    right is null ? "Move the wire to the cavity of its circuit, or correct the kept pin." : $"Its cavity is {right.Cavity}.", [$"{kept.Connector}.{kept.Cavity}", wire.Id, circuit.Id], wire.Builds, kept.At ?? circuit.At);
            }
        }
    }

    /// <summary>True when what the kept half says of its cavity is what the circuit expects.</summary>
    internal static bool Agrees(RuleContext context, KeptPin kept, Circuit circuit)
    {
        var pins = circuit.Feeds.Append(circuit.From).OfType<PinRef>();
        return pins.Any(p => p.ToString() == kept.ComesFrom || p.Thing == kept.ComesFrom || kept.ComesFrom == $"{p.Thing}.out" || kept.Through.Contains(p.Thing))
            || context.ProtectionOf(circuit).Contains(kept.ComesFrom!);
    }
}
