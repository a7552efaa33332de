using System.Collections.Immutable;
using System.Globalization;
using HarnessDraw.Diagnostics;
using HarnessDraw.Planning;

namespace HarnessDraw.Sheets;

/// <summary>Fills the title block of a sheet from the plan.</summary>
internal static class SheetTitle
{
    public static TitleBlock Of(Plan plan, ImmutableArray<Finding> findings, SheetOptions options, string title, string type)
    {
        var drawing = plan.Harness.Drawing;
        return new()
        {
            Vehicle = plan.Harness.Vehicle,
            Title = title,
            Type = type,
            Owner = drawing.Owner ?? "",
            Number = drawing.Number ?? "",
            Drawn = drawing.Drawn ?? "",
            Approved = drawing.Approved ?? "",
            Date = drawing.IssuedOn ?? (drawing.Revisions.IsEmpty ? "" : drawing.Revisions[^1].On),
            Rev = drawing.Revisions.IsEmpty ? "" : drawing.Revisions[^1].Rev,
            Language = drawing.Language,
            Logo = options.Logo,
            Source = plan.Harness.SourceHash,
            Build = BuildWords(plan, options),
            Note = plan.Harness.Options.IsEmpty ? "" : options.Build is { Count: > 0 } ? "This drawing is for the build named here only." : "For every build: letters mark what a choice adds.",
            Waivers = plan.Harness.Waivers.IsEmpty ? "none" : plan.Harness.Waivers.Length.ToString(CultureInfo.InvariantCulture),
            Rules = options.Rules,
            NotForBuild = NotForBuild(findings),
        };
    }

    private static string BuildWords(Plan plan, SheetOptions options) =>
        plan.Harness.Options.IsEmpty ? "one, without options" : options.Build is { Count: > 0 } build ? string.Join(", ", build.Select(c => $"{c.Key}: {c.Value}")) : "all options, see letters";

    private static string? NotForBuild(ImmutableArray<Finding> findings)
    {
        var errors = findings.IsDefault ? 0 : findings.Count(f => f.Severity == Severity.Error && f.WaivedBy is null);
        return errors == 0 ? null : $"{errors} {(errors == 1 ? "error" : "errors")} found by the checks: see the findings before anything is cut.";
    }
}
