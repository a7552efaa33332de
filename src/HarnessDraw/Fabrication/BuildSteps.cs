using System.Collections.Immutable;
using HarnessDraw.Planning;

namespace HarnessDraw.Fabrication;

/// <summary>What is done with a wire in one build: 'fit', or for an option that is not in it 'leave off', 'remove' (kept wiring) or 'cap'.</summary>
public sealed record BuildStep(string Build, bool IsUsual, Wire Wire, string What);

/// <summary>Fit, leave-off, remove and cap lists of every build.</summary>
public static class BuildSteps
{
    /// <summary>Every wire that some build leaves out, build by build, the usual build first; wires in every build are not told.</summary>
    public static ImmutableArray<BuildStep> Of(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var circuits = plan.Harness.Circuits.ToDictionary(c => c.Id, StringComparer.Ordinal);
        Wire[] optional = [.. plan.Wires.Where(w => !w.Builds.IsAlways).OrderBy(w => w.Id, NaturalOrder.Instance)];
        return
        [
            .. plan.Builds.SelectMany((build, i) => optional.Select(w => new BuildStep(
                string.Join(", ", build.Select(c => $"{c.Key}={c.Value}")), i == 0, w,
                w.Builds.Holds(build) ? "fit" : circuits.GetValueOrDefault(w.Circuit)?.WhenNotFitted ?? "leave off"))),
        ];
    }
}
