using HarnessDraw.Diagnostics;
using HarnessDraw.Model;
using HarnessDraw.Planning;

namespace HarnessDraw.Comparing;

/// <summary>Puts lengths as built in the place of planned ones: ways before planning, wires after it.</summary>
public static class AsBuiltKeeper
{
    public static Harness Keep(Harness harness, AsBuilt built)
    {
        ArgumentNullException.ThrowIfNull(harness);
        ArgumentNullException.ThrowIfNull(built);
        return harness with { Measured = built, Layout = harness.Layout with { Paths = [.. harness.Layout.Paths.Select(p => Measured(p, built) is { } run ? p with { LengthMm = run.LengthMm, Known = LengthKnown.Measured } : p)] } };
    }

    /// <summary>The plan with each measured cut length; a measured wire that the plan does not have is told.</summary>
    public static Plan KeepLengths(Plan plan, AsBuilt built)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(built);
        var lengths = built.Wires.ToDictionary(w => w.Wire, StringComparer.Ordinal);
        var ids = plan.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        var strangers = built.Wires.Select(w => (w.Wire, w.At)).Concat(built.Resistances.Select(r => (r.Wire, r.At))).Where(w => !ids.Contains(w.Wire)).Select(w => new Finding
        {
            Rule = "as-built-unknown",
            Severity = Severity.Warning,
            Message = $"Wire {w.Wire} was measured as built and is not in the plan: what was measured is not used.",
            Cure = "Mend the id in the as-built file, or take the row out.",
            Source = "workshop practice, no standard",
            Where = [w.Wire],
            At = w.At,
        });
        return plan with
        {
            Wires = [.. plan.Wires.Select(w => lengths.TryGetValue(w.Id, out var measured) ? w with { CutLengthMm = measured.CutMm, Estimated = false } : w)],
            PlanningFindings = [.. plan.PlanningFindings, .. strangers],
        };
    }

    private static MeasuredRun? Measured(Model.Path path, AsBuilt built) =>
        built.Runs.LastOrDefault(r => (r.From, r.To) == (path.From, path.To) || (r.To, r.From) == (path.From, path.To));
}
