using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking.Rules.Particular;

/// <summary>Circuits of one side that no state names while their twin of the other side is named.</summary>
internal sealed class OneSideNamed : IDesignRule
{
    public RuleInfo Info { get; } = new("one-side-named", "States name the circuit of one side only", Severity.Advice, Consequence.DoesNotWork, "common practice, no source",
        "A circuit that no state names follows the key: it counts as on wherever the key lets it, and fuses and volts are told so.");

    public IEnumerable<Finding> Find(RuleContext context)
    {
        var circuits = context.Harness.Circuits.Where(c => c is { IsReturn: false } && c.Duty != Duty.Signal).ToDictionary(c => c.Id, StringComparer.Ordinal);
        foreach (var circuit in circuits.Values.OrderBy(c => c.Id, StringComparer.Ordinal).Where(c => !IsNamed(context, c)))
        {
            if (Twin(circuit.Id) is { } name && circuits.TryGetValue(name, out var twin) && IsNamed(context, twin))
            {
                yield return context.Found(Info, $"{circuit.Id} is named in no state and counts as on wherever its key position lets it; {twin.Id} is on in {Wording.List(context.Harness.States.Where(s => context.Names(s, twin.Id)).Select(s => $"'{s.Id}'"))} only.",
                    "Name both sides in the states in which they are on.", [circuit.Id, twin.Id], circuit.OnlyWith, circuit.At);
            }
        }
    }

    private static bool IsNamed(RuleContext context, Circuit circuit) => context.Harness.States.Any(s => context.Names(s, circuit.Id));

    /// <summary>'turn right' for 'turn left'; null for a name without a side.</summary>
    private static string? Twin(string name)
    {
        string[] words = [.. name.Split(' ').Select(w => w switch { "left" => "right", "right" => "left", _ => w })];
        return string.Join(' ', words) is var twin && twin != name ? twin : null;
    }
}
