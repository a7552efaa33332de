using System.Collections.Immutable;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Checking;

/// <summary>
/// Findings that the owner accepts. A waiver needs a reason, a name and a date; the finding keeps its text and its severity and is printed with
/// the waiver, so nothing vanishes.
/// </summary>
internal static class Waivers
{
    public static IEnumerable<Finding> Apply(Harness harness, IEnumerable<Finding> findings, RuleContext context)
    {
        var complete = harness.Waivers.Where(IsComplete).ToImmutableArray();
        var used = new HashSet<Waiver>(ReferenceEqualityComparer.Instance);
        foreach (var finding in findings)
        {
            var waiver = complete.FirstOrDefault(w => Covers(w, finding, context));
            if (waiver is not null)
            {
                used.Add(waiver);
            }

            yield return finding with { WaivedBy = waiver };
        }

        foreach (var waiver in harness.Waivers)
        {
            if (!IsComplete(waiver))
            {
                yield return WaiverRules.Incomplete(waiver, context);
            }
            else if (!used.Contains(waiver))
            {
                yield return WaiverRules.MatchesNothing(waiver, context);
            }
        }
    }

    private static bool IsComplete(Waiver waiver) => Filled(waiver.Because) && Filled(waiver.By) && Filled(waiver.On);

    private static bool Filled(string? text) => !string.IsNullOrWhiteSpace(text);

    /// <summary>The rule is the same, and the waiver names an object of the finding or the circuit of one of its wires; no names: every finding of the rule.</summary>
    private static bool Covers(Waiver waiver, Finding finding, RuleContext context) =>
        waiver.Rule == finding.Rule && (waiver.For.IsEmpty || waiver.For.Any(name => finding.Where.Any(w => w == name || context.Wire(w)?.Circuit == name)));
}
