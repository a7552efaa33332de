using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>Kept cabin pins with the bay wires that meet them.</summary>
internal static class KeptCavities
{
    public static IEnumerable<(KeptPin Kept, Wire Wire)> Of(RuleContext context) =>
        context.Harness.Kept.SelectMany(k => context.EndsAt(k.Connector, k.Cavity).Select(e => (k, e.Wire)));

    /// <summary>The kept pin whose source the circuit names, if one does.</summary>
    public static KeptPin? For(RuleContext context, Circuit circuit) =>
        context.Harness.Kept.FirstOrDefault(k => k.ComesFrom is not null && (k.ComesFrom == circuit.From?.ToString() || k.ComesFrom == circuit.From?.Thing));
}
